using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Arrivals;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.Compression;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Finishing;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Ignition;
using Workshop.Web.Features.Shims;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Features.TorqueSheets;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bays;

/// <summary>
/// The job in a bay, for a tablet beside the engine: one step at a time, with what that step needs. Every form works without
/// scripts; the modules of <c>assets/bay</c> send the same through the queue of the device.
/// </summary>
public sealed class BayModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid Bay { get; set; }

    /// <summary>The job card; the first of the bay where it is not given.</summary>
    [BindProperty(SupportsGet = true)]
    public int? Card { get; set; }

    /// <summary>The step; where one is, where it is not given.</summary>
    [BindProperty(SupportsGet = true)]
    public BayStep? Step { get; set; }

    [BindProperty(SupportsGet = true)]
    public MeasureWish Wish { get; set; } = new();

    [BindProperty]
    public BladeTap Tap { get; set; } = new();

    [BindProperty]
    public PauseReason? Reason { get; set; }

    [BindProperty]
    public ConfirmHandTurns.Request Turns { get; set; } = new();

    [BindProperty]
    public RecordArrival.Request Arrived { get; set; } = new();

    [BindProperty]
    public RecordCompression.Request Tested { get; set; } = new();

    [BindProperty]
    public RecordPlugs.Request Plugged { get; set; } = new();

    public GetArrival.Answer? Arrival { get; private set; }

    /// <summary>What is asked and known of cylinders and plugs, at their step.</summary>
    internal BayCylinders? Cylinders { get; private set; }

    /// <summary>What is tightened, at its step.</summary>
    internal BayTorque? Torque { get; private set; }

    public GetBay.Answer Floor { get; private set; } = null!;

    public GetBay.Job? Job { get; private set; }

    public CardHead? Head { get; private set; }

    public GetBayJob.Answer? Work { get; private set; }

    public GetWorkClock.Answer? Worked { get; private set; }

    public IReadOnlyList<GetCautions.Row> Cautions { get; private set; } = [];

    public MeasureView? Measure { get; private set; }

    public ValveMap? Map { get; private set; }

    public GetShimPlan.Answer? Plan { get; private set; }

    /// <summary>What follows the work, in the steps that show some of it.</summary>
    public AfterWorkView? After { get; private set; }

    public bool MayWork { get; private set; }

    /// <summary>The step that is shown.</summary>
    public BayStep Shown { get; private set; }

    public Guid PersonId { get; private set; }

    public Instant Now { get; private set; }

    /// <summary>The address of this screen with another step or with what was tapped.</summary>
    public string AddressOf(BayStep step, string more = "") => $"/bays/{Bay}?card={Card}&step={step}{more}";

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostBlade()
    {
        if (!await May(Policies.Measures))
        {
            return Forbid();
        }

        var (sets, _) = await BladeSet.Read(db, await Today(), HttpContext.RequestAborted);
        var set = sets.FirstOrDefault(s => s.Id == Wish.Set);
        var bracket = set is null ? null : BladeAnswer.Read(set.Blades, Tap.Says, Tap.With);
        if (bracket is null && ModelState.IsValid)
        {
            ModelState.AddModelError("", set is null
                ? "The feeler set is not chosen, or may not be used today: choose one."
                : $"The set {set.Name} has no blade for what was tapped: {Tap.Says}.");
        }

        return await Write(
            Tap.ToReadings(Card ?? 0, Wish, bracket),
            RecordReadings.Handle,
            written =>
            {
                var read = written.Readings.Single();
                Done = string.Join(" ",
                    new[] { $"{new LobeKey(read.Valve, read.Lobe).Spoken}: {read.Words}.", Told(read) }.Concat(written.Warnings).Concat(written.Checks).Where(s => s.Length > 0));
                return Redirect(AddressOf(StepOf(Tap.Stage ?? Stage.AsFound), $"&{Wish.With(after: new LobeKey(read.Valve, read.Lobe))}"));
            },
            again: Show,
            prefix: nameof(Tap));
    }

    public Task<IActionResult> OnPostPosition() => Do(
        new ConfirmPosition.Request { Number = Card ?? 0, Stage = Tap.Stage, Position = Tap.Position, MarkAndLobes = true },
        ConfirmPosition.Handle, p => $"{p.Position}: mark and lobes confirmed.", $"&{Wish.With(after: null)}");

    /// <summary>What was found stands as left at every valve whose camshaft stayed in, in one tap.</summary>
    public async Task<IActionResult> OnPostCarry()
    {
        var open = (await Read(new GetBayJob.Request(Card ?? 0), GetBayJob.Handle)).TryGet(out var work, out _) ? work.NotDisturbed : [];
        return await Do(
            new RecordReadings.Request
            {
                Number = Card ?? 0,
                Events = [.. open.Where(u => !u.Carried).Select(u => new RecordReadings.EventRow { Valve = u.Valve.ToString(), Kind = ValveEventKind.NotDisturbed })],
            },
            RecordReadings.Handle, written => $"{written.Events} valves were not disturbed: what was found stands as left.");
    }

    public Task<IActionResult> OnPostTurned() => Do(
        Turns with { Number = Card ?? 0 }, ConfirmHandTurns.Handle, _ => "The two turns by hand are confirmed: the readings as left are open.");

    public Task<IActionResult> OnPostArrival() => Do(
        Arrived with { Number = Card ?? 0 }, RecordArrival.Handle, _ => "Noted.", policy: Policies.ChecksIn);

    public Task<IActionResult> OnPostCylinder() => Do(
        Tested with { Number = Card ?? 0 }, RecordCompression.Handle, written => $"{written.Written} {(written.Written == 1 ? "entry is" : "entries are")} written.");

    public Task<IActionResult> OnPostPlug() => Do(
        Plugged with { Number = Card ?? 0 }, RecordPlugs.Handle, _ => "The plug is written down.");

    public async Task<IActionResult> OnPostBegin() => await Do(
        new BeginPhase.Request { Number = Card ?? 0, Phase = VisitPhase.Work }, BeginPhase.Handle,
        begun => string.Join(" ", begun.Warnings.Prepend("Work is begun.")), policy: Policies.TellsProgress);

    public Task<IActionResult> OnPostOn() => Do(
        new ClockOn.Request { Number = Card ?? 0 }, ClockOn.Handle,
        on => on.StoppedOn is { } other ? $"Your clock runs here; on job card {other} it is stopped." : "Your clock runs.", policy: Policies.TellsProgress);

    public Task<IActionResult> OnPostOff() => Do(
        new ClockOff.Request { Number = Card ?? 0, Reason = Reason }, ClockOff.Handle,
        off => $"Your clock is stopped: {off.Reason.Spoken()}.", policy: Policies.TellsProgress);

    private async Task<IActionResult> Do<TRequest, TAnswer>(
        TRequest request, Handle<TRequest, TAnswer> handle, Func<TAnswer, string> done, string more = "", string policy = Policies.Measures) =>
        await May(policy)
            ? await Write(
                request,
                handle,
                answer =>
                {
                    Done = done(answer);
                    return Redirect(Step is { } step ? AddressOf(step, more) : $"/bays/{Bay}?card={Card}");
                },
                again: Show,
                prefix: "")
            : Forbid();

    private static BayStep StepOf(Stage stage) => stage == Stage.AsFound ? BayStep.Measure : BayStep.MeasureAgain;

    private static string Told(RecordReadings.Recorded read) => read.Expected is { } expected
        ? FormattableString.Invariant($"Expected was {expected.FromMm:0.00} to {expected.ToMm:0.00} mm.")
        : "";

    private async Task<LocalDate> Today() =>
        (await Bookings.WorkshopTimes.Read(db, HttpContext.RequestAborted)).DayOf(clock.GetCurrentInstant());

    private async Task<IReadOnlyDictionary<LobeKey, GetCardForecast.Expected>> Expected(int number, Stage stage) =>
        stage == Stage.AsFound && (await Read(new GetCardForecast.Request(number), GetCardForecast.Handle)).TryGet(out var forecast, out _)
            ? forecast.Lobes.Where(l => l.WhyNot is null).ToDictionary(l => new LobeKey(l.Valve, l.Lobe))
            : new Dictionary<LobeKey, GetCardForecast.Expected>();

    private async Task<IActionResult> Show()
    {
        var ct = HttpContext.RequestAborted;
        Now = clock.GetCurrentInstant();
        PersonId = Guid.Parse(User.FindFirst(Caller.PersonClaim)!.Value);
        if (!(await Read(new GetBay.Request(Bay, Card), GetBay.Handle)).TryGet(out var floor, out var problem))
        {
            return Refused(problem);
        }

        Floor = floor;
        Job = Card is { } wanted ? floor.Jobs.FirstOrDefault(j => j.JobCardNumber == wanted) : floor.Jobs.FirstOrDefault(j => j.Stands);
        Card = Job?.JobCardNumber;
        if (Job is not { Here: true } || Card is not { } number)
        {
            return Page();
        }

        if (!(await CardHead.Load(db, number, ct)).TryGet(out var head, out problem)
            || !(await Read(new GetBayJob.Request(number), GetBayJob.Handle)).TryGet(out var work, out problem)
            || !(await Read(new GetWorkClock.Request(number), GetWorkClock.Handle)).TryGet(out var worked, out problem)
            || !(await Read(new GetCautions.Request(number), GetCautions.Handle)).TryGet(out var cautions, out problem))
        {
            return Refused(problem);
        }

        (Head, Work, Worked) = (head, work, worked);
        MayWork = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        Shown = Step is { } step && work.Steps.Any(s => s.Key == step) ? step : work.Now ?? BayStep.Close;
        Cautions = [.. cautions.Cautions.Where(c => BaySteps.CautionsOf(Shown).Contains(c.Stage))];
        if (Shown == BayStep.Open && (await Read(new GetArrival.Request(number), GetArrival.Handle)).TryGet(out var arrival, out _))
        {
            Arrival = arrival;
        }

        if (Shown == BayStep.Cylinders
            && (await Read(new GetCompression.Request(number), GetCompression.Handle)).TryGet(out var compression, out _)
            && (await Read(new GetPlugs.Request(number), GetPlugs.Handle)).TryGet(out var plugs, out _))
        {
            Cylinders = new BayCylinders(this, compression, plugs, await InstrumentChoices.Read(db, head.Time.DayOf(Now), ct));
        }

        if (Shown is BayStep.Refit or BayStep.Tighten && (await Read(new GetTorqueSheet.Request(number), GetTorqueSheet.Handle)).TryGet(out var sheet, out _))
        {
            Torque = new BayTorque(this, work.Steps.Single(s => s.Key == Shown), sheet);
        }

        if (Shown is BayStep.Measure or BayStep.MeasureAgain)
        {
            var stage = Shown == BayStep.Measure ? Stage.AsFound : Stage.AsLeft;
            if (!(await Read(new GetReadings.Request(number), GetReadings.Handle)).TryGet(out var readings, out problem))
            {
                return Refused(problem);
            }

            Measure = await new MeasureReader(db, clock).Read(number, head, stage, Wish, MayWork, readings, await Expected(number, stage), ct);
            Map = MeasureMap.Of(Measure, lobe => AddressOf(Shown, $"&{Wish.With(lobe)}"));
        }

        if (Shown is BayStep.Open or BayStep.MeasureAgain or BayStep.Close
            && (await Read(new GetAfterWork.Request(number), GetAfterWork.Handle)).TryGet(out var after, out _))
        {
            After = await AfterWorkView.Of(db, clock, head, after, MayWork, PersonId, AddressOf(Shown), unit: null, ct) with
            {
                OnBay = true, ExplainsCounts = Shown == BayStep.Close,
            };
        }

        if (Shown == BayStep.Adjust && work.Steps.Single(s => s.Key == BayStep.Measure).Done
            && (await Read(new GetShimPlan.Request(number), GetShimPlan.Handle)).TryGet(out var plan, out _))
        {
            Plan = plan;
        }

        return Page();
    }
}
