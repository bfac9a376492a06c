using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Contacts;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>A message drafted from a template, to be read, changed and put into the outbox.</summary>
public sealed class NewModel(SmtpOptions mail) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid? Motorcycle { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid? Template { get; set; }

    [BindProperty]
    public QueueMessage.Request Input { get; set; } = new();

    public DraftMessage.Answer Draft { get; private set; } = null!;

    /// <summary>The service sends it by itself.</summary>
    public bool IsSent => mail.IsSetUp && Draft.Channel == ContactChannel.Email;

    public async Task<IActionResult> OnGet()
    {
        var shown = await Show();
        if (Draft is not null)
        {
            Input = new QueueMessage.Request { Subject = Draft.Subject, Body = Draft.Body };
        }

        return shown;
    }

    public Task<IActionResult> OnPost() => Write(
        Input with { MotorcycleId = Motorcycle, MailIsSetUp = mail.IsSetUp },
        QueueMessage.Handle,
        made =>
        {
            Done = made.ToCopy ? "The message is kept. Copy its text, send it by hand, then mark it as copied." : "The message is on its way.";
            return Redirect($"/messages/{made.Id}");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new DraftMessage.Request(Motorcycle, Template), DraftMessage.Handle)).TryGet(out var draft, out var problem))
        {
            return Refused(problem);
        }

        Draft = draft;
        return Page();
    }
}
