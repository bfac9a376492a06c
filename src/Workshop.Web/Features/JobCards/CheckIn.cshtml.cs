using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Web.Data;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

public sealed class CheckInModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public CheckInMotorcycle.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetJobCard.CheckInOfCard? CheckedIn { get; private set; }

    public ColdCondition Cold { get; private set; } = null!;

    public OdometerUnit Unit { get; private set; }

    /// <summary>What the odometer showed last, and when.</summary>
    public string? LastReading { get; private set; }

    /// <summary>When the engine would be cold if it has just stopped.</summary>
    public Instant ColdFromNow { get; private set; }

    public LocalDateTime Now { get; private set; }

    public bool MayCheckIn => Head.Card.State == JobCardState.Booked;

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { Number = Number },
        CheckInMotorcycle.Handle,
        checkedIn =>
        {
            Done = "Checked in.";
            return Redirect($"/job-cards/{checkedIn.Number}/check-in");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        var ct = HttpContext.RequestAborted;
        if (!(await CardHead.Load(db, Number, ct)).TryGet(out var head, out var problem)
            || !(await Read(new GetJobCard.Request(Number), GetJobCard.Handle)).TryGet(out var card, out problem)
            || !(await OpenCard.Find(db, Number, ct)).TryGet(out var open, out problem))
        {
            return Refused(problem);
        }

        var now = clock.GetCurrentInstant();
        (Head, CheckedIn, Cold) = (head, card.CheckIn, open.Specification.Cold);
        (Now, ColdFromNow) = (head.Time.At(now), CardRules.SoakEndsAt(now, Cold));
        Unit = await db.Odometers.AsNoTracking().Where(o => o.MotorcycleId == card.Motorcycle.Id && o.RemovedOn == null)
            .Select(o => o.Unit).SingleAsync(ct);
        var last = await OdometerEntry.Standing(db, card.Motorcycle.Id).OrderByDescending(r => r.ReadOn).ThenByDescending(r => r.Distance)
            .FirstOrDefaultAsync(ct);
        LastReading = last is null ? null : $"{last.Count:#,0} {last.Unit.Symbol()} on {Days.Write(last.ReadOn)}";
        return Page();
    }
}
