namespace Workshop.Web.Hosting;

/// <summary>How a private cluster is to be kept.</summary>
public sealed record EmbeddedPostgresOptions
{
    private EmbeddedPostgresOptions()
    {
    }

    /// <summary>Where a lasting cluster lives; null for one that is thrown away when it stops.</summary>
    public string? DataFolder { get; private init; }

    /// <summary>Where to look for <c>initdb</c> and <c>postgres</c>.</summary>
    public PostgresBinaries Binaries { get; init; } = PostgresBinaries.OfThisMachine();

    /// <summary>How long to wait for a cluster that is still stopping after its service was killed.</summary>
    public TimeSpan WaitForStopping { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>How long the server may take to be ready; long, since it may have to recover after a crash.</summary>
    public TimeSpan WaitForStart { get; init; } = TimeSpan.FromSeconds(60);

    public bool IsEphemeral => DataFolder is null;

    /// <summary>A cluster that lasts, with PostgreSQL's durable settings.</summary>
    public static EmbeddedPostgresOptions Lasting(string dataFolder) =>
        new() { DataFolder = Path.GetFullPath(dataFolder) };

    /// <summary>A cluster for tests: nothing is synced to disk, and its folder goes when it stops.</summary>
    public static EmbeddedPostgresOptions Ephemeral() => new();
}
