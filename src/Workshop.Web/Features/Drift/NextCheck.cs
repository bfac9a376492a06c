using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Features.Drift;

/// <summary>When an engine's valves are checked next by the interval alone; a check that is overdue is one at the last reading.</summary>
/// <param name="On">The day.</param>
/// <param name="EngineAt">What the engine will have done then.</param>
internal sealed record NextCheck(LocalDate On, Distance EngineAt)
{
    /// <summary>By engine; an engine that is in no motorcycle, or whose maker wants no check, has none.</summary>
    public static async Task<IReadOnlyDictionary<Guid, NextCheck>> Load(
        WorkshopDbContext db, IReadOnlyList<EngineDrift> engines, CancellationToken ct)
    {
        var fittings = engines.Select(e => e.Fitting).OfType<EngineFitting>().ToDictionary(f => f.MotorcycleId);
        var histories = await DueHistory.Load(db, [.. fittings.Keys], ct);
        var checks = new Dictionary<Guid, NextCheck>();
        foreach (var history in histories)
        {
            if (Of(history, fittings[history.MotorcycleId]) is { } check)
            {
                checks.Add(fittings[history.MotorcycleId].EngineId, check);
            }
        }

        return checks;
    }

    private static NextCheck? Of(DueHistory history, EngineFitting fitting)
    {
        var subject = history.Subject;
        var item = subject.Specification.ServiceItems.FirstOrDefault(i => i.Kind == ServiceItemKind.ValveClearanceCheck && i.Interval is not null);
        if (item is null || subject.Next(item, byForecast: false) is not { } due)
        {
            return null;
        }

        // By the calendar it comes when the rate has brought it less far than the interval.
        var last = subject.Track.Last;
        var byThen = subject.Rate.DistanceOn(due.ExpectedOn, last);
        var at = due.At is { } far && far < byThen ? far : due.On is null ? due.At!.Value : byThen;
        return new NextCheck(due.ExpectedOn, fitting.EngineDistanceAt(at < last.Distance ? last.Distance : at));
    }
}
