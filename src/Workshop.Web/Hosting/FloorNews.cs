using System.Collections.Concurrent;
using System.Globalization;
using System.Security.Cryptography;
using System.Threading.Channels;
using Npgsql;

namespace Workshop.Web.Hosting;

/// <summary>What watchers are told. Nothing but "look again": whoever is told reads the floor itself.</summary>
/// <param name="Id">Of this copy of the service and this moment; another id means that something may have changed since.</param>
/// <param name="Blind">The database cannot be heard: what is shown may be out of date, until the next news.</param>
public sealed record FloorNewsItem(string Id, bool Blind);

/// <summary>
/// Hears through PostgreSQL's LISTEN that something on the floor changed, in whichever copy of the service, and tells all
/// who watch this copy. One connection a copy, however many watch; on the direct way, since a pooler would share it out.
/// </summary>
public sealed partial class FloorNews(DatabaseConnections connections, ILogger<FloorNews> logger) : BackgroundService
{
    public const string Channel = "workshop_floor";

    /// <summary>How the connection is named in pg_stat_activity.</summary>
    public const string ApplicationName = "workshop floor news";

    /// <summary>A burst of changes is told at once, then no more often than this.</summary>
    public static readonly TimeSpan ShortestGap = TimeSpan.FromMilliseconds(500);

    private static readonly TimeSpan FirstPause = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan LongestPause = TimeSpan.FromSeconds(15);
    private const int KeepAliveSeconds = 15;

    private readonly ConcurrentDictionary<FloorWatch, bool> watching = new();
    private readonly string copy = RandomNumberGenerator.GetHexString(8, lowercase: true);

    // Holds one: any number of changes while the last news is being told become one more.
    private readonly Channel<bool> changes = System.Threading.Channels.Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    private long told;

    /// <summary>The last news. Whoever reads the floor after this and later hears of the same has missed nothing.</summary>
    public string Current => string.Create(CultureInfo.InvariantCulture, $"{copy}-{Interlocked.Read(ref told)}");

    /// <summary>How many watch this copy.</summary>
    public int Watching => watching.Count;

    /// <summary>Begins to watch; disposing ends it. Who is slow misses news between, never the last.</summary>
    public FloorWatch Watch()
    {
        var watch = new FloorWatch(ended => watching.TryRemove(ended, out _));
        watching.TryAdd(watch, true);
        return watch;
    }

    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll(Listen(stoppingToken), TellOn(stoppingToken));

    private async Task Listen(CancellationToken ct)
    {
        var pause = FirstPause;
        while (!ct.IsCancellationRequested)
        {
            try
            {
                await using var connection = new NpgsqlConnection(ConnectionString());
                await connection.OpenAsync(ct);
                connection.Notification += (_, _) => changes.Writer.TryWrite(true);
                await using (var listen = new NpgsqlCommand($"listen {Channel}", connection))
                {
                    await listen.ExecuteNonQueryAsync(ct);
                }

                // What changed while nobody listened was heard by nobody.
                changes.Writer.TryWrite(true);
                pause = FirstPause;
                while (true)
                {
                    await connection.WaitAsync(ct);
                }
            }
            catch (OperationCanceledException) when (ct.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault) when (fault is NpgsqlException or TimeoutException or IOException or System.Net.Sockets.SocketException)
            {
                HearingLost(logger, pause, fault);
                Tell(blind: true);
            }

            await Task.Delay(pause, ct).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
            pause = pause * 2 < LongestPause ? pause * 2 : LongestPause;
        }
    }

    private async Task TellOn(CancellationToken ct)
    {
        try
        {
            await foreach (var _ in changes.Reader.ReadAllAsync(ct))
            {
                Tell(blind: false);
                await Task.Delay(ShortestGap, ct);
            }
        }
        catch (OperationCanceledException) when (ct.IsCancellationRequested)
        {
            // The service ends.
        }
    }

    private void Tell(bool blind)
    {
        Interlocked.Increment(ref told);
        var news = new FloorNewsItem(Current, blind);
        foreach (var watch in watching.Keys)
        {
            watch.Tell(news);
        }
    }

    private string ConnectionString() => new NpgsqlConnectionStringBuilder(connections.Direct)
    {
        Pooling = false,
        KeepAlive = KeepAliveSeconds,
        ApplicationName = ApplicationName,
    }.ConnectionString;

    [LoggerMessage(LogLevel.Warning, "The database cannot be heard; tried again in {Pause}")]
    private static partial void HearingLost(ILogger logger, TimeSpan pause, Exception fault);
}

/// <summary>One who watches the floor.</summary>
public sealed class FloorWatch : IDisposable
{
    private readonly Channel<FloorNewsItem> news = Channel.CreateBounded<FloorNewsItem>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true });

    private readonly Action<FloorWatch> ended;

    internal FloorWatch(Action<FloorWatch> ended) => this.ended = ended;

    public ChannelReader<FloorNewsItem> News => news.Reader;

    internal void Tell(FloorNewsItem item) => news.Writer.TryWrite(item);

    public void Dispose() => ended(this);
}

internal static class FloorNewsRegistration
{
    public static void AddFloorNews(this IServiceCollection services)
    {
        services.AddSingleton<FloorNews>();
        services.AddHostedService(provider => provider.GetRequiredService<FloorNews>());
    }
}
