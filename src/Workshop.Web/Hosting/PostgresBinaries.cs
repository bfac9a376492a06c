using System.Globalization;
using System.Text.RegularExpressions;

namespace Workshop.Web.Hosting;

/// <summary>
/// The places where PostgreSQL's server programs may be: a folder that someone named (then no other), the search
/// path, and the folders in which Debian keeps one version beside the other.
/// </summary>
public sealed partial record PostgresBinaries(string? NamedFolder, string? SearchPath, string VersionsFolder)
{
    /// <summary>The oldest version for which the SQL of this service is written.</summary>
    public const int OldestVersion = 15;

    public static PostgresBinaries OfThisMachine() => new(
        Environment.GetEnvironmentVariable("PG_BIN"),
        Environment.GetEnvironmentVariable("PATH"),
        "/usr/lib/postgresql");

    /// <summary>
    /// The folder with the programs to use: the first found, or, where a cluster exists already, the first of that
    /// cluster's own major version, since no other can open it.
    /// </summary>
    /// <exception cref="DatabaseUnavailableException">There is none; the message says what to install.</exception>
    public async Task<string> FindAsync(int? clusterVersion, CancellationToken cancellation)
    {
        if (!string.IsNullOrWhiteSpace(NamedFolder) && !HoldsServer(NamedFolder))
        {
            throw new DatabaseUnavailableException(
                $"PG_BIN names {NamedFolder}, where there is no initdb and postgres: correct it, or unset it.");
        }

        var found = new List<string>();
        foreach (var folder in Candidates())
        {
            var version = await VersionOfAsync(folder, cancellation);
            if (clusterVersion is null ? version >= OldestVersion : version == clusterVersion)
            {
                return folder;
            }

            found.Add($"{version} in {folder}");
        }

        var wanted = clusterVersion is null ? "postgresql" : $"postgresql-{clusterVersion}";
        var install = $"install it (apt-get install {wanted}), name its folder in PG_BIN, " +
            "or give ConnectionStrings:Workshop.";
        throw new DatabaseUnavailableException((found.Count, clusterVersion) switch
        {
            (0, _) => $"No PostgreSQL server programs were found: {install}",
            (_, null) => $"PostgreSQL {OldestVersion} or newer is needed, found {string.Join(", ", found)}: {install}",
            _ => $"The data folder was made by PostgreSQL {clusterVersion}, found {string.Join(", ", found)}: {install}",
        });
    }

    private IEnumerable<string> Candidates()
    {
        if (!string.IsNullOrWhiteSpace(NamedFolder))
        {
            return [NamedFolder];
        }

        var versions = Directory.Exists(VersionsFolder)
            ? Directory.EnumerateDirectories(VersionsFolder)
                .OrderByDescending(folder => double.TryParse(
                    Path.GetFileName(folder), NumberStyles.Float, CultureInfo.InvariantCulture, out var version)
                    ? version
                    : 0)
                .Select(folder => Path.Combine(folder, "bin"))
            : [];
        return (SearchPath ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .Concat(versions)
            .Where(HoldsServer)
            .Distinct();
    }

    private static bool HoldsServer(string folder) =>
        File.Exists(Path.Combine(folder, "initdb")) && File.Exists(Path.Combine(folder, "postgres"));

    private static async Task<int> VersionOfAsync(string folder, CancellationToken cancellation)
    {
        var answer = await ServerUser.Self.RunAsync(Path.Combine(folder, "postgres"), ["--version"], null, cancellation);
        var match = VersionNumber().Match(answer.Output);
        return match.Success ? int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) : 0;
    }

    [GeneratedRegex(@"\s(\d+)(\.|\w|\s|$)")]
    private static partial Regex VersionNumber();
}
