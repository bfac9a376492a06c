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
    public sealed record Answer(int Number, ShimRange? Shims, string Basis, IReadOnlyList<Valve> Valves);

    /// <param name="OldMm">What lay in the valve when it was measured; absent where it is not known.</param>
    /// <param name="IdealMm">The thickness that would give the set-to clearance, to 0.0001 mm.</param>
    /// <param name="NewMm">The shim to fit, or to order.</param>
    /// <param name="FittedMm">What was fitted at this visit already.</param>
    public sealed record Valve(
        ValveKey Key,
        string Name,
        ShimAdvice Advice,
        string Why,
        ShimThickness? OldMm,
        decimal? IdealMm,
        ShimThickness? NewMm,
        StockCondition? Condition,
        ShimThickness? FittedMm,
        IReadOnlyList<Lobe> Lobes);

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
        var box = open.Specification.Shims is { } range ? await ShimBox.Read(db, range, ct) : [];
        return new Answer(
            request.Number,
            open.Specification.Shims,
            "The present clearance is taken as the middle of its bracket. Shims are handed out valve by valve, the farthest from its aim first.",
            [.. ShimProposals.For(open.Specification, valves, box, request.All).Select(p => Say(p, measured))]);
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

    private static Valve Say(ShimProposal proposal, CardMeasurements measured) => new(
        proposal.Valve,
        proposal.Valve.Spoken,
        proposal.Advice,
        proposal.Why,
        proposal.Old,
        proposal.IdealMm is { } ideal ? decimal.Round(ideal, 4) : null,
        proposal.New,
        proposal.Condition,
        ShimRules.Standing(measured.Shims, proposal.Valve, Domain.Clearances.Stage.AsLeft)?.Thickness,
        [.. proposal.Lobes.Select(l => new Lobe(
            l.Lobe, l.Found.Go, l.Found.NoGo, l.Verdict.Sentence, l.FoundMm, l.PredictedMm, l.Limits))]);
}
