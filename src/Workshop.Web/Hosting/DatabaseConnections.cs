namespace Workshop.Web.Hosting;

/// <summary>
/// The two ways to the one database. <paramref name="Service"/> may pass through a pooler, so nothing that is bound
/// to a session goes over it; <paramref name="Direct"/> never does, and serves migrations, LISTEN and locks that last
/// as long as their session.
/// </summary>
public sealed record DatabaseConnections(string Service, string Direct);
