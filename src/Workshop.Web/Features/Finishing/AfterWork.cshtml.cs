using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Finishing;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Finishing;

/// <summary>Everything that follows the work on one page; and where the same forms of the bay screen are sent to.</summary>
public sealed class AfterWorkModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    /// <summary>The gauge's unit: kPa or mmHg.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Unit { get; set; }

    [BindProperty]
    public RecordBalance.Request Balance { get; set; } = new();

    [BindProperty]
    public RecordLeakCheck.Request Leak { get; set; } = new();

    [BindProperty]
    public RecordTestRide.Request Ride { get; set; } = new();

    [BindProperty]
    public RecordRecheck.Request Recheck { get; set; } = new();

    [BindProperty]
    public RecordReminder.Request Reminder { get; set; } = new();

    [BindProperty]
    public CountThings.Tap Tap { get; set; } = new();

    [BindProperty]
    public ExplainCount.Request Explain { get; set; } = new();

    [BindProperty]
    public ConfirmAsLeft.Request Confirm { get; set; } = new();

    /// <summary>The page on which the form stood.</summary>
    [BindProperty(Name = "returnTo")]
    public string? ReturnTo { get; set; }

    public CardHead Head { get; private set; } = null!;

    public AfterWorkView View { get; private set; } = null!;

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPostBalance() => Do(
        Balance with { Number = Number }, RecordBalance.Handle, run => $"The balance is written, {run.Sentence}.", nameof(Balance));

    public Task<IActionResult> OnPostLeak() => Do(
        Leak with { Number = Number, Places = [.. (Leak.Places ?? []).Select(p => p is null or { State: null, Words: null } ? null : p)] },
        RecordLeakCheck.Handle,
        seen => $"{seen.Looked} {(seen.Looked == 1 ? "place is" : "places are")} written.{(seen.Leaking.Count > 0 ? $" Leaking: {string.Join(", ", seen.Leaking)}." : "")}",
        nameof(Leak));

    public Task<IActionResult> OnPostRide() => Do(
        Ride with { Number = Number, RiderId = Ride.WhyNot is null ? Ride.RiderId : null }, RecordTestRide.Handle,
        ride => ride.Ridden ? "The test ride is written." : "That nobody rode is written.", nameof(Ride));

    public Task<IActionResult> OnPostRecheck() => Do(
        Recheck with { Number = Number }, RecordRecheck.Handle, again => again.InOrder ? "Looked at once more, in order." : "Looked at once more, not in order.", nameof(Recheck));

    public Task<IActionResult> OnPostReminder() => Do(
        Reminder with { Number = Number }, RecordReminder.Handle, reset => $"The service reminder: {reset.Outcome.Spoken()}.", nameof(Reminder));

    public Task<IActionResult> OnPostCount() => Do(
        new CountThings.Request { Number = Number, Taps = [Tap] }, CountThings.Handle, counted => $"{counted.Things[0].Name}: {counted.Things[0].Words}.", nameof(Tap));

    public Task<IActionResult> OnPostExplain() => Do(
        Explain with { Number = Number }, ExplainCount.Handle, _ => "The difference is explained.", nameof(Explain));

    public Task<IActionResult> OnPostConfirm() => Do(
        Confirm with { Number = Number }, ConfirmAsLeft.Handle, set => $"{set.Readings} readings as left are confirmed.", nameof(Confirm));

    private async Task<IActionResult> Do<TRequest, TAnswer>(TRequest request, Handle<TRequest, TAnswer> handle, Func<TAnswer, string> done, string prefix) =>
        await May(Policies.Measures)
            ? await Write(
                request,
                handle,
                answer =>
                {
                    Done = done(answer);
                    return LocalRedirect(Url.IsLocalUrl(ReturnTo) ? ReturnTo : $"/job-cards/{Number}/after-work");
                },
                again: Show,
                prefix: prefix)
            : Forbid();

    private async Task<IActionResult> Show()
    {
        var ct = HttpContext.RequestAborted;
        if (!(await CardHead.Load(db, Number, ct)).TryGet(out var head, out var problem)
            || !(await Read(new GetAfterWork.Request(Number), GetAfterWork.Handle)).TryGet(out var answer, out problem))
        {
            return Refused(problem);
        }

        Head = head;
        var mayWrite = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        View = await AfterWorkView.Of(
            db, clock, head, answer, mayWrite, Guid.Parse(User.FindFirst(Caller.PersonClaim)!.Value), $"/job-cards/{Number}/after-work", Unit, ct) with
        {
            Balance = Balance, Leak = Leak, Ride = Ride, Recheck = Recheck, Reminder = Reminder, Explain = Explain,
        };
        return Page();
    }
}
