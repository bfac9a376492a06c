using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// Two steps, so that it works without scripts: "Show" reads duration, kit, the earliest slots and a chosen day for the items that are
/// ticked and what is wished; "Book" sends exactly what was shown, a slot or a place and time by hand.
/// </summary>
public sealed class BookModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid? Motorcycle { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    /// <summary>The day to look at, as typed.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Day { get; set; }

    /// <summary>Items as "code:likelihood".</summary>
    [BindProperty(SupportsGet = true)]
    public IReadOnlyList<string> Take { get; set; } = [];

    /// <summary>The items were ticked by a person, not proposed.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Shown { get; set; }

    [BindProperty(SupportsGet = true)]
    public Wishes Wishes { get; set; } = new();

    /// <summary>The signed job card because of which it comes back.</summary>
    [BindProperty(SupportsGet = true)]
    public int? ComebackOf { get; set; }

    /// <summary>Why, as typed.</summary>
    [BindProperty(SupportsGet = true)]
    public string? ComebackReason { get; set; }

    /// <summary>Say why it cannot be earlier.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Why { get; set; }

    [BindProperty]
    public BookVisit.Request Input { get; set; } = new();

    public ProposeVisit.Answer? Visit { get; private set; }

    public DayView? OnDay { get; private set; }

    public SlotsView? Slots { get; private set; }

    public bool HasWishes => Wishes != new Wishes();

    public IReadOnlyList<ListMotorcycles.Row> Found { get; private set; } = [];

    public IEnumerable<AvailabilityOf.ResourceOnDay> Of(ResourceKind kind) =>
        OnDay?.Day.Resources.Where(r => r.Kind == kind) ?? [];

    public IReadOnlyList<string> SkillsMissing(AvailabilityOf.ResourceOnDay technician) =>
        [.. Visit!.Skills.Except(technician.Capabilities, StringComparer.Ordinal)];

    public async Task<IActionResult> OnGet()
    {
        // What is left out of a list of choices comes as an empty word.
        var items = Shown ? Take.Where(t => !string.IsNullOrEmpty(t)).ToList() : null;
        return Motorcycle is null ? await Choose() : await Show(Motorcycle.Value, items, Day);
    }

    public Task<IActionResult> OnPost() => Write(
        Input,
        BookVisit.Handle,
        booked =>
        {
            Done = $"Booked: job card {booked.Number}.";
            return Redirect($"/job-cards/{booked.Number}");
        },
        again: ShowAgain);

    private Task<IActionResult> ShowAgain()
    {
        Shown = true;
        Wishes = Input.Wishes ?? new Wishes();
        (ComebackOf, ComebackReason) = (Input.ComebackOf, Input.ComebackReason);
        return Input.MotorcycleId is { } motorcycle
            ? Show(
                motorcycle,
                [.. Input.Items.Select(i => ItemInAddress.Write(i.Code ?? "", i.Likelihood))],
                Input.Day is { } day ? Days.Write(day) : null)
            : Choose();
    }

    /// <summary>Bays and technicians to choose from, and the tools that this visit takes.</summary>
    private static bool Matters(AvailabilityOf.ResourceOnDay resource, ProposeVisit.Answer visit) => resource.Kind switch
    {
        ResourceKind.Bay or ResourceKind.Technician => true,
        ResourceKind.SpecialTool => resource.Capabilities.Intersect(visit.SpecialTools, StringComparer.Ordinal).Any(),
        _ => false,
    };

    private async Task<IActionResult> Choose()
    {
        if (Search is not null)
        {
            var list = await Read(new ListMotorcycles.Request(Search: Search), ListMotorcycles.Handle);
            if (list.TryGet(out var found, out var problem))
            {
                Found = found.Rows;
            }
            else
            {
                problem.AddTo(ModelState);
            }
        }

        return Page();
    }

    private async Task ShowSlots(ProposeVisit.Answer visit, WorkshopTime time)
    {
        if (visit.Taken.All(t => t.Likelihood == Likelihood.Possible))
        {
            return;
        }

        var found = await Read(
            new FindSlots.Request
            {
                MotorcycleId = visit.MotorcycleId,
                Items = [.. visit.Taken.Select(t => new BookVisit.Item { Code = t.Code, Likelihood = t.Likelihood })],
                Wishes = Wishes,
                Explain = Why,
            },
            FindSlots.Handle);
        if (found.TryGet(out var slots, out var problem))
        {
            Slots = new SlotsView(slots, visit, Wishes, time, Why) { ComebackOf = ComebackOf, ComebackReason = ComebackReason };
        }
        else
        {
            problem.AddTo(ModelState, "");
        }
    }

    private async Task<IActionResult> Show(Guid motorcycle, IReadOnlyList<string>? items, string? day)
    {
        if (!(await Read(new ProposeVisit.Request(motorcycle, items), ProposeVisit.Handle)).TryGet(out var visit, out var problem))
        {
            return Refused(problem);
        }

        var calendar = await WorkshopTimes.ReadCalendar(db, HttpContext.RequestAborted);
        var today = calendar.Time.DayOf(clock.GetCurrentInstant());
        Visit = visit;
        Day = string.IsNullOrEmpty(day) ? Days.Write(calendar.FirstOpenDay(today) ?? today) : day;
        await ShowSlots(visit, calendar.Time);
        if ((await Read(new AvailabilityOf.Request(Day), AvailabilityOf.Handle)).TryGet(out var onDay, out problem))
        {
            OnDay = new DayView(onDay with { Resources = [.. onDay.Resources.Where(r => Matters(r, visit))] }, calendar.Time);
        }
        else
        {
            problem.AddTo(ModelState, "");
        }

        return Page();
    }
}
