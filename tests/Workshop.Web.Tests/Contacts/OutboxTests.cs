using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using MimeKit;
using NodaTime;
using SmtpServer.Protocol;
using Workshop.Domain.Contacts;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Tests.Motorcycles;
using Xunit;

namespace Workshop.Web.Tests.Contacts;

/// <summary>E-mails over a real mail server on this machine.</summary>
public sealed class OutboxTests(WorkshopApp app) : IClassFixture<WorkshopApp>, IAsyncLifetime
{
    private readonly TestMailServer server = new();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var options = app.Services.GetRequiredService<SmtpOptions>();
        (options.Host, options.Port, options.Security, options.From) = ("127.0.0.1", server.Port, SmtpSecurity.None, server.Options.From);
        await app.Look(db => db.OutboxMessages.Where(m => m.State == OutboxState.Waiting)
            .ExecuteUpdateAsync(set => set.SetProperty(m => m.State, OutboxState.Discarded), Ct));
    }

    public ValueTask DisposeAsync() => server.DisposeAsync();

    [Fact]
    public async Task A_mail_arrives_as_it_was_written_with_one_address_and_the_headers_of_a_mail()
    {
        var (advisor, owner, motorcycle) = await Owner();
        var id = await advisor.Queue(motorcycle, "Jänner: Ölservice für € 90 – Ρόδα", "Grüße,\n.\n..punkt\nżółw");

        Assert.Equal(1, await Worker().SendAll(Ct));

        var mail = Assert.Single(server.Seen);
        Assert.Equal("Jänner: Ölservice für € 90 – Ρόδα", mail.Subject);
        Assert.Equal("Grüße,\n.\n..punkt\nżółw", mail.TextBody!.ReplaceLineEndings("\n"));
        Assert.Equal("utf-8", ((TextPart)mail.Body!).ContentType.Charset);
        Assert.Equal("\"Test workshop\" <workshop@example.org>", mail.From.ToString());
        var row = await app.MessageRow(id);
        Assert.Equal(row.To, Assert.Single(mail.To.Mailboxes).Address);
        Assert.Equal([row.To], server.Recipients);
        Assert.Equal($"{id:N}@example.org", mail.MessageId);
        Assert.Equal(app.Clock.Now.ToDateTimeOffset(), mail.Date);
        Assert.Equal((OutboxState.Sent, app.Clock.Now, null), (row.State, row.SentAt, row.LastFault));
        var contact = await app.Look(db => db.Contacts.AsNoTracking().SingleAsync(c => c.MessageId == id, Ct));
        Assert.Equal((owner, ContactOutcome.Written, TestWorkshop.Advisor), (contact.PersonId, contact.Outcome, contact.By));
    }

    /// <summary>RFC 5322, 2.2: a header ends with its line, so a line break in a name or a subject would begin another.</summary>
    [Fact]
    public async Task Nothing_that_is_typed_becomes_another_header()
    {
        var advisor = await app.As(Roles.Advisor);
        var (_, motorcycle) = await advisor.AddOwner("Olga\r\nBcc: everybody@example.org", channels: [ContactChannel.Email]);
        var refused = await advisor.Write(motorcycle, "Service\r\nBcc: everybody@example.org");
        Assert.Equal(
            (HttpStatusCode.BadRequest, "subject is \"Service  Bcc: everybody@example.org\", with a line break or another control character in it: one line is allowed."),
            (refused.StatusCode, await refused.Detail()));
        var (_, wrong) = await advisor.AddOwner("Otto", "otto@example.org\r\nBcc: everybody@example.org", ContactChannel.Email);
        var address = await advisor.Write(wrong);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, address.StatusCode);
        Assert.StartsWith("to is \"otto@example.org  Bcc: everybody@example.org\": one address", await address.Detail(), StringComparison.Ordinal);

        await advisor.Queue(motorcycle, "Bcc: everybody@example.org =?utf-8?Q?=0D=0ABcc:_x?=", "Subject: other\n\nDear Olga\r\nBcc: everybody@example.org");
        await Worker().SendAll(Ct);

        var mail = Assert.Single(server.Seen);
        Assert.Equal(
            ["Content-Type", "Date", "From", "MIME-Version", "Message-Id", "Subject", "To"],
            mail.Headers.Concat(mail.Body!.Headers).Select(h => h.Field).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal));
        Assert.Empty(mail.Bcc);
        Assert.Single(server.Recipients);
    }

    [Fact]
    public async Task A_temporary_refusal_is_tried_again_after_a_minute_under_the_same_message_id()
    {
        var (advisor, _, motorcycle) = await Owner();
        var id = await advisor.Queue(motorcycle);
        server.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.ServiceUnavailable, "come back later"));
        var begun = app.Clock.Now;

        await Worker().SendAll(Ct);
        var after = await app.MessageRow(id);
        Assert.Equal((OutboxState.Waiting, begun + Duration.FromMinutes(1), 1), (after.State, after.NextTryAt, after.Attempts));
        Assert.Equal("The mail server answered 421: come back later", after.LastFault);
        app.Clock.Now = begun + Duration.FromSeconds(59);
        Assert.Equal(0, await Worker().SendAll(Ct));
        app.Clock.Now = begun + Duration.FromMinutes(1);
        Assert.Equal(1, await Worker().SendAll(Ct));

        Assert.Equal(OutboxState.Sent, (await app.MessageRow(id)).State);
        Assert.Equal([$"{id:N}@example.org", $"{id:N}@example.org"], server.Seen.Select(m => m.MessageId));
    }

    [Fact]
    public async Task What_is_refused_for_now_over_and_over_has_failed_after_its_sixth_try()
    {
        var (advisor, _, motorcycle) = await Owner();
        var id = await advisor.Queue(motorcycle);
        for (var attempt = 1; attempt <= 7; attempt++)
        {
            server.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.InsufficientStorage, "full"));
            await Worker().SendAll(Ct);
            app.Clock.Now += Duration.FromHours(9);
        }

        Assert.Equal((OutboxState.Failed, 6), ((await app.MessageRow(id)).State, (await app.MessageRow(id)).Attempts));
        Assert.Equal(6, server.Seen.Count);
        server.Answers.Clear();
        Assert.Equal(HttpStatusCode.OK, (await advisor.Decide(id, "send")).StatusCode);
        await Worker().SendAll(Ct);
        Assert.Equal(OutboxState.Sent, (await app.MessageRow(id)).State);
    }

    [Fact]
    public async Task A_refusal_for_good_is_failed_at_once()
    {
        var (advisor, _, motorcycle) = await Owner();
        var id = await advisor.Queue(motorcycle);
        server.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such mailbox"));

        await Worker().SendAll(Ct);

        var row = await app.MessageRow(id);
        Assert.Equal((OutboxState.Failed, "The mail server answered 550: no such mailbox"), (row.State, row.LastFault));
        Assert.False(await app.Look(db => db.Contacts.AnyAsync(c => c.MessageId == id, Ct)));
    }

    [Fact]
    public async Task A_server_that_cannot_be_reached_is_tried_again()
    {
        var (advisor, _, motorcycle) = await Owner();
        var id = await advisor.Queue(motorcycle);
        var options = server.Options;
        options.Port = TestMailServer.FreePort();

        await Worker(options).SendAll(Ct);

        var row = await app.MessageRow(id);
        Assert.Equal(OutboxState.Waiting, row.State);
        Assert.StartsWith("The mail server was not reached: ", row.LastFault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_that_breaks_before_the_answer_leaves_the_message_uncertain_and_a_person_decides()
    {
        var (advisor, _, motorcycle) = await Owner();
        var (first, second) = (await advisor.Queue(motorcycle), await advisor.Queue(motorcycle));
        await using (var broken = new BrokenLine())
        {
            var options = server.Options;
            options.Port = broken.Port;
            Assert.Equal(2, await Worker(options).SendAll(Ct));
            Assert.Equal(2, broken.Texts);
        }

        app.Clock.Now += Duration.FromDays(2);
        Assert.Equal(0, await Worker().SendAll(Ct));
        Assert.Equal((OutboxState.Uncertain, OutboxState.Uncertain), ((await app.MessageRow(first)).State, (await app.MessageRow(second)).State));
        Assert.Equal(HttpStatusCode.OK, (await advisor.Decide(first, "countAsSent")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await advisor.Decide(second, "send")).StatusCode);
        await Worker().SendAll(Ct);

        Assert.Equal((OutboxState.Sent, TestWorkshop.Advisor), ((await app.MessageRow(first)).State, (await app.MessageRow(first)).SentBy));
        Assert.Equal((OutboxState.Sent, null), ((await app.MessageRow(second)).State, (await app.MessageRow(second)).SentBy));
        Assert.Equal([$"{second:N}@example.org"], server.Seen.Select(m => m.MessageId));
    }

    [Fact]
    public async Task Two_copies_of_the_service_send_each_message_once()
    {
        var (advisor, _, motorcycle) = await Owner();
        var ids = new List<Guid>();
        for (var i = 0; i < 12; i++)
        {
            ids.Add(await advisor.Queue(motorcycle, $"Message {i}"));
        }

        var tried = await Task.WhenAll(Worker().SendAll(Ct), Worker().SendAll(Ct), Worker().SendAll(Ct));

        Assert.Equal(12, tried.Sum());
        Assert.Equal(ids.Select(id => $"{id:N}@example.org").Order(), server.Seen.Select(m => m.MessageId).Order());
        Assert.Equal(12, await app.Look(db => db.Contacts.CountAsync(c => ids.Contains(c.MessageId!.Value), Ct)));
    }

    [Fact]
    public async Task What_waits_when_its_consent_is_withdrawn_is_not_sent()
    {
        var (advisor, owner, motorcycle) = await Owner();
        var id = await advisor.Queue(motorcycle);
        var consent = await app.Look(db => db.Consents.AsNoTracking()
            .Select(c => new { c.Id, c.PersonId, Version = EF.Property<uint>(c, "RowVersion") }).SingleAsync(c => c.PersonId == owner, Ct));
        var withdrawn = await advisor.Put($"/api/v1/consents/{consent.Id}/withdrawal", new { }, $"\"{consent.Version}\"");
        Assert.Equal((HttpStatusCode.OK, 1), (withdrawn.StatusCode, (await withdrawn.Json()).GetProperty("discarded").GetInt32()));

        Assert.Equal(0, await Worker().SendAll(Ct));

        Assert.Equal(OutboxState.Discarded, (await app.MessageRow(id)).State);
        var again = await advisor.Write(motorcycle);
        Assert.Equal(
            (HttpStatusCode.UnprocessableEntity, "channel is e-mail: the owner has not agreed to be reached that way, or has withdrawn it; enter the consent first."),
            (again.StatusCode, await again.Detail()));
    }

    private OutboxWorker Worker(SmtpOptions? options = null) => new(
        app.Services.GetRequiredService<IServiceScopeFactory>(), app.Clock, options ?? server.Options, NullLogger<OutboxWorker>.Instance);

    private async Task<(HttpClient Advisor, Guid Owner, Guid Motorcycle)> Owner()
    {
        var advisor = await app.As(Roles.Advisor);
        var (owner, motorcycle) = await advisor.AddOwner(channels: [ContactChannel.Email]);
        return (advisor, owner, motorcycle);
    }
}
