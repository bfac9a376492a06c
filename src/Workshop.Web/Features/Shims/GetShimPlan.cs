using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Shims;

/// <summary>Which shim goes where, by what was measured on the card and what lies in the box.</summary>
public static class GetShimPlan
{
    /// <param name="All">Also valves within their limits, where a shim from the box brings them nearer to their aim.</param>
    public sealed record Request(int Number, bool All = false);

    /// <param name="Shims">The engine model's shims; absent for screw and locknut.</param>
    /// <param name="Basis">How the present clearance is taken.</param>
    /// <param name="Totals">What the plan costs, in the order in which plans are compared.</param>
    /// <param name="Shafts">The camshafts or follower shafts that have to come out for it.</param>
    /// <param name="Notes">What could not be done as asked.</param>
    public sealed record Answer(
        int Number,
        ShimRange? Shims,
        string Basis,
        PlanTotals Totals,
        IReadOnlyList<string> Shafts,
        IReadOnlyList<string> Notes,
        IReadOnlyList<Valve> Valves);

    /// <param name="OldMm">What lay in the valve when it was measured; absent where it is not known.</param>
    /// <param name="IdealMm">The thickness that would give the set-to clearance, to 0.0001 mm.</param>
    /// <param name="NewMm">The shim to fit, or to order.</param>
    /// <param name="Source">Where the shim to fit lies.</param>
    /// <param name="FromValve">The valve that it lies in, where it is another valve's.</param>
    /// <param name="FittedMm">What was fitted at this visit already.</param>
    /// <param name="Alternatives">What else could go in, and what that would cost.</param>
    public sealed record Valve(
        ValveKey Key,
        string Name,
        ShimAdvice Advice,
        string Why,
        ShimThickness? OldMm,
        decimal? IdealMm,
        ShimThickness? NewMm,
        StockCondition? Condition,
        LotSource? Source,
        ValveKey? FromValve,
        ShimThickness? FittedMm,
        IReadOnlyList<Lobe> Lobes,
        IReadOnlyList<Alternative> Alternatives);

    /// <param name="ThicknessMm">Absent where the valve would stay as it is.</param>
    /// <param name="PredictedMm">Per lobe.</param>
    /// <param name="Cost">In words, beside the plan.</param>
    public sealed record Alternative(
        ShimThickness? ThicknessMm, StockCondition? Condition, LotSource? Source, IReadOnlyList<decimal> PredictedMm, string Cost);

    /// <param name="FoundMm">Middle of the bracket.</param>
    /// <param name="PredictedMm">With the shim advised.</param>
    public sealed record Lobe(
        int Number, Clearance? GoMm, Clearance? NoGoMm, string Verdict, decimal? FoundMm, decimal? PredictedMm, ClearanceLimits Limits);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var measured = await CardMeasurements.Load(db, request.Number, ct);
        var valves = MeasuredValves.Of(
            open.Specification, measured.Readings, measured.Shims, measured.Events, await ShimsBefore(db, open, ct));
        var policy = await db.UsedShimPolicy(ct);
        var plan = ShimPlanner.For(new PlanTask
        {
            Specification = open.Specification,
            Measured = valves,
            Shims = await ShimBox.Lots(db, open, ct),
            Options = new PlanOptions { SetAll = request.All, MayMoveBetweenValves = policy != UsedShimPolicy.Never },
        });
        return new Answer(
            request.Number, open.Specification.Shims, plan.Basis, plan.Totals, [.. plan.Shafts.Select(s => s.Name)], plan.Notes,
            [.. plan.Valves.Select(p => Say(p, measured))]);
    }

    private static async Task<IReadOnlyDictionary<ValveKey, ShimThickness>> ShimsBefore(
        WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        // Rows of this card are left out by its number; what came later, on another card, by the time of this check-in.
        var (engine, number) = (open.Card.EngineId, open.Card.Number);
        var before = open.CheckIn?.CheckedInAt ?? Instant.MaxValue;
        return MeasuredValves.ShimsBefore(
            await db.ShimObservations.AsNoTracking()
                .Where(s => s.EngineId == engine && s.JobCardNumber != number && s.MeasuredAt <= before).ToListAsync(ct),
            await db.ValveEvents.AsNoTracking()
                .Where(e => e.EngineId == engine && e.JobCardNumber != number && e.HappenedAt <= before).ToListAsync(ct));
    }

    private static Valve Say(ValvePlan plan, CardMeasurements measured) => new(
        plan.Valve,
        plan.Valve.Spoken,
        plan.Advice,
        plan.Why,
        plan.Old,
        plan.IdealMm is { } ideal ? decimal.Round(ideal, 4) : null,
        plan.New,
        plan.Shim?.Condition,
        plan.Shim?.Source,
        plan.Shim?.Source == LotSource.Valve ? plan.Shim.Valve : null,
        ShimRules.Standing(measured.Shims, plan.Valve, Domain.Clearances.Stage.AsLeft)?.Thickness,
        [.. plan.Lobes.Select(l => new Lobe(
            l.Lobe, l.Found.Go, l.Found.NoGo, l.Verdict.Sentence, l.LevelMm, l.PredictedMm, l.Limits))],
        [.. plan.Alternatives.Select(a => new Alternative(a.Shim?.Thickness, a.Shim?.Condition, a.Shim?.Source, a.PredictedMm, a.Cost))]);
}
