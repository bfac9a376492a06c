using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.JobCards;

/// <summary>Somebody says that a phase begins.</summary>
/// <param name="At">When it began; not to come.</param>
/// <param name="HasReason">Why it begins before its time is said.</param>
/// <param name="OilIn">Somebody confirms: oil is in, its level is checked, the tag is off.</param>
public sealed record PhaseToBegin(VisitPhase Phase, Instant At, bool HasReason = false, bool OilIn = false);

/// <summary>
/// Which phase may begin after which. What the engine or a person would be hurt by is refused; what is only early is refused
/// until a reason is given.
/// </summary>
public static class PhaseRules
{
    /// <summary>What a tag says when oil ran out.</summary>
    public const string NoOilTag = "No oil, do not start";

    /// <summary>Phases that a person may begin; waiting is said with what is waited for.</summary>
    public static readonly IReadOnlyList<VisitPhase> Begun =
    [
        VisitPhase.Arrival, VisitPhase.ColdSoak, VisitPhase.Work, VisitPhase.SealantCure, VisitPhase.WarmRun, VisitPhase.TestRide,
        VisitPhase.CoolAndRecheck, VisitPhase.HandOver,
    ];

    /// <summary>The cautions of a test ride, besides those of starting the engine.</summary>
    public static readonly IReadOnlyList<string> RideCodes = ["test-ride", "test-ride-fresh", "test-ride-road"];

    /// <summary>The engine runs in it, and stops at its end.</summary>
    public static bool EngineRuns(VisitPhase phase) => phase is VisitPhase.WarmRun or VisitPhase.TestRide;

    /// <summary>A technician is needed in it.</summary>
    public static bool HasTechnician(VisitPhase phase) => phase is
        VisitPhase.Arrival or VisitPhase.Work or VisitPhase.WarmRun or VisitPhase.TestRide or VisitPhase.CoolAndRecheck;

