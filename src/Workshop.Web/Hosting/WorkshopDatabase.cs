namespace Workshop.Web.Hosting;

/// <summary>
/// The database that the service works on. To be disposed last of all: where it is a private cluster, that stops it.
/// </summary>
public sealed class WorkshopDatabase(DatabaseConnections connections, EmbeddedPostgres? cluster) : IAsyncDisposable
{
    public DatabaseConnections Connections { get; } = connections;

    public bool IsPrivateCluster => cluster is not null;

    public ValueTask DisposeAsync() => cluster?.DisposeAsync() ?? ValueTask.CompletedTask;
}
