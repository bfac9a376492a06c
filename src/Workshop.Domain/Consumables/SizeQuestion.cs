using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Workshop.Domain.Consumables;

/// <summary>What a size that was typed is the size of.</summary>
public enum SizeOf
{
    /// <summary>A flat sealing ring: inner x outer, or inner x outer x thickness.</summary>
    SealingRing,

    /// <summary>An O-ring: inner diameter x section.</summary>
    ORing,

    /// <summary>A groove for an O-ring: the diameter that the ring lies on x the section it is made for.</summary>
    Groove,
}

/// <summary>
/// A size as people write it: "25 x 2.5", "14x18", "14 × 18 × 1,5", "25 x 2.5 groove", "0.984 x 0.139 in", "AS568-214". A second figure
/// above the first is an outer diameter, one below it a section.
/// </summary>
/// <param name="Code">A size number of the catalogue instead of figures: "AS568-214".</param>
/// <param name="FirstMm">Inner diameter, or the groove's diameter; 0 with a code.</param>
/// <param name="SecondMm">Outer diameter, or section; 0 with a code.</param>
/// <param name="ThirdMm">Thickness of a sealing ring, where it is said.</param>
public sealed partial record SizeQuestion(SizeOf Of, string? Code, decimal FirstMm, decimal SecondMm, decimal? ThirdMm = null)
{
    /// <summary>Exact by definition.</summary>
    public const decimal MillimetresPerInch = 25.4m;

    /// <summary>What is allowed, for a sentence.</summary>
    public const string Form = "inner x outer (14x18, 14x18x1.5), inner x section (25 x 2.5), or a number such as AS568-214 is allowed";

    /// <summary>Reads what was typed; nothing where it is no size, or no possible one.</summary>
    /// <param name="asGroove">The figures are a groove's, whether or not the text says so.</param>
    public static bool TryParse([NotNullWhen(true)] string? text, bool asGroove, [NotNullWhen(true)] out SizeQuestion? question)
    {
        question = null;
        if (string.IsNullOrWhiteSpace(text))
        {
            return false;
        }

        if (Dash().Match(text) is { Success: true } dash)
        {
            question = new SizeQuestion(asGroove ? SizeOf.Groove : SizeOf.ORing, $"AS568-{dash.Groups[1].Value}", 0, 0);
            return true;
        }

        if (Figures().Match(text) is not { Success: true } match)
        {
            return false;
        }

        var scale = match.Groups["inch"].Success ? MillimetresPerInch : 1;
        var lengths = match.Groups["length"].Captures.Select(c => Length(c.Value) * scale).ToList();
        if (lengths.Any(l => l is < SealSize.SmallestMm or > SealSize.LargestMm))
        {
            return false;
        }

        var groove = asGroove || match.Groups["groove"].Success;
        question = lengths switch
        {
            [var inner, var outer, var thickness] when outer > inner && !groove => new SizeQuestion(SizeOf.SealingRing, null, inner, outer, thickness),
            [var inner, var outer] when outer > inner && !groove => new SizeQuestion(SizeOf.SealingRing, null, inner, outer),
            [var inner, var section] when section < inner => new SizeQuestion(groove ? SizeOf.Groove : SizeOf.ORing, null, inner, section),
            _ => null,
        };
        return question is not null;
    }

    /// <summary>The same question with the size of a code that the catalogue knows.</summary>
    public SizeQuestion With(SealSize size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return this with { FirstMm = size.InnerMm, SecondMm = size.SectionMm };
    }

    private static decimal Length(string text) => decimal.Parse(text.Replace(',', '.'), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\s*(?:AS\s*568[A-F]?\s*-?\s*|2-|-)(\d{3})\s*(?:groove)?\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex Dash();

    [GeneratedRegex(
        @"^\s*(?:(?:DIN\s*7603)\s*-?\s*(?:form\s*)?[ACD]?\s+)?(?<length>\d{1,4}(?:[.,]\d{1,4})?)(?:\s*(?:mm\s*)?(?:[x×*]|by)\s*(?<length>\d{1,4}(?:[.,]\d{1,4})?)){1,2}\s*(?:(?<inch>in|inch|"")|mm)?\s*(?<groove>groove)?\s*$",
        RegexOptions.IgnoreCase)]
    private static partial Regex Figures();
}
