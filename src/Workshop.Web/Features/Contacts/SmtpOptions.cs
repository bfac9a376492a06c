using System.Net;
using Microsoft.Extensions.Configuration.CommandLine;
using Microsoft.Extensions.Configuration.Json;
using MimeKit;

namespace Workshop.Web.Features.Contacts;

/// <summary>How the line to the mail server is kept private.</summary>
public enum SmtpSecurity
{
    /// <summary>TLS from the first byte, mostly port 465 (RFC 8314).</summary>
    Tls,

    /// <summary>TLS asked for and insisted on, mostly port 587 (RFC 3207).</summary>
    StartTls,

    /// <summary>None: on this machine only.</summary>
    None,
}

/// <summary>Where e-mails are handed over. Without a host nothing is ever sent: pages show the text to copy.</summary>
public sealed class SmtpOptions
{
    public const string Section = "Smtp";

    /// <summary>Whether this copy of the service sends what waits.</summary>
    public bool Sends { get; set; } = true;

    public string? Host { get; set; }

    public int Port { get; set; } = 587;

    public SmtpSecurity Security { get; set; } = SmtpSecurity.StartTls;

    public string? UserName { get; set; }

    /// <summary>From the environment, or by <see cref="PasswordFile"/>; never from a file of settings or the command line.</summary>
    public string? Password { get; set; }

    /// <summary>A file that holds the password, as secrets of containers do.</summary>
    public string? PasswordFile { get; set; }

    /// <summary>"Workshop name &lt;address@example.org&gt;", or the address alone.</summary>
    public string? From { get; set; }

    public int PollSeconds { get; set; } = 5;

    public bool IsSetUp => !string.IsNullOrEmpty(Host);

    /// <summary>The mailbox that stands as sender.</summary>
    internal MailboxAddress Sender => MailboxAddress.Parse(From!);

    /// <summary>Reads the section and refuses what cannot work, or would send a password or a letter in the clear.</summary>
    /// <exception cref="InvalidOperationException">Names the setting, its value and what is allowed.</exception>
    internal static SmtpOptions Read(IConfiguration configuration)
    {
        var options = configuration.GetSection(Section).Get<SmtpOptions>() ?? new SmtpOptions();
        if (configuration is IConfigurationRoot root && PasswordStandsOpen(root))
        {
            throw new InvalidOperationException(
                "Smtp:Password stands in a file of settings or on the command line: give it as environment variable Smtp__Password, or name a file that only the service can read as Smtp:PasswordFile.");
        }

        if (options.PasswordFile is { Length: > 0 } file)
        {
            options.Password = File.ReadAllText(file).TrimEnd('\r', '\n');
        }

        options.Check();
        return options;
    }

    internal void Check()
    {
        if (!IsSetUp)
        {
            return;
        }

        if (Port is < 1 or > 65535)
        {
            throw new InvalidOperationException($"Smtp:Port is {Port}: 1 to 65535 is allowed.");
        }

        if (!MailboxAddress.TryParse(From, out var sender) || !sender.Address.Contains('@', StringComparison.Ordinal))
        {
            throw new InvalidOperationException($"Smtp:From is \"{From}\": one mailbox such as Name <name@example.org> is allowed.");
        }

        if (Security == SmtpSecurity.None && !IsLoopback(Host!))
        {
            throw new InvalidOperationException(
                $"Smtp:Security is None and Smtp:Host is \"{Host}\": without TLS only localhost, 127.0.0.1 or ::1 is allowed; else StartTls or Tls.");
        }
    }

    private static bool IsLoopback(string host) =>
        host == "localhost" || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));

    private static bool PasswordStandsOpen(IConfigurationRoot root) =>
        root.Providers.Any(p => p is JsonConfigurationProvider or CommandLineConfigurationProvider && p.TryGet($"{Section}:Password", out var given) && !string.IsNullOrEmpty(given));
}
