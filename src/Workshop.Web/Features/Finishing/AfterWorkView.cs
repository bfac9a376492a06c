using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Finishing;

/// <summary>
/// What follows the work, with its forms: on its own page, and in the steps of the bay screen. The forms go to the page, which
/// leads back to where they were sent from.
/// </summary>
public sealed record AfterWorkView
{
    /// <summary>What is tapped where something is entered again.</summary>
    public static readonly IReadOnlyList<string> WhyAgain = ["Put right, then done again", "Looked at once more later", "Wrongly entered before"];

    public static readonly IReadOnlyList<int> RunMinutes = [5, 10, 15, 20, 30, 45, 60];

    public required CardHead Head { get; init; }

    public required GetAfterWork.Answer Answer { get; init; }

    public required bool MayWrite { get; init; }

    /// <summary>Where a form leads back to.</summary>
    public required string ReturnTo { get; init; }

    /// <summary>Shown in a step of the bay screen: what nobody asks for and nobody entered is left out.</summary>
    public bool OnBay { get; init; }

    /// <summary>What is not back is explained here: not before the work, when nothing is back yet.</summary>
    public bool ExplainsCounts { get; init; } = true;

    /// <summary>The gauge shows millimetres of mercury.</summary>
    public bool InMmHg { get; init; }

    public Guid Me { get; init; }

    public Instant Now { get; init; }

    public IReadOnlyList<SelectListItem> Gauges { get; init; } = [];

    public IReadOnlyList<SelectListItem> Wrenches { get; init; } = [];

    public IReadOnlyList<SelectListItem> Riders { get; init; } = [];

    public RecordBalance.Request Balance { get; init; } = new();

    public RecordLeakCheck.Request Leak { get; init; } = new();

    public RecordTestRide.Request Ride { get; init; } = new();

    public RecordRecheck.Request Recheck { get; init; } = new();

    public RecordReminder.Request Reminder { get; init; } = new();

    public ExplainCount.Request Explain { get; init; } = new();

    public int Number => Answer.Number;

    /// <summary>The address in the API of one part.</summary>
    public string Api(string part) => $"/api/v1/job-cards/{Number}/after-work/{part}";

    /// <summary>The part is asked for, or something was entered of it; on its own page every part is shown.</summary>
    public bool Shows(VisitCheckKind kind, bool entered) => !OnBay || entered || Answer.AskedFor(kind) is not null;

    /// <summary>Reads what the forms choose from.</summary>
    /// <param name="unit">The gauge's unit as it was chosen; absent: that of the first gauge.</param>
    public static async Task<AfterWorkView> Of(
        WorkshopDbContext db, IClock clock, CardHead head, GetAfterWork.Answer answer, bool mayWrite, Guid me, string returnTo, string? unit, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var today = head.Time.DayOf(now);
        var usable = mayWrite
            ? (await db.Instruments.AsNoTracking().Where(i => i.Kind == InstrumentKind.VacuumGauge || i.Kind == InstrumentKind.TorqueWrench)
                .OrderBy(i => i.Name).ThenBy(i => i.SerialNumber).ToListAsync(ct)).FindAll(i => i.MayBeUsedOn(today))
            : [];
        return new AfterWorkView
        {
            Head = head, Answer = answer, MayWrite = mayWrite, ReturnTo = returnTo, Me = me, Now = now,
            InMmHg = (unit ?? usable.Find(i => i.Kind == InstrumentKind.VacuumGauge)?.Unit) == "mmHg",
            Gauges = Of(InstrumentKind.VacuumGauge),
            Wrenches = Of(InstrumentKind.TorqueWrench),
            Riders = mayWrite
                ? [.. (await db.People.AsNoTracking().Where(p => p.IsStaff).OrderBy(p => p.Name).ToListAsync(ct)).Select(p => new SelectListItem(p.Name, p.Id.ToString()))]
                : [],
        };

        SelectListItem[] Of(InstrumentKind kind) =>
            [.. usable.Where(i => i.Kind == kind).Select(i => new SelectListItem($"{i.Name}, {i.SerialNumber}", i.Id.ToString()))];
    }
}
