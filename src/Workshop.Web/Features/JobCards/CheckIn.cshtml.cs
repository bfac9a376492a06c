using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Web.Data;
using Workshop.Web.Features.Arrivals;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Features.Photos;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>The motorcycle comes: its odometer and last stop, what its owner complains of, and what is seen; later, what is added to that.</summary>
public sealed class CheckInModel(WorkshopDbContext db, IClock clock) : PhotoPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public CheckInMotorcycle.Request Input { get; set; } = new();

    /// <summary>What is added after the check-in.</summary>
    [BindProperty]
    public RecordArrival.Request More { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetArrival.Answer Arrival { get; private set; } = null!;

    public ArrivalForm Form { get; private set; } = null!;

    public IReadOnlyList<PhotoView> Photos { get; private set; } = [];

    public bool MayRemove { get; private set; }

    public GetJobCard.CheckInOfCard? CheckedIn { get; private set; }

    public ColdCondition Cold { get; private set; } = null!;

    public OdometerUnit Unit { get; private set; }

    /// <summary>What the odometer showed last, and when.</summary>
    public string? LastReading { get; private set; }

    /// <summary>When the engine would be cold if it has just stopped.</summary>
    public Instant ColdFromNow { get; private set; }

    public LocalDateTime Now { get; private set; }

    public bool MayCheckIn => Head.Card.State == JobCardState.Booked;

    public bool MayAdd => Head.Card.State == JobCardState.CheckedIn;

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { Number = Number, Arrival = ArrivalForm.WithoutUntouched(Input.Arrival) },
        CheckInMotorcycle.Handle,
        checkedIn =>
        {
            Done = "Checked in.";
            return Redirect($"/job-cards/{checkedIn.Number}/check-in");
        },
        again: Show);

    public Task<IActionResult> OnPostMore() => Write(
        More with { Number = Number, Notes = ArrivalForm.WithoutUntouched(More.Notes) },
        RecordArrival.Handle,
        written => Back($"{written.Written} {(written.Written == 1 ? "note is" : "notes are")} written."),
        again: Show,
        prefix: nameof(More));

    public Task<IActionResult> OnPostPhotos() => Add(Number, null, () => Redirect($"/job-cards/{Number}/check-in"), Show);

    public Task<IActionResult> OnPostRemove(Guid photo, uint? version) => Remove(photo, version, () => Redirect($"/job-cards/{Number}/check-in"), Show);

    private RedirectResult Back(string done)
    {
        Done = done;
        return Redirect($"/job-cards/{Number}/check-in");
    }

    private async Task<IActionResult> Show()
    {
        var ct = HttpContext.RequestAborted;
        if (!(await CardHead.Load(db, Number, ct)).TryGet(out var head, out var problem)
            || !(await Read(new GetJobCard.Request(Number), GetJobCard.Handle)).TryGet(out var card, out problem)
            || !(await Read(new GetArrival.Request(Number), GetArrival.Handle)).TryGet(out var arrival, out problem)
            || !(await OpenCard.Find(db, Number, ct)).TryGet(out var open, out problem))
        {
            return Refused(problem);
        }

        var now = clock.GetCurrentInstant();
        (Head, CheckedIn, Cold) = (head, card.CheckIn, open.Specification.Cold);
        (Now, ColdFromNow) = (head.Time.At(now), CardRules.SoakEndsAt(now, Cold));
        Arrival = arrival;
        Form = CheckedIn is null ? ArrivalForm.Of("Input.Arrival", Input.Arrival) : ArrivalForm.Of("More.Notes", More.Notes);
        Photos = [.. (await PhotoRows.Of(db, Number, ct)).Where(p => p.FindingId is null)];
        MayRemove = await May(Policies.Manages);
        Unit = await db.Odometers.AsNoTracking().Where(o => o.MotorcycleId == card.Motorcycle.Id && o.RemovedOn == null)
            .Select(o => o.Unit).SingleAsync(ct);
        var last = await OdometerEntry.Standing(db, card.Motorcycle.Id).OrderByDescending(r => r.ReadOn).ThenByDescending(r => r.Distance)
            .FirstOrDefaultAsync(ct);
        LastReading = last is null ? null : $"{last.Count:#,0} {last.Unit.Symbol()} on {Days.Write(last.ReadOn)}";
        return Page();
    }
}
