using Workshop.Domain.Stores;

namespace Workshop.Domain.Consumables;

/// <summary>One size that comes near what was asked for, with how far it is from it; positive where it is larger.</summary>
/// <param name="OuterOffMm">Sealing rings only.</param>
/// <param name="SectionOffMm">Of the thickness, or of the section; absent where no thickness was asked for.</param>
/// <param name="StretchPercent">O-rings only: on the diameter that was asked for.</param>
public sealed record SizeMatch<T>(T Item, SealSize Size, decimal InnerOffMm, decimal? OuterOffMm, decimal? SectionOffMm, decimal? StretchPercent)
{
    /// <summary>The largest of the differences, whatever its sign.</summary>
    public decimal FarthestOffMm =>
        Math.Max(Math.Abs(InnerOffMm), Math.Max(Math.Abs(OuterOffMm ?? 0), Math.Abs(SectionOffMm ?? 0)));

    public bool IsExact => FarthestOffMm == 0;

    /// <summary>Of a groove: its section is the one that the groove is made for, within what the section of such a ring may be off.</summary>
    public bool SectionFits => SectionOffMm is { } off && Math.Abs(off) <= SectionTolerance.Mm(Size.SectionMm);

    /// <summary>Of a groove: neither loose nor stretched for good by more than handbooks allow, and of the section that it is made for.</summary>
    public bool SitsWell => SectionFits && StretchPercent is >= 0 and <= Stretch.MostPercent;
}

/// <summary>Which sizes come within a tolerance of what was asked for, the best first.</summary>
public static class SizeSearch
{
    /// <summary>In mm, where nobody says another.</summary>
    public const decimal UsualToleranceMm = 0.5m;

    public const decimal LargestToleranceMm = 20m;

    /// <summary>
    /// What the size of a candidate may be, in mm of inner diameter: within the tolerance; for a groove also what is stretched onto
    /// it by no more than handbooks allow.
    /// </summary>
    public static (decimal FromMm, decimal ToMm) InnerSpan(SizeQuestion question, decimal toleranceMm)
    {
        ArgumentNullException.ThrowIfNull(question);
        var smallest = question.FirstMm - toleranceMm;
        return question.Of == SizeOf.Groove
            ? (Math.Min(smallest, question.FirstMm / (1 + (Stretch.MostPercent / 100))), question.FirstMm + toleranceMm)
            : (smallest, question.FirstMm + toleranceMm);
    }

    /// <summary>
    /// The candidates that come near, ranked: of rings the least far off first; for a groove what sits well first, then the nearest
    /// section, then the stretch nearest to what handbooks call best.
    /// </summary>
    /// <param name="question">With figures; a code is looked up before.</param>
    /// <param name="toleranceMm">Most that diameter, thickness or section may differ, each on its own; 0 asks for the very size.</param>
    public static IReadOnlyList<SizeMatch<T>> Rank<T>(
        SizeQuestion question, decimal toleranceMm, IEnumerable<T> candidates, Func<T, SealSize> sizeOf)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(sizeOf);
        ArgumentOutOfRangeException.ThrowIfNegative(toleranceMm);
        var (from, to) = InnerSpan(question, toleranceMm);
        var kind = question.Of == SizeOf.SealingRing ? PartKind.SealingRing : PartKind.ORing;
        var near = candidates
            .Select(item => (item, size: sizeOf(item)))
            .Where(c => c.size.Kind == kind && c.size.InnerMm >= from && c.size.InnerMm <= to)
            .Select(c => Match(question, c.item, c.size))
            .Where(m => Math.Abs(m.OuterOffMm ?? 0) <= toleranceMm && Math.Abs(m.SectionOffMm ?? 0) <= toleranceMm);
        return question.Of == SizeOf.Groove
            ? [.. near
                .OrderByDescending(m => m.SitsWell)
                .ThenBy(m => Math.Abs(m.SectionOffMm!.Value))
                .ThenBy(m => Math.Abs(m.StretchPercent!.Value - Stretch.BestPercent))]
            : [.. near
                .OrderBy(m => m.FarthestOffMm)
                .ThenBy(m => Math.Abs(m.InnerOffMm) + Math.Abs(m.OuterOffMm ?? 0) + Math.Abs(m.SectionOffMm ?? 0))];
    }

    private static SizeMatch<T> Match<T>(SizeQuestion question, T item, SealSize size) => question.Of == SizeOf.SealingRing
        ? new SizeMatch<T>(
            item, size, size.InnerMm - question.FirstMm, size.OuterMm - question.SecondMm,
            question.ThirdMm is { } thickness ? size.SectionMm - thickness : null, null)
        : new SizeMatch<T>(
            item, size, size.InnerMm - question.FirstMm, null, size.SectionMm - question.SecondMm,
            Stretch.Percent(size.InnerMm, question.FirstMm));
}
