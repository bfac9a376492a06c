namespace Workshop.Domain.Consumables;

/// <summary>Where the groove is and which way the ring is pressed.</summary>
public enum GlandKind
{
    /// <summary>Static radial: the groove is in the inner part, as on a plug or filter cap; the ring is pressed against the bore.</summary>
    RadialOnPiston,

    /// <summary>Static radial: the groove is in the bore; the ring is pressed against the part that goes through it.</summary>
    RadialInBore,

    /// <summary>Static, pressed between two faces, the pressure from inside: the ring lies against the groove's outer wall.</summary>
    FacePressedOutward,

    /// <summary>Static, pressed between two faces, the pressure from outside: the ring lies against the groove's inner wall.</summary>
    FacePressedInward,
}

/// <summary>A length between two limits, in mm.</summary>
public readonly record struct Span(double Lowest, double Highest)
{
    /// <summary>A nominal length with what it may be more or less.</summary>
    public static Span Around(decimal nominal, decimal tolerance) => new((double)(nominal - tolerance), (double)(nominal + tolerance));

    internal IReadOnlyList<double> Ends => Lowest.Equals(Highest) ? [Lowest] : [Lowest, Highest];
}

/// <summary>
/// A rectangular gland, in mm. Radial: <see cref="Groove"/> is the groove's bottom diameter and <see cref="Counterpart"/> the bore, or the
/// part that goes through. Face: <see cref="Groove"/> is the diameter of the wall that the ring lies against, <see cref="Counterpart"/>
/// the groove's depth.
/// </summary>
/// <param name="Width">Of the groove, along the axis; of a face groove from wall to wall.</param>
public sealed record Gland(GlandKind Kind, Span Groove, Span Counterpart, Span Width)
{
    /// <summary>Room is left for a ring in every combination of the limits.</summary>
    public bool HasRoom => (
        from g in Groove.Ends
        from c in Counterpart.Ends
        select Depth(g, c)).All(depth => depth > 0) && Width.Lowest > 0;

    /// <summary>The room between groove bottom and counterpart; negative where they would meet.</summary>
    internal double Depth(double groove, double counterpart) => Kind switch
    {
        GlandKind.RadialOnPiston => (counterpart - groove) / 2,
        GlandKind.RadialInBore => (groove - counterpart) / 2,
        _ => counterpart,
    };

    /// <summary>The diameter that the ring's inside is put on; absent where it lies against an outer wall and nothing goes through it.</summary>
    internal double? LiesOn(double groove, double counterpart) => Kind switch
    {
        GlandKind.RadialOnPiston or GlandKind.FacePressedInward => groove,
        GlandKind.RadialInBore => counterpart,
        _ => null,
    };
}

/// <summary>From least to most, in percent, over all that the tolerances allow.</summary>
public readonly record struct PercentSpan(double Least, double Most);

/// <summary>What becomes of an O-ring in a gland.</summary>
/// <param name="Squeeze">Share of its section by which it is pressed flat; below zero it does not touch.</param>
/// <param name="Stretch">Growth of its inner diameter; of a face seal that lies outward, of its outer diameter, negative when pressed in.</param>
/// <param name="Fill">Share of the groove's section that it takes up.</param>
/// <param name="SectionMm">Its section as fitted, thinned by the stretch, from least to most.</param>
public sealed record GlandFit(PercentSpan Squeeze, PercentSpan Stretch, PercentSpan Fill, Span SectionMm);

/// <summary>
/// Squeeze, stretch and fill of an O-ring, by the plain geometry that public seal handbooks use: squeeze (section - depth) / section,
/// stretch (diameter - inner) / inner, fill the ring's section over the groove's. The ring keeps its volume when it is stretched.
/// </summary>
public static class ORingGland
{
    /// <summary>Over every combination of limits; each of the three grows or falls with each length, so its ends are among them.</summary>
    /// <param name="inner">Inner diameter of the ring.</param>
    /// <param name="section">Its section.</param>
    /// <exception cref="ArgumentException">The groove leaves no room in some combination of its limits.</exception>
    public static GlandFit Fit(Span inner, Span section, Gland gland)
    {
        ArgumentNullException.ThrowIfNull(gland);
        if (!gland.HasRoom)
        {
            throw new ArgumentException("The groove leaves no room.", nameof(gland));
        }

        var all = (
            from d in inner.Ends
            from s in section.Ends
            from g in gland.Groove.Ends
            from c in gland.Counterpart.Ends
            from w in gland.Width.Ends
            select At(d, s, g, c, w, gland)).ToList();
        return new GlandFit(
            Over(all, f => f.Squeeze), Over(all, f => f.Stretch), Over(all, f => f.Fill),
            new Span(all.Min(f => f.Section), all.Max(f => f.Section)));
    }

    /// <summary>
    /// The section of a ring whose inner diameter became another, its volume kept: section^2 (inner + section) stays, as that of a torus.
    /// </summary>
    public static double SectionWhenStretched(double innerMm, double sectionMm, double toInnerMm)
    {
        var volume = sectionMm * sectionMm * (innerMm + sectionMm);
        var now = sectionMm;
        for (var i = 0; i < 30; i++)
        {
            now = Math.Sqrt(volume / (toInnerMm + now));
        }

        return now;
    }

    private static (double Squeeze, double Stretch, double Fill, double Section) At(
        double inner, double section, double groove, double counterpart, double width, Gland gland)
    {
        var depth = gland.Depth(groove, counterpart);
        // A loose ring is not thickened: nothing holds it small.
        var on = gland.LiesOn(groove, counterpart);
        var fitted = on > inner ? SectionWhenStretched(inner, section, on.Value) : section;
        var outer = inner + (2 * section);
        var stretch = on is { } diameter ? (diameter - inner) / inner : (groove - outer) / outer;
        return (100 * (fitted - depth) / fitted, 100 * stretch, 100 * Math.PI / 4 * fitted * fitted / (width * depth), fitted);
    }

    private static PercentSpan Over(
        List<(double Squeeze, double Stretch, double Fill, double Section)> all,
        Func<(double Squeeze, double Stretch, double Fill, double Section), double> of) => new(all.Min(of), all.Max(of));
}
