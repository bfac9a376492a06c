using System.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Contacts;
using Xunit;

namespace Workshop.Web.Tests.Contacts;

/// <summary>The service as a process of its own, killed while the mail server has the text and has not answered.</summary>
public sealed class KilledSenderTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_a_killed_service_had_in_hand_is_uncertain_and_is_not_sent_again_by_itself()
    {
        await using var server = new TestMailServer();
        var options = app.Services.GetRequiredService<SmtpOptions>();
        (options.Host, options.Port, options.Security, options.From) = ("127.0.0.1", server.Port, SmtpSecurity.None, server.Options.From);
        var advisor = await app.As(Roles.Advisor);
        var (_, motorcycle) = await advisor.AddOwner(channels: [ContactChannel.Email]);
        var id = await advisor.Queue(motorcycle);
        var arrived = server.HoldFirst();

        using (var service = Start(server.Port))
        {
            _ = service.StandardOutput.ReadToEndAsync(CancellationToken.None);
            var ended = service.StandardError.ReadToEndAsync(Ct);
            Assert.True(await Task.WhenAny(arrived, ended) == arrived, ended.IsCompleted ? await ended : "");
            service.Kill();
            await service.WaitForExitAsync(Ct);
        }

        server.LetGo();
        Assert.Equal(OutboxState.BeingSent, (await app.MessageRow(id)).State);

        // The killed service went by the real time.
        app.Clock.Now = SystemClock.Instance.GetCurrentInstant() + Duration.FromDays(1);
        var worker = new OutboxWorker(
            app.Services.GetRequiredService<IServiceScopeFactory>(), app.Clock, server.Options, NullLogger<OutboxWorker>.Instance);
        Assert.Equal(0, await worker.SendAll(Ct));

        var row = await app.MessageRow(id);
        Assert.Equal(OutboxState.Uncertain, row.State);
        Assert.Equal("The service stopped while it sent the message, or took too long; it may have gone out or not.", row.LastFault);
        Assert.Single(server.Seen);

        // Who signed in before the clock was moved is signed in no more.
        (await (await app.As(Roles.Advisor)).Decide(id, "send")).EnsureSuccessStatusCode();
        Assert.Equal(1, await worker.SendAll(Ct));
        Assert.Equal(OutboxState.Sent, (await app.MessageRow(id)).State);
        Assert.Equal([$"{id:N}@example.org", $"{id:N}@example.org"], server.Seen.Select(m => m.MessageId));
    }

    private Process Start(int port)
    {
        var connections = app.Database.Connections;
        var start = new ProcessStartInfo("dotnet",
        [
            Path.Combine(AppContext.BaseDirectory, "Workshop.Web.dll"), "--urls", "http://127.0.0.1:0",
            $"--ConnectionStrings:Workshop={connections.Service}", $"--ConnectionStrings:WorkshopDirect={connections.Direct}",
            "--Smtp:Host=127.0.0.1", $"--Smtp:Port={port}", "--Smtp:Security=None", "--Smtp:From=workshop@example.org", "--Smtp:PollSeconds=1",
            "--Drift:Refits=false", "--Due:Recomputes=false",
        ])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        return Process.Start(start)!;
    }
}
