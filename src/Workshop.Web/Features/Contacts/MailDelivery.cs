using System.Net.Sockets;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using MimeKit.Text;
using NodaTime;
using Workshop.Domain.Contacts;

namespace Workshop.Web.Features.Contacts;

/// <summary>What came of handing over, and the server's words where it refused.</summary>
internal sealed record Delivered(DeliveryResult Result, string? Fault = null);

/// <summary>Hands one message to the mail server.</summary>
internal static class MailDelivery
{
    /// <summary>For each step of the conversation; far less than a claim holds.</summary>
    private static readonly TimeSpan LongestStep = TimeSpan.FromSeconds(60);

    /// <summary>
    /// The mail as it goes out. Header and text are given to the library as values, which encodes them (RFC 2047, RFC 5322): what
    /// stands in them cannot become another header.
    /// </summary>
    public static MimeMessage Write(OutboxMessage message, SmtpOptions options, Instant now)
    {
        var mail = new MimeMessage();
        mail.From.Add(options.Sender);
        mail.To.Add(new MailboxAddress(null, message.To));
        mail.Subject = MessageRules.OneLine(message.Subject);
        mail.Date = now.ToDateTimeOffset();
        mail.MessageId = message.InternetMessageId!;
        mail.Body = new TextPart(TextFormat.Plain) { Text = message.Body };
        return mail;
    }

    /// <summary>
    /// Hands it over. Whatever goes wrong before the text is on the line leaves the message unsent for certain; after that only the
    /// server's answer tells.
    /// </summary>
    public static async Task<Delivered> Deliver(OutboxMessage message, SmtpOptions options, Instant now)
    {
        var begun = new Begun();
        try
        {
            using var client = new SmtpClient { Timeout = (int)LongestStep.TotalMilliseconds };
            using var limit = new CancellationTokenSource(3 * LongestStep);
            await client.ConnectAsync(options.Host!, options.Port, Of(options.Security), limit.Token);
            if (!string.IsNullOrEmpty(options.UserName))
            {
                await client.AuthenticateAsync(options.UserName, options.Password ?? "", limit.Token);
            }

            await client.SendAsync(Write(message, options, now), limit.Token, begun);
            await Leave(client);
            return new Delivered(DeliveryResult.Accepted);
        }
        catch (SmtpCommandException refused)
        {
            var code = (int)refused.StatusCode;
            return new Delivered(
                code is >= 500 and <= 599 ? DeliveryResult.RefusedForGood : DeliveryResult.RefusedForNow,
                $"The mail server answered {code}: {refused.Message}");
        }
        catch (Exception fault) when (fault is MailKit.Security.AuthenticationException or SslHandshakeException or NotSupportedException or ServiceNotAuthenticatedException)
        {
            // Wrong settings, not a wrong message: it stays in line until they are mended.
            return new Delivered(DeliveryResult.RefusedForNow, $"The mail server cannot be used as it is set up: {fault.Message}");
        }
        catch (Exception fault) when (fault is SmtpProtocolException or IOException or SocketException or TimeoutException or OperationCanceledException or ServiceNotConnectedException)
        {
            return begun.Text
                ? new Delivered(DeliveryResult.Unknown, $"The line to the mail server broke before it answered: {fault.Message}")
                : new Delivered(DeliveryResult.RefusedForNow, $"The mail server was not reached: {fault.Message}");
        }
    }

    /// <summary>The message is accepted by now: a server that does not say goodbye changes nothing.</summary>
    private static async Task Leave(SmtpClient client)
    {
        try
        {
            using var limit = new CancellationTokenSource(LongestStep);
            await client.DisconnectAsync(quit: true, limit.Token);
        }
        catch (Exception fault) when (fault is ProtocolException or IOException or SocketException or OperationCanceledException)
        {
            // Accepted all the same.
        }
    }

    private static SecureSocketOptions Of(SmtpSecurity security) => security switch
    {
        SmtpSecurity.Tls => SecureSocketOptions.SslOnConnect,
        SmtpSecurity.StartTls => SecureSocketOptions.StartTls,
        SmtpSecurity.None => SecureSocketOptions.None,
        _ => throw new ArgumentOutOfRangeException(nameof(security), security, null),
    };

    /// <summary>Whether any of the text has gone out.</summary>
    private sealed class Begun : ITransferProgress
    {
        public bool Text { get; private set; }

        public void Report(long bytesTransferred, long totalSize) => Text = true;

        public void Report(long bytesTransferred) => Text = true;
    }
}
