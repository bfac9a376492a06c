using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>
/// The manager says at which probability of a valve being outside its limits an engine is to be checked, whatever the interval
/// says. All forecasts are written anew by it.
/// </summary>
public static class SetDriftThreshold
{
    public const decimal SmallestPercent = 0.1m;
    public const decimal LargestPercent = 50m;

    public sealed record Request(decimal? ThresholdPercent);

    public sealed record Answer(decimal ThresholdPercent);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.ThresholdPercent).IsGiven("the threshold in per cent")
            .IsWithin(SmallestPercent, LargestPercent, 1, "%");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var profile = await db.WorkshopProfiles.SingleAsync(ct);
        profile.DriftThreshold = (double)request.ThresholdPercent!.Value / 100;
        await db.SaveChangesAsync(ct);
        await Refits.Request(db, await db.EngineModels.Select(m => m.Id).ToListAsync(ct), clock, ct);
        return new Answer(request.ThresholdPercent.Value);
    }
}
