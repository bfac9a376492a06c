using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Clearances;

/// <summary>What a bracket says against the limits.</summary>
public enum Verdict
{
    /// <summary>Inside the limits.</summary>
    Within,

    /// <summary>Below the lower limit: certain, not likely.</summary>
    TooTight,

    /// <summary>Above the upper limit: certain, not likely.</summary>
    TooWide,

    /// <summary>The blades tried leave it open.</summary>
    NotDecided,
}

/// <summary>
/// Judges what the blades said by the limits that the engine maker states, and names the blade that would decide where they
/// did not.
/// <para>
/// The clearance c obeys go &lt;= c &lt; no-go. Out of limits is what is so for every such c: no-go &lt;= lower, or go &gt; upper.
/// Within is go &gt;= lower and no-go &lt;= upper + 0.01 mm: limits belong to the range, and a clearance of exactly the upper
/// limit lets the blade of that thickness in and the next one, 0.01 mm thicker, not. Everything else is not decided. Where
/// both hold (go between upper and upper + 0.01 mm, on blades finer than 0.01 mm), what is certain wins: out.
/// </para>
/// </summary>
/// <param name="TryBlade">Where not decided: the blade that decides, if it goes or if it does not.</param>
/// <param name="Sentence">In words, for the page, the API and the print.</param>
public sealed record ClearanceVerdict(Verdict Verdict, Clearance? TryBlade, string Sentence)
{
    /// <summary>Step of the usual feeler set, mm; see the summary.</summary>
    public const decimal UpperAllowanceMm = 0.01m;

    public bool IsOut => Verdict is Verdict.TooTight or Verdict.TooWide;

    /// <summary>Judges a bracket. An end that is open counts as no clearance at all, or as one without bound.</summary>
    public static ClearanceVerdict Of(Bracket bracket, ClearanceLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        var (lower, upper) = (limits.Lower.Millimetres, limits.Upper.Millimetres);
        var go = bracket.Go?.Millimetres ?? 0;
        var noGo = bracket.NoGo?.Millimetres ?? decimal.MaxValue;
        var range = $"{lower:0.00##} to {upper:0.00##} mm";
        if (noGo <= lower)
        {
            return new(Verdict.TooTight, null, $"too tight: below {lower:0.00##} mm; {range} is allowed");
        }

        if (go > upper)
        {
            return new(Verdict.TooWide, null, $"too wide: above {upper:0.00##} mm; {range} is allowed");
        }

        if (go >= lower && noGo <= upper + UpperAllowanceMm)
        {
            return new(Verdict.Within, null, $"within {range}");
        }

        // The tight end first: a valve that does not close burns, one that is a little wide is only heard.
        var blade = Clearance.FromMillimetres(
            go < lower ? lower : decimal.Min(upper + UpperAllowanceMm, Clearance.LargestMm));
        return new(Verdict.NotDecided, blade, $"not decided: try blade {blade.Millimetres:0.00##} mm; {range} is allowed");
    }
}
