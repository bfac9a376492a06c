using Workshop.Domain.Measures;

namespace Workshop.Domain.Clearances;

/// <summary>
/// The blades of one feeler set that may be used, and what a tap on one of them says: it enters with light drag, and the next
/// blade of the set does not.
/// </summary>
public sealed class FeelerBlades
{
    private readonly Clearance[] blades;

    private FeelerBlades(Clearance[] blades) => this.blades = blades;

    /// <summary>Thinnest first, each thickness once.</summary>
    public IReadOnlyList<Clearance> All => blades;

    /// <summary>The blades of a set; those that are withdrawn are left out by the caller.</summary>
    /// <param name="usable">In any order.</param>
    public static FeelerBlades Of(IEnumerable<Clearance> usable)
    {
        ArgumentNullException.ThrowIfNull(usable);
        return new FeelerBlades([.. usable.Distinct().Order()]);
    }

    /// <summary>The blade goes, the next one does not. Of the thickest blade there is no next one: no-go stays open.</summary>
    /// <exception cref="ArgumentException">The set has no such blade.</exception>
    public Bracket Goes(Clearance blade) => Next(blade) is { } next
        ? Bracket.Of(BracketKind.GoAndNoGo, blade, next)
        : NextNotTried(blade);

    /// <summary>The blade goes; nobody tried the next one.</summary>
    /// <exception cref="ArgumentException">The set has no such blade.</exception>
    public Bracket NextNotTried(Clearance blade) => Bracket.Of(BracketKind.NextNotTried, Known(blade), null);

    /// <summary>Not even the thinnest enters; nothing where the set has no blade.</summary>
    public Bracket? NoneEnters => blades.Length == 0 ? null : Bracket.Of(BracketKind.NoneEnters, null, blades[0]);

    /// <summary>The thickest is still loose; nothing where the set has no blade.</summary>
    public Bracket? ThickestIsLoose => blades.Length == 0 ? null : Bracket.Of(BracketKind.ThickestIsLoose, blades[^1], null);

    /// <summary>
    /// Two blades together go. The next step is the smaller one of changing either blade for its next; where neither has a next
    /// one that is free, no-go stays open.
    /// </summary>
    /// <exception cref="ArgumentException">The set lacks one of them, they are one blade, or together thicker than a clearance may be.</exception>
    public Bracket GoTogether(Clearance first, Clearance second)
    {
        if (Known(first) == Known(second))
        {
            throw new ArgumentException($"A set has one blade of {first}: stack it with another.");
        }

        var go = Sum(first, second) ?? throw new ArgumentException($"{first} and {second} together are thicker than {Clearance.LargestMm} mm.");
        Clearance? noGo = null;
        foreach (var (stays, goesUp) in new[] { (first, second), (second, first) })
        {
            if (Next(goesUp) is { } next && next != stays && Sum(stays, next) is { } sum && (noGo is null || sum < noGo))
            {
                noGo = sum;
            }
        }

        return Bracket.Of(noGo is null ? BracketKind.NextNotTried : BracketKind.GoAndNoGo, go, noGo, stacked: true);
    }

    private Clearance? Next(Clearance blade)
    {
        var at = Array.IndexOf(blades, Known(blade));
        return at + 1 < blades.Length ? blades[at + 1] : null;
    }

    private Clearance Known(Clearance blade) => Array.BinarySearch(blades, blade) >= 0
        ? blade
        : throw new ArgumentException($"The set has no blade of {blade}; it has {string.Join(", ", blades.Select(b => b.Millimetres))} mm.");

    private static Clearance? Sum(Clearance first, Clearance second) =>
        first.Millimetres + second.Millimetres is var sum && sum <= Clearance.LargestMm ? Clearance.FromMillimetres(sum) : null;
}
