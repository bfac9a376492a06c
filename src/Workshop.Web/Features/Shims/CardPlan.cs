using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Shims;

/// <summary>The shim plan of a card, as everybody sees it: by what was measured, what is to be had, and what was last chosen.</summary>
internal sealed record CardPlan(OpenCard Open, CardMeasurements Measured, ShimPlanChoice? Choice, ShimPlan Plan)
{
    /// <summary>What was last asked of the plan; nothing where nobody has.</summary>
    public static Task<ShimPlanChoice?> LastChoice(WorkshopDbContext db, int number, CancellationToken ct) =>
        db.ShimPlanChoices.AsNoTracking().Where(c => c.JobCardNumber == number).OrderByDescending(c => c.Version).FirstOrDefaultAsync(ct);

    public static async Task<CardPlan> Make(WorkshopDbContext db, OpenCard open, ShimPlanChoice? choice, CancellationToken ct)
    {
        var number = open.Card.Number;
        var measured = await CardMeasurements.Load(db, number, ct);
        var empty = await EmptyValves.Of(db, number, ct);
        var valves = MeasuredValves.Of(
            open.Specification, measured.Readings, measured.Shims, measured.Events, await EarlierShims.Read(db, open, ct));
        var uncertainty = await MeasuringUncertainty.Of(db, measured, ct);
        var policy = await db.UsedShimPolicy(ct);
        var drift = await PlanDrift.Read(db, open, (double)uncertainty.MicrometerMm, ct);
        var plan = ShimPlanner.For(new PlanTask
        {
            Specification = open.Specification,
            Measured = [.. valves.Select(v => v with { Empty = empty.Contains(v.Valve) })],
            Shims = await ShimBox.Lots(db, open, ct),
            ShaftsOut = await ShaftsOut(db, open, measured, ct),
            Levels = drift.Levels,
            DriftMmPer10000Km = drift.DriftMmPer10000Km,
            Leaving = drift.Leaving,
            Options = (choice?.ToOptions() ?? new PlanOptions()) with
            {
                MayMoveBetweenValves = policy != UsedShimPolicy.Never,
                Threshold = drift.Threshold,
                BladeUncertaintyMm = uncertainty.BladeMm, MicrometerUncertaintyMm = uncertainty.MicrometerMm,
            },
        });
        return new CardPlan(open, measured, choice, plan);
    }

    /// <summary>Shafts of valves whose shims were out at this visit lie on the bench until as left opens.</summary>
    private static async Task<IReadOnlySet<string>> ShaftsOut(
        WorkshopDbContext db, OpenCard open, CardMeasurements measured, CancellationToken ct)
    {
        var touched = measured.Shims.Select(s => s.Valve).ToHashSet();
        return touched.Count > 0 && (await AsLeft.Against(db, open, measured, ct)).Count > 0
            ? open.Specification.Camshafts.Where(c => c.Valves.Any(touched.Contains)).Select(c => c.Code).ToHashSet(StringComparer.Ordinal)
            : new HashSet<string>();
    }
}
