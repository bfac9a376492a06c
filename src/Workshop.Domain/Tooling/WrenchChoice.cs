using System.Globalization;
using NodaTime;

namespace Workshop.Domain.Tooling;

/// <summary>A wrench that does not do, and why, in words that go on after its name.</summary>
public sealed record WrenchAgainst(WrenchOnHand OnHand, string Reason);

/// <summary>
/// Which wrench, with which adapter, set to what. The best comes first, and best is, one after the other: marks that are
/// known; nothing in between rather than an adapter, whose length and angle are further errors; the smallest error of rounding;
/// a setting that is not at an end of the scale, where a wrench is least sure (common practice, no source); the finest scale, that is
/// the smallest rated maximum; an adapter across rather than straight on, since its length then does not matter.
/// </summary>
/// <param name="Against">Wrenches that do not do in any of the ways tried.</param>
/// <param name="Missing">Where none suits: which range is missing, and what comes nearest.</param>
/// <param name="AccessNote">Where no socket goes on.</param>
public sealed record WrenchChoice(IReadOnlyList<WrenchOffer> Offers, IReadOnlyList<WrenchAgainst> Against, string? Missing, string? AccessNote)
{
    /// <summary>The angles at which an offset adapter is tried: straight on, and across.</summary>
    private static readonly decimal[] Angles = [0, 90];

    /// <summary>The choice for one torque.</summary>
    /// <param name="task">The torque and where it goes.</param>
    /// <param name="wrenches">All of the workshop's; those that may not be used are told with their reason.</param>
    /// <param name="adapters">All of the workshop's. Extension bars change nothing and are not offered of themselves.</param>
    /// <param name="day">The workshop's day of the work.</param>
    public static WrenchChoice For(
        WrenchTask task, IReadOnlyCollection<WrenchOnHand> wrenches, IReadOnlyCollection<WrenchAdapter> adapters, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(wrenches);
        ArgumentNullException.ThrowIfNull(adapters);
        var fitting = adapters
            .Where(a => a.Kind == WrenchAdapterKind.OffsetAdapter && !a.Retired && DrivenTool.Fits(task.Tool, a.Tool))
            .ToList();
        var offers = new List<WrenchOffer>();
        var against = new List<WrenchAgainst>();
        foreach (var wrench in wrenches)
        {
            var tried = Ways(fitting).Select(way => WrenchJudgement.Of(task, wrench, way.Adapter, way.Angle, day)).ToList();
            var good = tried.Select(t => t.Offer).OfType<WrenchOffer>().ToList();
            offers.AddRange(good);
            if (good.Count == 0)
            {
                // The last way is the nearest to doing: where a ring is needed, "takes no socket" says less than what is wrong with the ring.
                against.Add(new WrenchAgainst(wrench, tried[task.SpaceOverMm is null ? 0 : ^1].Against!));
            }
        }

        return new WrenchChoice(
            [.. Sorted(offers)],
            [.. against.OrderBy(a => a.OnHand.Name, StringComparer.Ordinal)],
            offers.Count > 0 ? null : SayMissing(task, against, fitting, day),
            SayAccess(task.SpaceOverMm));
    }

    /// <summary>"Thin ring needed: 9 mm are free over the head."; nothing where a socket goes on.</summary>
    public static string? SayAccess(decimal? spaceOverMm) => spaceOverMm is { } space
        ? string.Create(CultureInfo.InvariantCulture, $"Thin ring needed: {space:0.##} mm are free over the head.")
        : null;

    private static IEnumerable<(WrenchAdapter? Adapter, decimal Angle)> Ways(IReadOnlyCollection<WrenchAdapter> fitting) =>
        fitting.SelectMany(_ => Angles, (adapter, angle) => ((WrenchAdapter?)adapter, angle)).Prepend((null, 0));

    private static IEnumerable<WrenchOffer> Sorted(IEnumerable<WrenchOffer> offers) => offers
        .OrderBy(o => o.Scale.Graduation is null)
        .ThenBy(o => o.Adapter is not null)
        .ThenBy(o => decimal.Round(Math.Abs(o.ErrorPercent), 6))
        .ThenBy(o => o.Scale.IsAtEnd(o.Dialled))
        .ThenBy(o => o.Scale.Rated * o.Scale.NewtonMetres)
        .ThenByDescending(o => o.AngleDegrees == 90)
        .ThenBy(o => o.OnHand.Name, StringComparer.Ordinal)
        .ThenBy(o => o.Adapter?.Name, StringComparer.Ordinal);

    private static string SayMissing(
        WrenchTask task, IReadOnlyCollection<WrenchAgainst> against, IReadOnlyCollection<WrenchAdapter> fitting, LocalDate day)
    {
        if (task.SpaceOverMm is { } space && !fitting.Any(a => a.ThicknessMm <= space))
        {
            var nearest = fitting.Where(a => a.ThicknessMm is not null).MinBy(a => a.ThicknessMm);
            return string.Create(CultureInfo.InvariantCulture, $"a ring for {task.Tool}, at most {space:0.##} mm thick, is missing")
                + (nearest is null ? "" : string.Create(CultureInfo.InvariantCulture, $"; the thinnest, {nearest.Name}, is {nearest.ThicknessMm:0.##} mm"));
        }

        var said = new List<string> { $"a wrench for {task.Wanted} is missing" };
        var held = against.Where(a => InstrumentStanding.ReasonAgainst(a.OnHand.Wrench, day, a.OnHand.Cycles) is not null).ToList();
        if (Nearest(task, against.Except(held)) is { } near)
        {
            said.Add($"the nearest, {near.OnHand.Name}, {near.Reason}");
        }

        said.AddRange(held.Where(a => IsInReach(task, a.OnHand.Wrench)).Select(a => $"{a.OnHand.Name} would suit, but {a.Reason}"));
        return string.Join("; ", said);
    }

    private static WrenchAgainst? Nearest(WrenchTask task, IEnumerable<WrenchAgainst> against) => against
        .Where(a => WrenchScale.Of(a.OnHand.Wrench) is not null)
        .OrderBy(a => Distance(task, WrenchScale.Of(a.OnHand.Wrench)!))
        .ThenBy(a => a.OnHand.Name, StringComparer.Ordinal)
        .FirstOrDefault();

    private static bool IsInReach(WrenchTask task, Instrument wrench) =>
        WrenchScale.Of(wrench) is { } scale && Distance(task, scale) == 0;

    /// <summary>How far the torque lies outside what the scale is good for, in N.m.</summary>
    private static decimal Distance(WrenchTask task, WrenchScale scale)
    {
        var torque = task.Torque.NewtonMetres;
        return Math.Max(0, Math.Max((scale.Lowest * scale.NewtonMetres) - torque, torque - (scale.Rated * scale.NewtonMetres)));
    }
}
