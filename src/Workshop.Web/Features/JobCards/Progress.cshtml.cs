using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>What happens to a visit, said with a tap as it happens; five small forms, each with a handler of its own.</summary>
public sealed class ProgressModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public BeginPhase.Request Begin { get; set; } = new();

    [BindProperty]
    public RecordEngineStop.Request Stop { get; set; } = new();

    [BindProperty]
    public MoveMotorcycle.Request Move { get; set; } = new();

    [BindProperty]
    public WaitFor.Request Wait { get; set; } = new();

    [BindProperty]
    public GoOn.Request Further { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetProgress.Answer Progress { get; private set; } = null!;

    public LocalDateTime Now { get; private set; }

    public IReadOnlyList<Resource> Technicians { get; private set; } = [];

    public IReadOnlyList<Resource> Places { get; private set; } = [];

    /// <summary>Of the phase that usually comes next.</summary>
    public IReadOnlyList<Caution> Cautions { get; private set; } = [];

    public bool MayTell { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPostBegin() => Tell(
        nameof(Begin), Begin with { Number = Number }, BeginPhase.Handle,
        begun => string.Join(" ", begun.Warnings
            .Prepend($"{Capital(begun.Phase.Spoken())} begun{(begun.Technician is { } who ? $", {who}" : "")}.")));

    public Task<IActionResult> OnPostStop() => Tell(
        nameof(Stop), Stop with { Number = Number }, RecordEngineStop.Handle,
        stopped => $"The engine stopped; it is cold from {Head.Time.Say(stopped.ColdFrom)} on.");

    public Task<IActionResult> OnPostMove() => Tell(
        nameof(Move), Move with { Number = Number }, MoveMotorcycle.Handle,
        moved => string.Join(" ", moved.Warnings.Prepend($"It stands in {moved.Place}{(moved.Tag is { } tag ? $", tagged \"{tag}\"" : "")}.")));

    public Task<IActionResult> OnPostWait() => Tell(
        nameof(Wait), Wait with { Number = Number }, WaitFor.Handle,
        waits => string.Join(" ", waits.Warnings.Prepend($"It waits for {waits.For.Spoken()} until {Head.Time.Say(waits.ExpectedUntil)}.")));

    public Task<IActionResult> OnPostFurther() => Tell(
        nameof(Further), Further with { Number = Number }, GoOn.Handle,
        on => string.Join(" ", on.Warnings.Prepend($"Work goes on{(on.Technician is { } who ? $", {who}" : "")}.")));

    private static string Capital(string word) => $"{char.ToUpperInvariant(word[0])}{word[1..]}";

    /// <summary>Runs the one form that was sent; the others are as they were.</summary>
    private async Task<IActionResult> Tell<TRequest, TAnswer>(
        string form, TRequest request, Handle<TRequest, TAnswer> handle, Func<TAnswer, string> done)
    {
        if (!await May(Policies.TellsProgress))
        {
            return Forbid();
        }

        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem))
        {
            return Refused(problem);
        }

        Head = head;
        return await Write(
            request,
            handle,
            answer =>
            {
                Done = done(answer);
                return Redirect($"/job-cards/{Number}/progress");
            },
            again: Show,
            prefix: form);
    }

    private async Task<IActionResult> Show()
    {
        var ct = HttpContext.RequestAborted;
        if (!(await CardHead.Load(db, Number, ct)).TryGet(out var head, out var problem)
            || !(await Read(new GetProgress.Request(Number), GetProgress.Handle)).TryGet(out var progress, out problem)
            || !(await OpenCard.Find(db, Number, ct)).TryGet(out var open, out problem))
        {
            return Refused(problem);
        }

        (Head, Progress, Now) = (head, progress, head.Time.At(clock.GetCurrentInstant()));
        MayTell = progress.State == JobCardState.CheckedIn && await May(Policies.TellsProgress);
        if (!MayTell)
        {
            return Page();
        }

        var resources = await db.Resources.AsNoTracking().Where(r => !r.Retired && r.Kind != ResourceKind.SpecialTool)
            .OrderBy(r => r.Kind).ThenBy(r => r.Name).ToListAsync(ct);
        Technicians = [.. resources.Where(r => r.Kind == ResourceKind.Technician)];
        Places = [.. resources.Where(r => r.Kind != ResourceKind.Technician && r.Id != progress.Place?.Id)];
        Cautions = progress.Next.Count == 0 ? [] : PhaseRules.CautionsAt((await VisitState.Read(db, open, ct)).SoFar, progress.Next[0]);
        return Page();
    }
}
