using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Estimates;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Photos;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Findings;

/// <summary>One finding: its photos and price, the owner's answer, the work.</summary>
[RequestSizeLimit(PhotosApi.LargestSend)]
[RequestFormLimits(MultipartBodyLengthLimit = PhotosApi.LargestSend)]
public sealed class FindingModel(WorkshopDbContext db, IClock clock) : PhotoPage
{
    [BindProperty(SupportsGet = true)]
    public Guid FindingId { get; set; }

    [BindProperty]
    public AnswerFinding.Request Input { get; set; } = new();

    [BindProperty]
    public WithdrawFinding.Request Withdrawal { get; set; } = new();

    [BindProperty]
    public LocalDate? SaidDay { get; set; }

    [BindProperty]
    public LocalTime? SaidTime { get; set; }

    public GetFinding.Answer Found { get; private set; } = null!;

    public CardHead Head { get; private set; } = null!;

    public string? Owner { get; private set; }

    public LocalDateTime Now => Head.Time.At(clock.GetCurrentInstant());

    public bool MayAdd { get; private set; }

    public bool MayRemove { get; private set; }

    public bool MayPrice { get; private set; }

    public bool MayAnswer { get; private set; }

    public bool MayFinish { get; private set; }

    public bool MayWithdraw { get; private set; }

    private string Here => $"/findings/{FindingId}";

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostPhotos()
    {
        if (!(await Read(new GetFinding.Request(FindingId), GetFinding.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        return await Add(found.JobCardNumber, FindingId, () => Redirect(Here), Show);
    }

    public Task<IActionResult> OnPostRemove(Guid photo, uint? version) => Remove(photo, version, () => Redirect(Here), Show);

    public async Task<IActionResult> OnPostAnswer()
    {
        if (!await May(Policies.Books))
        {
            return Forbid();
        }

        var time = await Bookings.WorkshopTimes.Read(db, HttpContext.RequestAborted);
        return await Write(
            Input with { Id = FindingId, SaidAt = SaidMoment.Read(time, SaidDay, SaidTime, clock, ModelState) },
            AnswerFinding.Handle,
            answered => Back(string.Join(" ", answered.Warnings.Prepend(
                answered.Begun is { } begun ? $"{begun} is begun; torque sheet and kit have grown by it." : $"The owner's answer is recorded: {answered.Decision.Spoken()}."))),
            again: Show);
    }

    public async Task<IActionResult> OnPostFinish(uint? version) => await May(Policies.Measures)
        ? await Write(
            new FinishFinding.Request { Id = FindingId, RowVersion = version }, FinishFinding.Handle, _ => Back("It is done."), again: Show, prefix: "")
        : Forbid();

    public async Task<IActionResult> OnPostWithdraw(uint? version) => await May(Policies.Measures)
        ? await Write(
            Withdrawal with { Id = FindingId, RowVersion = version }, WithdrawFinding.Handle, _ => Back("The finding is withdrawn."), again: Show,
            prefix: nameof(Withdrawal))
        : Forbid();

    private RedirectResult Back(string done)
    {
        Done = done;
        return Redirect(Here);
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetFinding.Request(FindingId), GetFinding.Handle)).TryGet(out var found, out var problem)
            || !(await CardHead.Load(db, found.JobCardNumber, HttpContext.RequestAborted)).TryGet(out var head, out problem))
        {
            return Refused(problem);
        }

        (Found, Head) = (found, head);
        Owner = await (
            from motorcycle in db.Motorcycles
            join person in db.People on motorcycle.OwnerId equals person.Id
            where motorcycle.Id == head.Card.MotorcycleId
            select person.Name).SingleOrDefaultAsync(HttpContext.RequestAborted);
        var here = head.Card.State == JobCardState.CheckedIn;
        var over = found.State is FindingState.Done or FindingState.Withdrawn;
        var (books, measures) = (await May(Policies.Books), await May(Policies.Measures));
        MayAdd = here && await May(Policies.TellsProgress);
        MayRemove = await May(Policies.Manages);
        (MayPrice, MayAnswer) = (here && !over && books, here && !over && books);
        MayFinish = here && measures && found is { State: FindingState.Agreed, ServiceItem: null };
        MayWithdraw = here && measures && !over;
        return Page();
    }
}
