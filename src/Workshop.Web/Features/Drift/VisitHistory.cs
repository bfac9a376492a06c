using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Domain.Measures;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Drift;

/// <summary>An engine as it was known before a visit, and what it has done at it.</summary>
/// <param name="Known">Without this visit and without what came after.</param>
/// <param name="Fit">What is known of its engine model; absent where nothing is.</param>
/// <param name="WhyNot">Why there is no fit, where one was tried.</param>
/// <param name="EngineAt">By the check-in, or expected by the odometer's rate for the day that is booked.</param>
internal sealed record VisitHistory(EngineDrift Known, DriftFit? Fit, string? WhyNot, Distance EngineAt)
{
    /// <summary>Nothing where the engine is in no motorcycle any more.</summary>
    public static async Task<VisitHistory?> Load(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var before = new BeforeVisit(open.Card.Number, open.CheckIn?.CheckedInAt ?? Instant.MaxValue);
        var known = (await EngineDrift.Load(db, [open.Card.EngineId], ct, before)).Single();
        if (known is not { Fitting: { } fitting, Track: { } track })
        {
            return null;
        }

        var at = open.CheckIn is { } checkIn
            ? await db.OdometerReadings.Where(r => r.Id == checkIn.OdometerReadingId).Select(r => r.Distance).SingleAsync(ct)
            : known.ExpectedOn((await WorkshopTimes.Read(db, ct)).DayOf(open.Card.StartsAt)) ?? track.Last.Distance;
        var version = await CurrentFits.Read(db, known.EngineModelId, ct);
        return new VisitHistory(known, version?.Fit, version?.WhyNot, fitting.EngineDistanceAt(at));
    }
}
