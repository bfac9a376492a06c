using System.Globalization;
using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Npgsql;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Bays;

/// <summary>News of the floor over real HTTP, through several copies of the service on one database.</summary>
public sealed class LiveFloorTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_change_through_one_copy_of_the_service_reaches_whoever_watches_another()
    {
        var booked = await app.Booked();
        await using var one = app.Copy();
        await using var two = app.Copy();
        using var advisor = await WorkshopApp.Of(one, Roles.Advisor);
        using var watcher = await WorkshopApp.Of(two, Roles.Technician);
        using var patience = Patient();
        using var stream = await EventStream.Open(watcher, patience.Token);
        var seen = await UntilQuiet(stream, two.Services.GetRequiredService<FloorNews>(), patience.Token);

        using var body = new StringContent(
            """{ "odometerCount": 24000, "engineStoppedAt": "2026-03-02T07:00:00Z" }""", System.Text.Encoding.UTF8, "application/json");
        var checkedIn = await advisor.PostAsync(new Uri($"{booked.Api}/check-in", UriKind.Relative), body, Ct);
        var next = await stream.Next(patience.Token);

        Assert.Equal(HttpStatusCode.OK, checkedIn.StatusCode);
        Assert.Equal("text/event-stream", stream.ContentType);
        Assert.Equal("look", next?.Name);
        Assert.NotEqual(seen, next?.Id);
    }

    [Fact]
    public async Task A_lost_connection_to_the_database_is_said_then_made_anew_and_everybody_looks_again()
    {
        await using var copy = app.Copy();
        using var watcher = await WorkshopApp.Of(copy, Roles.Advisor);
        using var patience = Patient();
        using var stream = await EventStream.Open(watcher, patience.Token);
        await UntilQuiet(stream, copy.Services.GetRequiredService<FloorNews>(), patience.Token);

        Assert.NotEqual(0, await Count("pg_terminate_backend(pid)", $"application_name = '{FloorNews.ApplicationName}'"));
        var told = new List<(string Id, string Name)?>();
        do
        {
            told.Add(await stream.Next(patience.Token));
        }
        while (told[^1]?.Name == "blind");
        await app.Booked();
        var next = await stream.Next(patience.Token);

        // A slow reader may miss that nothing was heard for a while, never that it must look again.
        Assert.Equal("look", told[^1]?.Name);
        Assert.Equal("look", next?.Name);
        Assert.NotEqual(told[^1]?.Id, next?.Id);
    }

    [Fact]
    public async Task Forty_who_watch_are_all_told_and_share_one_connection_to_the_database()
    {
        const int Watchers = 40;
        await using var copy = app.Copy();
        using var client = await WorkshopApp.Of(copy, Roles.Technician);
        var news = copy.Services.GetRequiredService<FloorNews>();
        using var patience = Patient();
        var streams = new List<EventStream>();
        try
        {
            // One after the other: what is open at the end is what they hold, not what they needed at once.
            for (var i = 0; i < Watchers; i++)
            {
                streams.Add(await EventStream.Open(client, patience.Token));
            }

            foreach (var stream in streams)
            {
                await UntilQuiet(stream, news, patience.Token);
            }

            Assert.Equal(Watchers, news.Watching);
            await app.Booked();
            var told = await Task.WhenAll(streams.Select(s => s.Next(patience.Token)));

            Assert.All(told, t => Assert.Equal("look", t?.Name));
            var listening = await Listening();
            Assert.InRange(listening, 1, 2); // this copy's, and that of the class's own service
            Assert.InRange(await Connections(), 1, 10);
        }
        finally
        {
            foreach (var stream in streams)
            {
                stream.Dispose();
            }
        }
    }

    [Fact]
    public async Task Who_comes_back_with_the_last_news_hears_nothing_until_something_changes()
    {
        await using var copy = app.Copy();
        using var client = await WorkshopApp.Of(copy, Roles.Technician);
        var news = copy.Services.GetRequiredService<FloorNews>();
        using var patience = Patient();
        string last;
        using (var first = await EventStream.Open(client, patience.Token))
        {
            last = await UntilQuiet(first, news, patience.Token);
        }

        using var back = await EventStream.Open(client, patience.Token, last);
        await app.Booked();
        var next = await back.Next(patience.Token);

        Assert.Equal("look", next?.Name);
        Assert.NotEqual(last, next?.Id);
    }

    [Fact]
    public async Task The_stream_ends_when_the_service_is_told_to_stop()
    {
        await using var copy = app.Copy();
        using var client = await WorkshopApp.Of(copy, Roles.Technician);
        using var patience = Patient();
        using var stream = await EventStream.Open(client, patience.Token);

        copy.Services.GetRequiredService<IHostApplicationLifetime>().StopApplication();
        while (await stream.Next(patience.Token) is not null)
        {
        }

        Assert.False(patience.IsCancellationRequested);
    }

    [Fact]
    public async Task Nobody_watches_without_signing_in()
    {
        using var anonymous = app.Anonymous();

        var answer = await anonymous.GetAsync(new Uri("/bays/live", UriKind.Relative), Ct);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    private static CancellationTokenSource Patient()
    {
        var patience = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        patience.CancelAfter(Patience);
        return patience;
    }

    /// <summary>Reads on until the listener is up, which it tells as its first news, and all that was told has been read.</summary>
    private static async Task<string> UntilQuiet(EventStream stream, FloorNews news, CancellationToken ct)
    {
        string id;
        do
        {
            id = (await stream.Next(ct))?.Id ?? throw new InvalidOperationException("The stream ended.");
        }
        while (id != news.Current || id.EndsWith("-0", StringComparison.Ordinal));
        return id;
    }

    private Task<int> Listening() => Count("pid", $"application_name = '{FloorNews.ApplicationName}'");

    private Task<int> Connections() => Count("pid", "true");

    private async Task<int> Count(string what, string condition)
    {
        await using var connection = new NpgsqlConnection(app.Database.Connections.Direct);
        await connection.OpenAsync(Ct);
        await using var command = new NpgsqlCommand(
            $"select count({what}) from pg_stat_activity where datname = current_database() and {condition}", connection);
        return Convert.ToInt32(await command.ExecuteScalarAsync(Ct), CultureInfo.InvariantCulture);
    }
}
