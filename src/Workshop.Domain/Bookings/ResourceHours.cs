using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>A resource as it was held by a visit: until the sign-off, where that came sooner than planned.</summary>
public sealed record HeldBy(int JobCardNumber, Guid ResourceId, VisitPhase Phase, Interval Span);

/// <summary>The hours of one bay or technician over a period.</summary>
/// <param name="Available">A bay: opening hours less what it was out of use; a technician: working hours less breaks and absences.</param>
/// <param name="Held">Of these, taken by visits.</param>
/// <param name="HeldBeside">Taken outside of them: a bay overnight.</param>
/// <param name="Sold">Labour of what was done on the visits that were signed off.</param>
public sealed record ResourceUse(Resource Resource, Duration Available, Duration Held, Duration HeldBeside, Duration Sold)
{
    public Duration Idle => Available - Held;

    /// <summary>Of the time that was available; nothing where there was none.</summary>
    public double? HeldShare => Available > Duration.Zero ? Held / Available : null;

    /// <summary>Hours sold for each hour held: above 1 where the work goes faster than the labour that is charged.</summary>
    public double? SoldPerHeld => Held + HeldBeside > Duration.Zero ? Sold / (Held + HeldBeside) : null;
}

/// <summary>Hours sold, worked and idle. Pure counting.</summary>
public static class ResourceHours
{
    /// <summary>The hours of each resource.</summary>
    /// <param name="period">What is looked at.</param>
    /// <param name="available">Per resource: when it could be taken; spans that do not overlap.</param>
    /// <param name="held">What visits held, of all phases; spans of one resource do not overlap.</param>
    /// <param name="sold">Per job card that was signed off in the period: minutes of labour of what was done.</param>
    public static IReadOnlyList<ResourceUse> Of(
        Interval period,
        IReadOnlyCollection<(Resource Resource, IReadOnlyList<Interval> There)> available,
        IReadOnlyCollection<HeldBy> held,
        IReadOnlyDictionary<int, int> sold)
    {
        ArgumentNullException.ThrowIfNull(available);
        ArgumentNullException.ThrowIfNull(held);
        ArgumentNullException.ThrowIfNull(sold);
        var credited = sold
            .SelectMany(card => Workers(card.Key, available.Select(a => a.Resource), held).Select(id => (Id: id, card.Value)))
            .ToLookup(c => c.Id, c => c.Value);
        return [.. available.Select(a =>
        {
            var mine = TakenAtOnce.Cut(held.Where(h => h.ResourceId == a.Resource.Id).Select(h => h.Span), [period]);
            var there = TakenAtOnce.Cut(a.There, [period]);
            var within = TakenAtOnce.Total(TakenAtOnce.Cut(mine, there));
            return new ResourceUse(
                a.Resource, TakenAtOnce.Total(there), within, TakenAtOnce.Total(mine) - within,
                Duration.FromMinutes(credited[a.Resource.Id].Sum()));
        })];
    }

    /// <summary>The bay and the technician that had most of the work of a visit: its labour counts for them whole.</summary>
    private static IEnumerable<Guid> Workers(int card, IEnumerable<Resource> resources, IReadOnlyCollection<HeldBy> held)
    {
        var work = held.Where(h => h.JobCardNumber == card && h.Phase == VisitPhase.Work).ToLookup(h => h.ResourceId, h => h.Span);
        return resources.Where(r => work.Contains(r.Id))
            .GroupBy(r => r.Kind)
            .Select(kind => kind.OrderByDescending(r => TakenAtOnce.Total(work[r.Id])).ThenBy(r => r.Id).First().Id);
    }
}
