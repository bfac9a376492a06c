using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Domain.Contacts;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>One message: its text to copy, how far it is, and what a person may decide about it.</summary>
public sealed class MessageModel(WorkshopDbContext db, SmtpOptions mail) : WorkshopPage
{
    [FromRoute]
    public Guid Id { get; set; }

    public MessageRow Message { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public bool MailIsSetUp => mail.IsSetUp;

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost(uint? version, MessageDecision? decision) => Write(
        new DecideMessage.Request { Id = Id, RowVersion = version, Decision = decision, MailIsSetUp = MailIsSetUp },
        DecideMessage.Handle,
        decided =>
        {
            Done = $"The message is {decided.State.Spoken()}.";
            return Redirect($"/messages/{Id}");
        },
        again: Show,
        prefix: "");

    public IReadOnlyList<MessageDecision> Fitting(MessageRow row) => Fitting(row, MailIsSetUp);

    internal static IReadOnlyList<MessageDecision> Fitting(MessageRow row, bool mailIsSetUp) =>
        row.Subject.Length == 0 ? [] : OutboxRules.Fitting(row.State, row.Channel, mailIsSetUp);

    /// <summary>The state as a word, with what is behind it.</summary>
    internal static string StateOf(MessageRow row, WorkshopTime time) => row.State switch
    {
        OutboxState.Waiting when row.ToCopy => "waiting to be copied",
        OutboxState.Waiting => $"waiting, next try {time.Say(row.NextTryAt!.Value)}{Fault(row)}",
        OutboxState.Sent or OutboxState.Copied => $"{row.State.Spoken()} {(row.SentAt is { } at ? time.Say(at) : "")}{(row.SentBy is { } by ? $", said by {by}" : "")}",
        _ => $"{row.State.Spoken()}{Fault(row)}",
    };

    internal static string Say(MessageDecision decision, MessageRow row) => decision switch
    {
        MessageDecision.Send => row.State == OutboxState.Uncertain ? "Send again" : row.ToCopy ? "Send" : "Try now",
        MessageDecision.CountAsSent => "Count as sent",
        MessageDecision.MarkAsCopied => "Mark as copied",
        MessageDecision.Discard => "Discard",
        _ => throw new ArgumentOutOfRangeException(nameof(decision), decision, null),
    };

    private static string Fault(MessageRow row) => row.LastFault is { } fault ? $": {fault}" : "";

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetMessage.Request(Id), GetMessage.Handle)).TryGet(out var message, out var problem))
        {
            return Refused(problem);
        }

        (Message, Time) = (message, await WorkshopTimes.Read(db, HttpContext.RequestAborted));
        return Page();
    }
}
