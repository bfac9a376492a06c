using System.Globalization;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Consumables;

/// <summary>How sizes, matches and glands are said on page and paper.</summary>
public static class SizeWords
{
    /// <summary>What was asked for: "O-ring 25 x 2.5", "sealing ring 14 x 18", "groove 25 for a section of 2.5".</summary>
    public static string Spoken(this SizeQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var (first, second) = (Mm(question.FirstMm), Mm(question.SecondMm));
        var code = question.Code is null ? "" : $" ({question.Code})";
        return question.Of switch
        {
            SizeOf.SealingRing => question.ThirdMm is { } thickness ? $"sealing ring {first} x {second} x {Mm(thickness)}" : $"sealing ring {first} x {second}",
            SizeOf.ORing => $"O-ring {first} x {second}{code}",
            SizeOf.Groove => $"groove of {first} mm for a section of {second} mm{code}",
            _ => throw new ArgumentOutOfRangeException(nameof(question), question.Of, null),
        };
    }

    /// <summary>How it would sit: "the very size", "0.4 mm off at most", "stretched 1.6 %", "loose by 0.2 mm".</summary>
    public static string Fit<T>(this SizeMatch<T> match, SizeOf asked)
    {
        ArgumentNullException.ThrowIfNull(match);
        if (asked != SizeOf.Groove)
        {
            return match.IsExact ? "the very size" : $"{Mm(match.FarthestOffMm)} mm off at most";
        }

        var stretch = match.StretchPercent!.Value;
        var lies = stretch < 0 ? $"loose by {Mm(match.InnerOffMm)} mm"
            : stretch > Stretch.MostPercent ? $"stretched {Percent(stretch)} %, more than {Percent(Stretch.MostPercent)} % does not last"
            : stretch == 0 ? "lies on it, not stretched"
            : $"stretched {Percent(stretch)} %";
        return match.SectionFits ? lies : $"section {AgainstSection(match.SectionOffMm!.Value)}; {lies}";
    }

    private static string AgainstSection(decimal offMm) => offMm < 0
        ? $"{Mm(offMm)} mm too thin for the groove: it may not seal"
        : $"{Mm(offMm)} mm too thick for the groove: it may be pressed too far or not go in";

    /// <summary>A difference with its sign: "+0.12 mm", "0".</summary>
    public static string Off(decimal? mm) => mm switch
    {
        null => "",
        0 => "0",
        > 0 => $"+{Mm(mm.Value)} mm",
        _ => $"−{Mm(-mm.Value)} mm",
    };

    /// <summary>Where the groove is.</summary>
    public static string Spoken(this GlandKind kind) => kind switch
    {
        GlandKind.RadialOnPiston => "groove in the inner part, ring pressed against a bore",
        GlandKind.RadialInBore => "groove in the bore, ring pressed against what goes through",
        GlandKind.FacePressedOutward => "groove in a face, pressure from inside",
        GlandKind.FacePressedInward => "groove in a face, pressure from outside",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>Why something is offered in place of a part.</summary>
    public static string Spoken(this EquivalenceKind kind) => kind switch
    {
        EquivalenceKind.Named => "named as alternative",
        EquivalenceKind.SameSizeOtherMaterial => "same size, other material",
        EquivalenceKind.SameSize => "same size",
        EquivalenceKind.NearSize => "near size: look whether it fits",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>Many of a kind: "O-rings".</summary>
    public static string Several(this PartKind kind) => kind == PartKind.FastenerUsedOnce ? "fasteners used once" : $"{kind.Spoken()}s";

    /// <summary>What a seal of the stores is measured by; nothing of other parts, or where the sizes are not known.</summary>
    public static SealSize? MeasuredSize(this Part part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part switch
        {
            { Kind: PartKind.ORing, InnerDiameterMm: { } inner, SectionMm: { } section } => SealSize.ORing(inner, section),
            { Kind: PartKind.SealingRing, InnerDiameterMm: { } inner, OuterDiameterMm: { } outer } => SealSize.Ring(inner, outer, part.SectionMm ?? 0),
            _ => null,
        };
    }

    private static string Mm(decimal value) => Math.Abs(value).ToString("0.###", CultureInfo.InvariantCulture);

    private static string Percent(decimal value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
