using System.Diagnostics;
using System.Text.RegularExpressions;
using Xunit;

namespace Workshop.Web.Tests.Hosting;

/// <summary>The service itself, as a process of its own.</summary>
public sealed partial class ServiceProcessTests : IAsyncDisposable
{
    private readonly TemporaryDataFolder folder = new();
    private readonly List<Process> started = [];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_killed_service_takes_its_server_with_it_and_the_next_one_starts_on_the_same_data()
    {
        var first = Start();
        await AssertReadyAsync(first);
        var server = folder.ServerProcessId();

        first.Kill();
        await first.WaitForExitAsync(Cancellation);
        await Processes.GoneAsync(server, TimeSpan.FromSeconds(10), Cancellation);

        var second = Start();
        await AssertReadyAsync(second);
        Assert.NotEqual(server, folder.ServerProcessId());
    }

    [Fact]
    public async Task A_second_service_on_the_same_data_ends_with_one_line_and_the_first_goes_on()
    {
        var first = Start();
        var address = await AssertReadyAsync(first);

        var second = Start();
        var said = await second.StandardError.ReadToEndAsync(Cancellation);
        await second.WaitForExitAsync(Cancellation);

        Assert.Equal(1, second.ExitCode);
        Assert.Matches($"^The data folder {folder.Path} is in use by process {first.Id}: .*\n$", said);
        await AssertReadyAsync(address);
    }

    [Fact]
    public async Task A_service_that_is_told_to_end_stops_its_server_and_ends_well()
    {
        var service = Start();
        await AssertReadyAsync(service);
        var server = folder.ServerProcessId();

        using var told = Process.Start("kill", ["-TERM", $"{service.Id}"]);
        await service.WaitForExitAsync(Cancellation);

        Assert.Equal(0, service.ExitCode);
        Assert.False(Processes.Runs(server));
    }

    public async ValueTask DisposeAsync()
    {
        var server = File.Exists(folder.PidFile) ? folder.ServerProcessId() : (int?)null;
        foreach (var service in started)
        {
            service.Kill();
            service.Dispose();
        }

        if (server is { } running)
        {
            await Processes.GoneAsync(running, TimeSpan.FromSeconds(10), CancellationToken.None);
        }

        folder.Dispose();
    }

    private Process Start()
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [Path.Combine(AppContext.BaseDirectory, "Workshop.Web.dll"), "--urls", "http://127.0.0.1:0", .. folder.Setting])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        var service = Process.Start(start)!;
        started.Add(service);
        return service;
    }

    /// <summary>Waits until the service says where it listens, and asks it there whether it is ready.</summary>
    private static async Task<string> AssertReadyAsync(Process service)
    {
        while (await service.StandardOutput.ReadLineAsync(Cancellation) is { } line)
        {
            if (Address().Match(line) is { Success: true } match)
            {
                await AssertReadyAsync(match.Value);

                // Nobody reads on, and a full pipe would hold the service up.
                _ = service.StandardOutput.ReadToEndAsync(CancellationToken.None);
                return match.Value;
            }
        }

        Assert.Fail($"The service did not start: {await service.StandardError.ReadToEndAsync(Cancellation)}");
        return "";
    }

    private static async Task AssertReadyAsync(string address)
    {
        using var client = new HttpClient();
        using var answer = await client.GetAsync(new Uri($"{address}/health/ready"), Cancellation);
        Assert.True(answer.IsSuccessStatusCode, $"{answer.StatusCode}");
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}
