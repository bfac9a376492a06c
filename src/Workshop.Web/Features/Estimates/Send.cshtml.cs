using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Contacts;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>An estimate as a message, to be read, changed and put into the outbox.</summary>
public sealed class SendModel(SmtpOptions mail) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid EstimateId { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid? Template { get; set; }

    [BindProperty]
    public SendEstimate.Request Input { get; set; } = new();

    public DraftEstimateMessage.Answer Draft { get; private set; } = null!;

    /// <summary>The service sends it by itself.</summary>
    public bool IsSent => mail.IsSetUp && Draft.Channel == ContactChannel.Email;

    public async Task<IActionResult> OnGet()
    {
        var shown = await Show();
        if (Draft is not null)
        {
            Input = new SendEstimate.Request { Subject = Draft.Subject, Body = Draft.Body };
        }

        return shown;
    }

    public Task<IActionResult> OnPost() => Write(
        Input with { Id = EstimateId, MailIsSetUp = mail.IsSetUp },
        SendEstimate.Handle,
        made =>
        {
            Done = made.ToCopy ? "The message is kept. Copy its text, send it by hand, then mark it as copied." : "The message is on its way.";
            return Redirect($"/messages/{made.Id}");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new DraftEstimateMessage.Request(EstimateId, Template), DraftEstimateMessage.Handle)).TryGet(out var draft, out var problem))
        {
            return Refused(problem);
        }

        Draft = draft;
        return Page();
    }
}
