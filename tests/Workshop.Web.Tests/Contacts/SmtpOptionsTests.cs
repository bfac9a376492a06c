using Microsoft.Extensions.Configuration;
using Workshop.Web.Features.Contacts;
using Xunit;

namespace Workshop.Web.Tests.Contacts;

public sealed class SmtpOptionsTests
{
    [Fact]
    public void Without_a_host_no_mail_server_is_set_up() => Assert.False(Read().IsSetUp);

    [Theory]
    [InlineData("mail.example.org", "None", "workshop@example.org", "Smtp:Security is None and Smtp:Host is \"mail.example.org\": without TLS only localhost, 127.0.0.1 or ::1 is allowed; else StartTls or Tls.")]
    [InlineData("mail.example.org", "Tls", "workshop", "Smtp:From is \"workshop\": one mailbox such as Name <name@example.org> is allowed.")]
    [InlineData("mail.example.org", "Tls", null, "Smtp:From is \"\": one mailbox such as Name <name@example.org> is allowed.")]
    public void What_cannot_work_or_would_send_in_the_clear_is_refused_at_the_start(string host, string security, string? from, string sentence) =>
        Assert.Equal(sentence, Assert.Throws<InvalidOperationException>(() => Read(("Smtp:Host", host), ("Smtp:Security", security), ("Smtp:From", from))).Message);

    [Theory]
    [InlineData("mail.example.org", "StartTls")]
    [InlineData("mail.example.org", "Tls")]
    [InlineData("127.0.0.1", "None")]
    [InlineData("::1", "None")]
    public void Tls_anywhere_and_none_on_this_machine_are_taken(string host, string security) =>
        Assert.True(Read(("Smtp:Host", host), ("Smtp:Security", security), ("Smtp:From", "Workshop <workshop@example.org>")).IsSetUp);

    [Fact]
    public void A_password_comes_from_the_environment_or_a_secret_file_never_from_the_command_line()
    {
        var open = new ConfigurationBuilder().AddCommandLine(["--Smtp:Password=secret"]).Build();
        Assert.DoesNotContain("secret", Assert.Throws<InvalidOperationException>(() => SmtpOptions.Read(open)).Message.Replace("secret file", "", StringComparison.Ordinal), StringComparison.Ordinal);
        var file = Path.GetTempFileName();
        File.WriteAllText(file, "from a file\n");

        Assert.Equal("from a file", Read(("Smtp:PasswordFile", file)).Password);
        File.Delete(file);
    }

    private static SmtpOptions Read(params (string Name, string? Value)[] settings) => SmtpOptions.Read(
        new ConfigurationBuilder().AddInMemoryCollection(settings.Select(s => KeyValuePair.Create(s.Name, s.Value))).Build());
}
