using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Shims;

/// <summary>Which shim goes where: the best plan by what was measured on the card, what is to be had, and what was chosen by hand.</summary>
public static class GetShimPlan
{
    public sealed record Request(int Number);

    /// <param name="Shims">The engine model's shims; absent for screw and locknut.</param>
    /// <param name="Version">Of what was asked of the plan; 0 where nobody has.</param>
    /// <param name="Basis">How the present clearance is taken.</param>
    /// <param name="Totals">What the plan costs, in the order in which plans are compared.</param>
    /// <param name="Shafts">The camshafts or follower shafts that have to come out for it.</param>
    /// <param name="SetAside">Choices made by hand that could not be kept, and why.</param>
    /// <param name="Doubts">Valves where found, left and shims do not agree.</param>
    public sealed record Answer(
        int Number,
        ShimRange? Shims,
        int Version,
        PlanAim Aim,
        bool SetAll,
        GuardBand Guard,
        string Basis,
        PlanTotals Totals,
        IReadOnlyList<string> Shafts,
        IReadOnlyList<string> SetAside,
        IReadOnlyList<string> Doubts,
        IReadOnlyList<Valve> Valves);

    /// <param name="OldMm">What lay in the valve when it was measured; absent where it is not known.</param>
    /// <param name="IdealMm">The thickness that would give the clearance aimed at, to 0.0001 mm.</param>
    /// <param name="NewMm">The shim to fit, or to order.</param>
    /// <param name="Shim">The shim to fit; absent where none is to be had.</param>
    /// <param name="Locked">Chosen by hand.</param>
    /// <param name="Offered">Near a limit, under a shaft that comes out anyway: another shim costs no access.</param>
    /// <param name="FittedMm">What was fitted at this visit already.</param>
    /// <param name="Alternatives">What else could be done, and what that would cost.</param>
    /// <param name="Nearest">Where a shim has to be ordered: what comes nearest of what is to be had.</param>
    public sealed record Valve(
        ValveKey Key,
        string Name,
        ShimAdvice Advice,
        string Why,
        ShimThickness? OldMm,
        decimal? IdealMm,
        ShimThickness? NewMm,
        Shim? Shim,
        bool Locked,
        bool Offered,
        ShimThickness? FittedMm,
        IReadOnlyList<Lobe> Lobes,
        IReadOnlyList<Alternative> Alternatives,
        Alternative? Nearest);

    /// <param name="Code">What a choice by hand names it by.</param>
    /// <param name="FromValve">The valve that it lies in or came out of; absent in the box.</param>
    public sealed record Shim(
        string Code, ShimThickness ThicknessMm, StockCondition Condition, LotSource Source, string Place, ValveKey? FromValve);

    /// <param name="FoundMm">The clearance now; absent where the bracket is open.</param>
    /// <param name="AimMm">What its shim is chosen for.</param>
    /// <param name="PredictedMm">With the shim advised.</param>
    /// <param name="UncertaintyMm">Standard uncertainty of the prediction, or of the clearance now.</param>
    /// <param name="NearLimit">By the guard band.</param>
    /// <param name="LastsKm">To a limit at its drift so far; absent where no drift is known.</param>
    public sealed record Lobe(
        int Number,
        Clearance? GoMm,
        Clearance? NoGoMm,
        string Verdict,
        decimal? FoundMm,
        decimal AimMm,
        decimal? PredictedMm,
        decimal UncertaintyMm,
        bool NearLimit,
        decimal? LastsKm,
        ClearanceLimits Limits);

    /// <param name="Shim">Absent where the valve would stay as it is.</param>
    /// <param name="PredictedMm">Per lobe.</param>
    /// <param name="Cost">In words, beside the plan.</param>
    public sealed record Alternative(Shim? Shim, IReadOnlyList<decimal> PredictedMm, string Cost);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        (await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem)
            ? await Say(db, await CardPlan.Make(db, open, await CardPlan.LastChoice(db, request.Number, ct), ct), ct)
            : problem;

    internal static async Task<Answer> Say(WorkshopDbContext db, CardPlan card, CancellationToken ct)
    {
        var (plan, choice) = (card.Plan, card.Choice);
        return new Answer(
            card.Open.Card.Number,
            card.Open.Specification.Shims,
            choice?.Version ?? 0,
            choice?.Aim ?? PlanAim.SetTo,
            choice?.SetAll ?? false,
            choice?.Guard ?? GuardBand.Off,
            plan.Basis,
            plan.Totals,
            [.. plan.Shafts.Select(s => s.Name)],
            [.. plan.SetAside.Select(s => s.Sentence)],
            [.. (await Fitted.Doubts(db, card.Open, card.Measured, ct)).Select(d => d.Sentence)],
            [.. plan.Valves.Select(v => Say(v, card))]);
    }

    private static Valve Say(ValvePlan plan, CardPlan card) => new(
        plan.Valve,
        plan.Valve.Spoken,
        plan.Advice,
        plan.Why,
        plan.Old,
        plan.IdealMm is { } ideal ? decimal.Round(ideal, 4) : null,
        plan.New,
        Say(plan.Shim),
        plan.Locked,
        plan.Offered,
        ShimRules.Standing(card.Measured.Shims, plan.Valve, Stage.AsLeft)?.Thickness,
        [.. plan.Lobes.Select(l => new Lobe(
            l.Lobe, l.Found.Go, l.Found.NoGo, l.Verdict.Sentence, l.LevelMm, l.AimMm, l.PredictedMm,
            decimal.Round((decimal)l.UncertaintyMm, 4), l.NearLimit, l.LastsKm is { } km ? decimal.Round(km, 0) : null, l.Limits))],
        [.. plan.Alternatives.Select(Say)],
        plan.Nearest is { } nearest ? Say(nearest) : null);

    private static Alternative Say(ShimAlternative alternative) => new(Say(alternative.Shim), alternative.PredictedMm, alternative.Cost);

    private static Shim? Say(ShimLot? lot) => lot is null
        ? null
        : new Shim(lot.Code, lot.Thickness, lot.Condition, lot.Source, lot.Place, lot.Valve);
}
