using System.Globalization;

namespace Workshop.Domain.Consumables;

/// <summary>One thing said of a gland, and whether it speaks against it.</summary>
/// <param name="Of">Squeeze, stretch or fill.</param>
public sealed record GlandRemark(string Of, string Sentence, bool IsAgainst);

/// <summary>
/// The usual bands of static seals, and what is said where a gland lies outside. Squeeze radial 10 to 30 %, between faces 15 to 33 %;
/// stretch of the inner diameter 0 to 5 %; fill at most 85 % (90 % with every tolerance at its worst). The bands of ISO 3601-2 are from memory;
/// the guidance of SAE AS4716 (at least 10, at most 30 %) and the tables of public seal design guides (radial 13 to 32 %, face 19 to 33 %) were
/// seen and lie about them.
/// </summary>
public static class GlandVerdict
{
    /// <summary>Where the bands come from, for the page.</summary>
    public const string Source =
        "Usual bands of static seals, as public seal handbooks state them; those of ISO 3601-2 are from memory. The engine maker's groove and ring come first.";

    private const double MostFill = 85;
    private const double MostFillAtWorst = 90;
    private const double MostPressedIn = 3;

    /// <summary>Smallest and largest squeeze that is usual, in percent.</summary>
    public static (double Least, double Most) SqueezeBand(GlandKind kind) =>
        kind is GlandKind.RadialOnPiston or GlandKind.RadialInBore ? (10, 30) : (15, 33);

    /// <summary>What is to be said of squeeze, stretch and fill, one sentence each.</summary>
    public static IReadOnlyList<GlandRemark> Of(GlandKind kind, GlandFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return [Squeeze(kind, fit.Squeeze), Stretched(kind, fit.Stretch), Filled(fit.Fill)];
    }

    private static GlandRemark Squeeze(GlandKind kind, PercentSpan squeeze)
    {
        var (least, most) = SqueezeBand(kind);
        return squeeze.Least <= 0 ? Against("squeeze", $"no squeeze: the ring may not touch at all ({Say(squeeze)}; {least:0} to {most:0} % is usual)")
            : squeeze.Least < least ? Against("squeeze", $"too little squeeze: {Say(squeeze)}; {least:0} to {most:0} % is usual")
            : squeeze.Most > most ? Against("squeeze", $"too much squeeze: {Say(squeeze)}; {least:0} to {most:0} % is usual")
            : For("squeeze", $"usual squeeze: {Say(squeeze)}");
    }

    private static GlandRemark Stretched(GlandKind kind, PercentSpan stretch)
    {
        if (kind == GlandKind.FacePressedOutward)
        {
            return stretch.Most > 0 ? Against("stretch", $"it may not reach the outer wall that pressure pushes it against: outer diameter {Say(stretch)}")
                : stretch.Least < -MostPressedIn ? Against("stretch", $"pressed in too far: outer diameter {Say(stretch)}; down to −{MostPressedIn:0} % is usual")
                : For("stretch", $"lies against the outer wall: outer diameter {Say(stretch)}");
        }

        return stretch.Most > (double)Stretch.MostPercent
            ? Against("stretch", $"stretched too far: {Say(stretch)}; 0 to {Stretch.MostPercent:0} % is usual")
            : stretch.Least < 0 && kind != GlandKind.RadialInBore
                ? Against("stretch", $"may lie loose: {Say(stretch)}; 0 to {Stretch.MostPercent:0} % is usual")
                : For("stretch", $"usual stretch: {Say(stretch)}");
    }

    private static GlandRemark Filled(PercentSpan fill) =>
        fill.Most > 100 ? Against("fill", $"overfilled: the ring takes more room than there is ({Say(fill)}); the faces would not close")
        : fill.Most > MostFillAtWorst ? Against("fill", $"too full: {Say(fill)}; at most {MostFill:0} % is usual, {MostFillAtWorst:0} % at worst, since rubber swells and grows when hot")
        : fill.Least > MostFill ? Against("fill", $"too full: {Say(fill)}; at most {MostFill:0} % is usual, since rubber swells and grows when hot")
        : For("fill", $"room enough: {Say(fill)} filled");

    private static GlandRemark For(string of, FormattableString sentence) => new(of, sentence.ToString(CultureInfo.InvariantCulture), false);

    private static GlandRemark Against(string of, FormattableString sentence) => new(of, sentence.ToString(CultureInfo.InvariantCulture), true);

    private static string Say(PercentSpan span) =>
        Round(span.Least) == Round(span.Most) ? $"{Round(span.Least)} %" : $"{Round(span.Least)} to {Round(span.Most)} %";

    private static string Round(double percent)
    {
        var rounded = Math.Round(percent, 1);
        return (rounded < 0 ? "−" : "") + Math.Abs(rounded).ToString("0.#", CultureInfo.InvariantCulture);
    }
}
