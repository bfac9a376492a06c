using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>One instrument: whether it may be used, what happened, its certificates, and what is known of it.</summary>
public sealed class InstrumentModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid InstrumentId { get; set; }

    [BindProperty]
    public EditInstrument.Request Input { get; set; } = new();

    [BindProperty]
    public RecordInstrumentEvent.Request Event { get; set; } = new();

    [BindProperty]
    public RecordCalibration.Request Calibration { get; set; } = new();

    [BindProperty]
    public ReleaseInstrument.Request Release { get; set; } = new();

    public GetInstrument.Answer Found { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public bool MayMeasure { get; private set; }

    public bool MayManage { get; private set; }

    public IReadOnlyList<SelectListItem> People { get; private set; } = [];

    /// <summary>The form is open where it came back.</summary>
    public bool CalibrationFailed => ModelState.Any(e => e.Key.StartsWith(nameof(Calibration), StringComparison.Ordinal) && e.Value!.Errors.Count > 0);

    public int? UsualMonths => Found.CalibrationMonths ?? (Found.Kind == InstrumentKind.TorqueWrench ? InstrumentStanding.WrenchMonths : null);

    /// <summary>What can have happened to it as it stands.</summary>
    public IEnumerable<(InstrumentEventKind Kind, string Text)> Buttons => Found.State switch
    {
        InstrumentState.InUse =>
        [
            (InstrumentEventKind.Dropped, "It was dropped"),
            (InstrumentEventKind.Overloaded, Found.Kind == InstrumentKind.TorqueWrench ? "It was overloaded, or used to loosen" : "It was overloaded"),
            (InstrumentEventKind.SentForCalibration, "Sent for calibration"),
            (InstrumentEventKind.Withdrawn, "Withdraw it for good"),
        ],
        InstrumentState.OutForCalibration =>
            [(InstrumentEventKind.BackInUse, "Back in use"), (InstrumentEventKind.Withdrawn, "Withdraw it for good")],
        _ when MayManage => [(InstrumentEventKind.BackInUse, "Back in use")],
        _ => [],
    };

    public static string Say(GetInstrument.EventLine row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.Kind switch
        {
            InstrumentEventKind.HandedTo => row.Holder is { } holder ? $"handed to {holder}" : "put back into its place",
            InstrumentEventKind.Released => $"released until {(row.Until is { } until ? Days.Write(until) : "its next calibration")}",
            _ => row.Kind.Spoken(),
        };
    }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Manages)
        ? await Write(Input with { Id = InstrumentId }, EditInstrument.Handle, _ => Saved("Saved."), Show)
        : Forbid();

    public async Task<IActionResult> OnPostEvent() => await May(Policies.Measures)
        ? await Write(
            Event with { Id = InstrumentId }, RecordInstrumentEvent.Handle, written => Saved($"Written down: {Event.Kind!.Value.Spoken()}. It is {written.StateInWords}."), Show,
            prefix: nameof(Event))
        : Forbid();

    public async Task<IActionResult> OnPostCalibration() => await May(Policies.Manages)
        ? await Write(
            Calibration with { Id = InstrumentId },
            RecordCalibration.Handle,
            written => Saved(written.DueOn is { } due ? $"The calibration is recorded; it holds until {Days.Write(due)}." : "The calibration is recorded."),
            Show,
            prefix: nameof(Calibration))
        : Forbid();

    public async Task<IActionResult> OnPostRelease() => await May(Policies.Manages)
        ? await Write(
            Release with { Id = InstrumentId }, ReleaseInstrument.Handle, written => Saved($"Released: it is {written.StateInWords}."), Show,
            prefix: nameof(Release))
        : Forbid();

    private RedirectResult Saved(string done)
    {
        Done = done;
        return Redirect($"/tooling/instruments/{InstrumentId}");
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetInstrument.Request(InstrumentId), GetInstrument.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        (Found, MayMeasure, MayManage) = (found, await May(Policies.Measures), await May(Policies.Manages));
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        People = await db.People.Where(p => p.IsStaff && p.ErasedAt == null).OrderBy(p => p.Name)
            .Select(p => new SelectListItem(p.Name, p.Id.ToString(), p.Id == found.HolderId)).ToListAsync(HttpContext.RequestAborted);
        if (!ModelState.Keys.Any(k => k.StartsWith("Input.", StringComparison.Ordinal)))
        {
            Input = new EditInstrument.Request
            {
                Name = found.Name, SerialNumber = found.SerialNumber, RangeLowest = found.RangeLowest, RangeHighest = found.RangeHighest,
                Uncertainty = found.Uncertainty, Graduation = found.Graduation, LengthMm = found.LengthMm, Drive = found.Drive,
                CalibrationMonths = found.CalibrationMonths, CalibrationCycles = found.CalibrationCycles,
            };
        }

        return Page();
    }
}
