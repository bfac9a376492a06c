using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>What becomes of a visit that is booked: moved, shortened or lengthened, or not come.</summary>
public sealed class PlanModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public MoveVisit.Request Move { get; set; } = new();

    [BindProperty]
    public ShortenVisit.Request Shorten { get; set; } = new();

    [BindProperty]
    public MarkNoShow.Request NoShow { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetJobCard.Answer Card { get; private set; } = null!;

    public IReadOnlyList<Resource> Bays { get; private set; } = [];

    public IReadOnlyList<Resource> Technicians { get; private set; } = [];

    /// <summary>In words.</summary>
    public IReadOnlyList<string> Wished { get; private set; } = [];

    public bool MayMove { get; private set; }

    public bool MayMarkNoShow { get; private set; }

    public Task<IActionResult> OnGet() => Show(typed: false);

    public Task<IActionResult> OnPostMove() => Only("Move", () => Write(
        Move with { Number = Number }, MoveVisit.Handle, moved => Back($"Moved: comes {Head.Time.Say(moved.ArrivesAt)}, work from {Head.Time.Say(moved.StartsAt)}, ready {Head.Time.Say(moved.ReadyAt)}."),
        again: () => Show(typed: true), prefix: "Move"));

    public Task<IActionResult> OnPostShorten() => Only("Shorten", () => Write(
        Shorten with { Number = Number }, ShortenVisit.Handle, planned => Back($"Planned anew: ready {Head.Time.Say(planned.ReadyAt)}."),
        again: () => Show(typed: true), prefix: "Shorten"));

    public Task<IActionResult> OnPostNoShow() => Only("NoShow", () => Write(
        NoShow with { Number = Number }, MarkNoShow.Handle, ended => Back($"Job card {ended.Number}: did not come; its time and its kit are free."),
        again: () => Show(typed: true), prefix: "NoShow"));

    private RedirectResult Back(string done)
    {
        Done = done;
        return Redirect($"/job-cards/{Number}");
    }

    /// <summary>A page with several forms binds the fields of all of them; only the faults of the one that was sent count.</summary>
    private async Task<IActionResult> Only(string form, Func<Task<IActionResult>> write)
    {
        foreach (var key in ModelState.Keys.Where(k => k.Contains('.', StringComparison.Ordinal) && !k.StartsWith($"{form}.", StringComparison.Ordinal)).ToList())
        {
            ModelState.Remove(key);
        }

        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem))
        {
            return Refused(problem);
        }

        Head = head;
        return await write();
    }

    private async Task<IActionResult> Show(bool typed)
    {
        var ct = HttpContext.RequestAborted;
        if (!(await CardHead.Load(db, Number, ct)).TryGet(out var head, out var problem)
            || !(await Read(new GetJobCard.Request(Number), GetJobCard.Handle)).TryGet(out var card, out problem)
            || !(await OpenCard.Find(db, Number, ct)).TryGet(out var open, out problem))
        {
            return Refused(problem);
        }

        (Head, Card) = (head, card);
        var resources = await db.Resources.AsNoTracking().Where(r => !r.Retired).OrderBy(r => r.Name).ToListAsync(ct);
        var visit = await VisitCase.OfCard(db, open, ct);
        Bays = [.. resources.Where(r => r.Kind == ResourceKind.Bay && visit.Needs.BayLacks(r).Count == 0)];
        Technicians = [.. resources.Where(r => r.Kind == ResourceKind.Technician && visit.Needs.TechnicianLacks(r).Count == 0)];
        Wished = [.. Say(visit.Wishes, resources)];
        MayMove = await PlannedVisit.RefuseMove(db, open, ct) is null;
        MayMarkNoShow = CardRules.RefuseNoShow(open.Card, clock.GetCurrentInstant(), head.Time) is null;
        if (!typed && await PlannedVisit.Place(db, Number, ct) is { } place)
        {
            var at = head.Time.At(place.StartsAt);
            Move = new MoveVisit.Request { BayId = place.Bay, TechnicianId = place.Technician, Day = at.Date, Time = at.TimeOfDay };
            Shorten = new ShortenVisit.Request { WorkMinutes = visit.Wishes.WorkMinutes };
        }

        return Page();
    }

    private IEnumerable<string> Say(VisitWishes wishes, List<Resource> resources)
    {
        string? Name(Guid? id) => resources.Find(r => r.Id == id)?.Name;
        return new[]
        {
            wishes.NotBefore is { } from ? $"does not come before {Head.Time.Say(from)}." : null,
            wishes.ReadyBy is { } by ? $"ready by {Head.Time.Say(by)}." : null,
            Name(wishes.TechnicianId) is { } technician ? $"{technician} works on it." : null,
            Name(wishes.BayId) is { } bay ? $"{bay}." : null,
        }.Where(s => s is not null).Select(s => s!);
    }
}