    /// <summary>Nothing when the phase may begin.</summary>
    /// <param name="visit">How far it is.</param>
    /// <param name="wish">What begins.</param>
    /// <param name="time">For the sentences.</param>
    public static Problem? RefuseBegin(VisitSoFar visit, PhaseToBegin wish, WorkshopTime time)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentNullException.ThrowIfNull(time);
        return RefuseNow(visit, wish, time)
            ?? RefuseOrder(visit, wish.Phase)
            ?? (wish.HasReason ? null : RefuseEarly(visit, wish, time))
            ?? RefuseDryEngine(visit, wish);
    }

    /// <summary>
    /// The phases that may be begun next, as far as their order goes, what usually comes next first; none while the visit waits.
    /// </summary>
    public static IReadOnlyList<VisitPhase> Offered(VisitSoFar visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return visit.Waits is not null
            ? []
            : Begun.Where(p => p != visit.Phase && Belongs(visit, p) && RefuseOrder(visit, p) is null).OrderBy(p => p < (visit.Phase ?? VisitPhase.Arrival)).ToArray();
    }

    /// <summary>A cure is offered where something is sealed, a re-check where the engine model asks for one.</summary>
    private static bool Belongs(VisitSoFar visit, VisitPhase phase) => phase switch
    {
        VisitPhase.SealantCure => visit.Cure > Duration.Zero,
        VisitPhase.CoolAndRecheck => visit.AsksForRecheck,
        _ => true,
    };

    /// <summary>The cautions of the moment at which a phase begins, in the order in which they matter.</summary>
    public static IReadOnlyList<Caution> CautionsAt(VisitSoFar visit, VisitPhase phase)
    {
        ArgumentNullException.ThrowIfNull(visit);
        string[] codes = phase switch
        {
            VisitPhase.Arrival when visit.DrainsOil => ["hot-oil", "oil-drained", "used-oil"],
            VisitPhase.WarmRun when visit.DrainsOil => ["turning-tool-off", "exhaust-extraction", "oil-in", "hot-oil"],
            VisitPhase.WarmRun => ["turning-tool-off", "exhaust-extraction"],
            VisitPhase.TestRide when visit.MayLackOil => ["turning-tool-off", "oil-in", .. RideCodes],
            VisitPhase.TestRide => ["turning-tool-off", .. RideCodes],
            _ => [],
        };
        return codes.Select(Cautions.Of).ToArray();
    }

    private static Problem? RefuseNow(VisitSoFar visit, PhaseToBegin wish, WorkshopTime time)
    {
        if (wish.Phase == VisitPhase.Waiting)
        {
            return Problem.Impossible("phase-not-begun", "phase", "phase is waiting: say what the visit waits for, and until when.");
        }

        if (visit.Waits is { } wait)
        {
            return Problem.Conflict("waits",
                $"Job card {visit.Number} waits for {wait.For.Spoken()} since {time.Say(wait.Since)}; go on with it first.");
        }

        if (visit.Phase == wish.Phase)
        {
            return Problem.Conflict("phase-begun",
                $"Job card {visit.Number} is in that phase already: {wish.Phase.Spoken()} since {time.Say(visit.Since)}.");
        }

        return wish.At < visit.Since
            ? Problem.Impossible("before-last-phase", "startedAt",
                $"startedAt is {time.Say(wish.At)}, before {visit.Phase?.Spoken() ?? "check-in"} at {time.Say(visit.Since)}; a later time is allowed.")
            : null;
    }

    private static Problem? RefuseOrder(VisitSoFar visit, VisitPhase phase) => phase switch
    {
        VisitPhase.Arrival when visit.WorkBegunAt is not null => Order(visit,
            "work on it has begun, so its arrival is over; to run it now is the warm run or the test ride."),
        VisitPhase.ColdSoak when visit.RanSinceWork => Order(visit,
            "it ran after the work; standing until it is cold again belongs to the re-check."),
        VisitPhase.SealantCure or VisitPhase.WarmRun or VisitPhase.TestRide or VisitPhase.CoolAndRecheck or VisitPhase.HandOver
            when visit.WorkBegunAt is null => Order(visit, $"{phase.Spoken()} comes after the work, which nobody has begun."),
        _ => null,
    };

    private static Problem? RefuseEarly(VisitSoFar visit, PhaseToBegin wish, WorkshopTime time) => wish.Phase switch
    {
        VisitPhase.Work when visit.ColdFrom > wish.At && visit.Phase is (null or VisitPhase.Arrival or VisitPhase.ColdSoak) => Early(visit, "soak-not-over",
            $"its engine is cold from {time.Say(visit.ColdFrom!.Value)} on, counted from its last stop; readings before that are not cold."),
        VisitPhase.WarmRun or VisitPhase.TestRide when visit.Cure > Duration.Zero && !visit.RanSinceWork => RefuseUncured(visit, wish, time),
        VisitPhase.HandOver when visit.AsksForRecheck && !visit.RecheckedSinceWork => Early(visit, "recheck-missing",
            "its engine model asks for a re-check once it has cooled, which nobody has begun."),
        _ => null,
    };

    private static Problem? RefuseUncured(VisitSoFar visit, PhaseToBegin wish, WorkshopTime time)
    {
        var minutes = VisitDuration.Say((int)visit.Cure.TotalMinutes);
        return visit.SinceWork(VisitPhase.SealantCure) switch
        {
            null => Early(visit, "cure-not-begun",
                $"its sealant hardens for {minutes} before oil or heat comes to it, and nobody said since when; begin that first."),
            { } cure when cure.StartedAt + visit.Cure > wish.At => Early(visit, "cure-not-over",
                $"its sealant hardens for {minutes}, until {time.Say(cure.StartedAt + visit.Cure)}, before oil or heat comes to it."),
            _ => null,
        };
    }

    private static Problem? RefuseDryEngine(VisitSoFar visit, PhaseToBegin wish) =>
        EngineRuns(wish.Phase) && !wish.OilIn && (visit.MayLackOil || visit.TagRemarkId is not null)
            ? Problem.Conflict("oil-not-confirmed",
                $"Job card {visit.Number}: oil was drained or a tag hangs on it. Confirm that oil is in, its level is checked and the tag is off before the engine is started.")
                with { Faults = [new FieldFault("oilIn", "oilIn is not confirmed: oil is in, its level is checked, the tag is off.")] }
            : null;

    private static Problem Order(VisitSoFar visit, string because) =>
        Problem.Conflict("phase-out-of-order", $"Job card {visit.Number}: {because}");

    private static Problem Early(VisitSoFar visit, string code, string because)
    {
        var sentence = $"Job card {visit.Number}: {because} Wait, or give the reason why not.";
        return Problem.Conflict(code, sentence) with { Faults = [new FieldFault("reason", sentence)] };
    }
}
