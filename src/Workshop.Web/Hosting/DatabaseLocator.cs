using System.Diagnostics;
using System.Globalization;
using Npgsql;

namespace Workshop.Web.Hosting;

/// <summary>
/// Finds the database to work on: the one that is given, else a private cluster. A given one is never replaced by
/// another in silence.
/// </summary>
public static class DatabaseLocator
{
    private const string ServiceSetting = "ConnectionStrings:Workshop";
    private const string DirectSetting = "ConnectionStrings:WorkshopDirect";

    private const string WaitSetting = "Workshop:DatabaseWaitSeconds";

    // Long enough for a database that is started together with the service.
    private const int UsualWaitSeconds = 15;

    /// <summary>Opens the database that the configuration asks for.</summary>
    /// <exception cref="DatabaseUnavailableException">There is none; the message is one line.</exception>
    public static async Task<WorkshopDatabase> OpenAsync(
        IConfiguration configuration, ILogger? logger, CancellationToken cancellation)
    {
        if (Given(configuration) is { } given)
        {
            var wait = Wait(configuration);
            await CheckAsync(given.Service, ServiceSetting, wait, cancellation);
            if (given.Direct != given.Service)
            {
                await CheckAsync(given.Direct, DirectSetting, wait, cancellation);
            }

            return new WorkshopDatabase(given, null);
        }

        var options = EmbeddedPostgresOptions.Lasting(DataFolder(configuration));
        var cluster = await EmbeddedPostgres.StartAsync(options, logger, cancellation);
        return new WorkshopDatabase(cluster.Connections, cluster);
    }

    /// <summary>The connection strings of the configuration; null where it gives none.</summary>
    public static DatabaseConnections? Given(IConfiguration configuration)
    {
        var (service, direct) = (configuration[ServiceSetting], configuration[DirectSetting]);
        if (service is null && direct is null)
        {
            return null;
        }

        return new DatabaseConnections(
            Parsed(service, ServiceSetting), Parsed(direct ?? service, DirectSetting));
    }

    /// <summary>Where the service keeps what lasts: <c>Workshop:DataFolder</c>, or the usual place of the user.</summary>
    public static string DataFolder(IConfiguration configuration)
    {
        if (configuration["Workshop:DataFolder"] is { Length: > 0 } named)
        {
            return Path.GetFullPath(named);
        }

        if (Environment.IsPrivilegedProcess)
        {
            // Not under root's home, which the user postgres cannot enter.
            return "/var/lib/workshop";
        }

        return Environment.GetEnvironmentVariable("XDG_STATE_HOME") is { Length: > 0 } state && Path.IsPathRooted(state)
            ? Path.Combine(state, "workshop")
            : Path.Combine(
                Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".local", "state", "workshop");
    }

    private static string Parsed(string? connection, string setting)
    {
        try
        {
            var parsed = new NpgsqlConnectionStringBuilder(connection);
            return string.IsNullOrWhiteSpace(parsed.Host)
                ? throw new DatabaseUnavailableException(
                    $"{setting} names no Host: give Host, Database, Username and Password, or unset it.")
                : parsed.ConnectionString;
        }
        catch (Exception wrong) when (wrong is ArgumentException or FormatException)
        {
            // The text itself may hold the password, so it is not repeated.
            throw new DatabaseUnavailableException($"{setting} is not a connection string: {FirstLine(wrong)}", wrong);
        }
    }

    private static TimeSpan Wait(IConfiguration configuration) => configuration[WaitSetting] switch
    {
        null => TimeSpan.FromSeconds(UsualWaitSeconds),
        var text when uint.TryParse(text, CultureInfo.InvariantCulture, out var seconds) => TimeSpan.FromSeconds(seconds),
        var text => throw new DatabaseUnavailableException(
            $"{WaitSetting} is \"{text}\": it is a whole number of seconds, 0 or more."),
    };

    private static async Task CheckAsync(
        string connectionString, string setting, TimeSpan wait, CancellationToken cancellation)
    {
        var waited = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                await using var source = NpgsqlDataSource.Create(connectionString);
                await using var connection = await source.OpenConnectionAsync(cancellation);
                return;
            }
            catch (NpgsqlException failure) when (failure.IsTransient && waited.Elapsed < wait)
            {
                await Task.Delay(250, cancellation);
            }
            catch (NpgsqlException failure)
            {
                var asked = new NpgsqlConnectionStringBuilder(connectionString);
                throw new DatabaseUnavailableException(
                    $"The database that {setting} gives (host {asked.Host}, port {asked.Port}, database " +
                    $"{asked.Database ?? asked.Username}) does not let the service in: {FirstLine(failure)}",
                    failure);
            }
        }
    }

    private static string FirstLine(Exception failure) => failure.Message.Split('\n')[0].Trim();
}
