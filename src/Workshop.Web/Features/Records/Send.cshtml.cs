using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Contacts;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.Paper;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Records;

/// <summary>The link to a record as a message, to be read, changed and put into the outbox.</summary>
public sealed class SendModel(SmtpOptions mail, PaperAddress address) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid? Template { get; set; }

    [BindProperty]
    public SendRecord.Request Input { get; set; } = new();

    public DraftRecordMessage.Answer Draft { get; private set; } = null!;

    /// <summary>The service sends it by itself.</summary>
    public bool IsSent => mail.IsSetUp && Draft.Channel == ContactChannel.Email;

    public async Task<IActionResult> OnGet()
    {
        var shown = await Show();
        if (Draft is not null)
        {
            Input = new SendRecord.Request { Subject = Draft.Subject, Body = Draft.Body };
        }

        return shown;
    }

    public Task<IActionResult> OnPost() => Write(
        Input with { Number = Number, MailIsSetUp = mail.IsSetUp, AddressOf = address.Of },
        SendRecord.Handle,
        made =>
        {
            Done = made.ToCopy ? "The message is kept. Copy its text, send it by hand, then mark it as copied." : "The message is on its way.";
            return Redirect($"/messages/{made.Id}");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new DraftRecordMessage.Request(Number, Template), DraftRecordMessage.Handle)).TryGet(out var draft, out var problem))
        {
            return Refused(problem);
        }

        Draft = draft;
        return Page();
    }
}
