using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>How far the last request for the whole fleet is, and what the fleet rides by it.</summary>
public static class GetRecompute
{
    public sealed record Request;

    /// <param name="UnderWay">Begun and not at its end.</param>
    /// <param name="Written">Motorcycles whose rows rest on it already, of <paramref name="Motorcycles"/>.</param>
    public sealed record Answer(
        Guid Id, bool UnderWay, Instant RequestedAt, Instant? StartedAt, Instant? FinishedAt, int Motorcycles, int Written, Riding? Riding);

    /// <param name="Yearly">Of the motorcycle in the middle.</param>
    /// <param name="SeasonAmplitude">How far the busiest and the quietest day are from the average, as a part of it; 0 without a season.</param>
    /// <param name="SeasonProbability">Of so much of a season by chance.</param>
    public sealed record Riding(
        [property: JsonPropertyName("kmPerYear")] Distance Yearly, double SeasonAmplitude, double? SeasonProbability, int Motorcycles);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var last = await db.DueRecomputes.AsNoTracking().OrderByDescending(r => r.RequestedAt).FirstOrDefaultAsync(ct);
        if (last is null)
        {
            return Problem.NotFound("A request to reckon the whole fleet anew");
        }

        var riding = await db.FleetRidings.AsNoTracking().SingleOrDefaultAsync(r => r.Version == last.FleetRidingVersion, ct);
        return AnswerOf(last, riding?.Riding);
    }

    internal static Answer AnswerOf(DueRecompute job, FleetRiding? riding) => new(
        job.Id, job.StartedAt is not null && job.FinishedAt is null, job.RequestedAt, job.StartedAt, job.FinishedAt, job.Motorcycles,
        job.Written, riding is null ? null : new Riding(RidingRate.Yearly(riding.PerDay), riding.Season.Amplitude, riding.SeasonProbability, riding.Motorcycles));
}
