using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Domain.Contacts;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>The outbox.</summary>
public sealed class IndexModel(WorkshopDbContext db, SmtpOptions mail) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? State { get; set; }

    public Slice<MessageRow> Messages { get; private set; } = new([], null);

    public WorkshopTime Time { get; private set; } = null!;

    public bool MailIsSetUp => mail.IsSetUp;

    public IReadOnlyList<MessageDecision> Fitting(MessageRow row) => MessageModel.Fitting(row, MailIsSetUp);

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost(Guid id, uint? version, MessageDecision? decision) => Write(
        new DecideMessage.Request { Id = id, RowVersion = version, Decision = decision, MailIsSetUp = MailIsSetUp },
        DecideMessage.Handle,
        decided =>
        {
            Done = $"The message is {decided.State.Spoken()}.";
            return Redirect("/messages");
        },
        again: Show,
        prefix: "");

    private async Task<IActionResult> Show()
    {
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        if ((await Read(new ListMessages.Request { After = After, State = State }, ListMessages.Handle)).TryGet(out var messages, out var problem))
        {
            Messages = messages;
        }
        else
        {
            problem.AddTo(ModelState, prefix: "");
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        return Page();
    }
}
