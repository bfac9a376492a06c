using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Finishing;

public enum BalanceVerdict
{
    Within,
    Outside,

    /// <summary>The maker states no tolerance.</summary>
    NothingStated,
}

/// <param name="FromKpa">Above the reference cylinder, or above the lowest where there is none; below 0 is below it.</param>
public sealed record CylinderBalance(int Cylinder, Pressure Vacuum, decimal FromKpa);

/// <summary>
/// Whether cylinders draw alike. Without a reference cylinder the highest and the lowest vacuum may differ by the tolerance; with
/// one, each may differ from it by the tolerance. A difference of exactly the tolerance is within.
/// </summary>
/// <param name="Worst">The largest difference that the tolerance is held against.</param>
/// <param name="Sentence">In words: "within: 0.8 kPa (6 mmHg) apart, 2 kPa (15 mmHg) allowed".</param>
public sealed record BalanceJudgement(BalanceVerdict Verdict, Pressure Worst, IReadOnlyList<CylinderBalance> Cylinders, string Sentence)
{
    /// <summary>Judges one run.</summary>
    /// <param name="figures">As the maker states them; absent where none are.</param>
    /// <param name="vacuums">Of every cylinder.</param>
    /// <exception cref="ArgumentException">Fewer than two cylinders, or the reference cylinder is not among them.</exception>
    public static BalanceJudgement Of(BalanceFigures? figures, IReadOnlyCollection<BalanceVacuum> vacuums)
    {
        ArgumentNullException.ThrowIfNull(vacuums);
        if (vacuums.Count < 2)
        {
            throw new ArgumentException("Two cylinders at least are balanced.", nameof(vacuums));
        }

        var zero = figures?.ReferenceCylinder is { } number
            ? vacuums.FirstOrDefault(v => v.Cylinder == number)?.Vacuum ?? throw new ArgumentException($"Cylinder {number} was not read.", nameof(vacuums))
            : vacuums.Min(v => v.Vacuum);
        var cylinders = vacuums.OrderBy(v => v.Cylinder)
            .Select(v => new CylinderBalance(v.Cylinder, v.Vacuum, v.Vacuum.Kilopascals - zero.Kilopascals)).ToArray();
        var worst = Pressure.FromKilopascals(cylinders.Max(c => Math.Abs(c.FromKpa)));
        var apart = $"{Said(worst)} {(figures?.ReferenceCylinder is { } of ? $"from cylinder {of}" : "apart")}";
        return figures switch
        {
            null => new(BalanceVerdict.NothingStated, worst, cylinders, $"{apart}; no tolerance is stated"),
            _ when worst <= figures.Tolerance => new(BalanceVerdict.Within, worst, cylinders, $"within: {apart}, {Said(figures.Tolerance)} allowed"),
            _ => new(BalanceVerdict.Outside, worst, cylinders, $"outside: {apart}, {Said(figures.Tolerance)} allowed"),
        };
    }

    private static string Said(Pressure pressure) =>
        FormattableString.Invariant($"{pressure.Kilopascals:0.##} kPa ({pressure.MillimetresOfMercury:0} mmHg)");
}
