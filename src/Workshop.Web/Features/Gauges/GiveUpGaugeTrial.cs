using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Gauges;

/// <summary>A study will not be finished. What was read stays, and nothing is worked out from it.</summary>
public static class GiveUpGaugeTrial
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }
    }

    public sealed record Answer(Guid Id, Instant GivenUpAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from gauge_trials where id = {request.Id} for no key update", ct);
        if (await GaugeTrialRows.Find(db, request.Id, ct) is not { } rows)
        {
            return Problem.NotFound($"Gauge study {request.Id}");
        }

        if (rows.Trial.GivenUpAt is not null || rows.Standing.Count == rows.Wanted)
        {
            return Problem.Conflict("ended", $"The study \"{rows.Trial.Name}\" is {(rows.Trial.GivenUpAt is null ? "complete" : "given up already")}.");
        }

        var trial = await db.GaugeTrials.SingleAsync(t => t.Id == request.Id, ct);
        trial.GivenUpAt = clock.GetCurrentInstant();
        await db.SaveChangesAsync(ct);
        return new Answer(trial.Id, trial.GivenUpAt.Value);
    }
}
