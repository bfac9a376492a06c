using Workshop.Web.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Hosting;

public sealed class PostgresBinariesTests : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("workshop-test-");

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private string Versions => Path.Combine(root.FullName, "versions");

    [Fact]
    public async Task The_newest_version_is_taken_by_number_not_by_spelling()
    {
        Install("versions/9.6/bin", "9.6.24");
        Install("versions/15/bin", "15.18");
        var newest = Install("versions/100/bin", "100.1");

        Assert.Equal(newest, await new PostgresBinaries(null, "", Versions).FindAsync(null, Cancellation));
    }

    [Fact]
    public async Task The_search_path_comes_before_the_versions_and_a_named_folder_before_both()
    {
        Install("versions/17/bin", "17.2");
        var onPath = Install("path", "16.4");
        var named = Install("named", "15.1");

        Assert.Equal(
            onPath, await new PostgresBinaries(null, $"/nowhere:{onPath}", Versions).FindAsync(null, Cancellation));
        Assert.Equal(named, await new PostgresBinaries(named, onPath, Versions).FindAsync(null, Cancellation));
    }

    [Fact]
    public async Task A_cluster_is_opened_by_its_own_version_although_a_newer_one_is_there()
    {
        Install("versions/17/bin", "17.2");
        var own = Install("versions/15/bin", "15.18");

        Assert.Equal(own, await new PostgresBinaries(null, "", Versions).FindAsync(15, Cancellation));
    }

    [Fact]
    public async Task A_cluster_whose_version_is_not_installed_names_the_package()
    {
        var newer = Install("versions/17/bin", "17.2");

        var refused = await RefusalAsync(new PostgresBinaries(null, "", Versions), 15);

        Assert.StartsWith($"The data folder was made by PostgreSQL 15, found 17 in {newer}: ", refused);
        Assert.Contains("apt-get install postgresql-15", refused);
    }

    [Fact]
    public async Task A_version_that_is_too_old_is_refused()
    {
        var old = Install("versions/13/bin", "13.9");

        var refused = await RefusalAsync(new PostgresBinaries(null, "", Versions), null);

        Assert.StartsWith($"PostgreSQL 15 or newer is needed, found 13 in {old}: ", refused);
    }

    [Fact]
    public async Task A_named_folder_without_the_programs_is_refused_although_others_are_there()
    {
        Install("versions/15/bin", "15.18");

        var refused = await RefusalAsync(new PostgresBinaries("/nowhere/bin", "", Versions), null);

        Assert.Equal(
            "PG_BIN names /nowhere/bin, where there is no initdb and postgres: correct it, or unset it.", refused);
    }

    public void Dispose() => root.Delete(recursive: true);

    private static async Task<string> RefusalAsync(PostgresBinaries binaries, int? clusterVersion) =>
        (await Assert.ThrowsAsync<DatabaseUnavailableException>(
            () => binaries.FindAsync(clusterVersion, Cancellation))).Message;

    /// <summary>Programs that say their version as PostgreSQL's do.</summary>
    private string Install(string folder, string version)
    {
        var bin = Path.Combine(root.FullName, folder);
        Directory.CreateDirectory(bin);
        foreach (var program in new[] { "initdb", "postgres" })
        {
            var path = Path.Combine(bin, program);
            File.WriteAllText(path, $"#!/bin/sh\necho '{program} (PostgreSQL) {version} (Debian {version}-1)'\n");
            FileModes.Set(path, "r-x------");
        }

        return bin;
    }
}
