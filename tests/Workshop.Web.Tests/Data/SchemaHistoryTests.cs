using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.Data;

/// <summary>
/// tests/schemas keeps the schema with rows as it stood after each issue. Every migration that comes later must start from each
/// of them and lose nothing. After a new migration, run with WORKSHOP_ACCEPT=1 and commit the dump that it writes.
/// </summary>
public sealed partial class SchemaHistoryTests(WorkshopApp app, PostgresServer server) : IClassFixture<WorkshopApp>
{
    private static readonly string Folder = Path.Combine(AcceptedFile.Root, "tests", "schemas");

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static TheoryData<string> Dumps =>
        Directory.Exists(Folder) ? [.. Directory.EnumerateFiles(Folder, "*.sql").Select(f => Path.GetFileName(f)!).Order()] : [];

    [Fact]
    public async Task The_newest_migration_has_a_dump_with_rows()
    {
        var newest = await app.Look(db => Task.FromResult(db.Database.GetMigrations().Last()));
        var path = Path.Combine(Folder, $"{newest}.sql");
        if (Environment.GetEnvironmentVariable("WORKSHOP_ACCEPT") == "1" && !File.Exists(path))
        {
            var technician = await app.As(Roles.Technician);
            var visit = await app.Finish(await app.CheckedIn(), technician);
            (await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_001 }, Ct)).EnsureSuccessStatusCode();
            await app.CheckedIn();
            await app.Booked();
            Directory.CreateDirectory(Folder);
            await File.WriteAllTextAsync(path, await Dump(app.Database.Connections.Direct), Ct);
        }

        Assert.True(File.Exists(path), $"tests/schemas/{newest}.sql is missing: run this test with WORKSHOP_ACCEPT=1 and commit what it writes.");
        var dump = await File.ReadAllTextAsync(path, Ct);
        foreach (var table in new[] { "clearance_readings", "sign_offs", "stock_movements", "done_items", "fastener_ticks" })
        {
            Assert.Contains($"INSERT INTO public.{table} ", dump, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Dumps))]
    public async Task A_database_of_then_becomes_one_of_now_and_keeps_its_rows(string dump)
    {
        await using var database = await server.CreateDatabaseAsync(Ct);
        var script = await File.ReadAllTextAsync(Path.Combine(Folder, dump), Ct);
        await Execute(database.Connections.Direct, script);
        var before = await RowsByTable(database.Connections.Direct);

        await DatabaseRegistration.Migrate(database.Connections.Direct, Ct);

        var after = await RowsByTable(database.Connections.Direct);
        Assert.All(before.Where(t => t.Key != "__EFMigrationsHistory"), table => Assert.Equal(table.Value, after[table.Key]));
        Assert.True(before["clearance_readings"] > 0);
        var options = new DbContextOptionsBuilder<WorkshopDbContext>();
        DatabaseRegistration.Configure(options, database.Connections.Direct);
        await using var db = new WorkshopDbContext(options.Options);
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(Ct));
        Assert.NotEmpty(await db.ClearanceReadings.AsNoTracking().ToListAsync(Ct));
        Assert.Equal(
            await db.StockBalances.Where(b => b.Thickness != null).SumAsync(b => b.OnHand, Ct), await db.Shims.CountAsync(s => s.PlaceId != null, Ct));
        Assert.NotEmpty((await db.EngineModelVersions.AsNoTracking().ToListAsync(Ct)).Select(v => v.Specification.Valves));
    }

    private static async Task<string> Dump(string connection)
    {
        var at = new NpgsqlConnectionStringBuilder(connection);
        var start = new ProcessStartInfo("pg_dump")
        {
            ArgumentList =
            {
                "--inserts", "--no-owner", "--host", at.Host!, "--port", at.Port.ToString(), "--username", at.Username!, at.Database!,
            },
            RedirectStandardOutput = true,
            Environment = { ["PGPASSWORD"] = at.Password ?? "" },
        };
        using var process = Process.Start(start)!;
        var text = await process.StandardOutput.ReadToEndAsync(Ct);
        await process.WaitForExitAsync(Ct);
        Assert.Equal(0, process.ExitCode);

        // What only psql understands, and rights of roles that another server has not.
        return ForPsqlOnly().Replace(text, "").ReplaceLineEndings("\n");
    }

    private static async Task<Dictionary<string, long>> RowsByTable(string connection)
    {
        const string Counts =
            """
            select relname::text,
                   (xpath('/row/n/text()', query_to_xml(format('select count(*) as n from public.%I', relname), false, true, '')))[1]::text::bigint
            from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
            """;
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(Counts);
        await using var reader = await command.ExecuteReaderAsync(Ct);
        var rows = new Dictionary<string, long>(StringComparer.Ordinal);
        while (await reader.ReadAsync(Ct))
        {
            rows[reader.GetString(0)] = reader.GetInt64(1);
        }

        return rows;
    }

    private static async Task Execute(string connection, string script)
    {
        var once = new NpgsqlConnectionStringBuilder(connection) { Pooling = false };
        await using var source = NpgsqlDataSource.Create(once.ConnectionString);
        await using var command = source.CreateCommand(script);
        await command.ExecuteNonQueryAsync(Ct);
    }

    [GeneratedRegex(@"^(\\(un)?restrict .*|ALTER DEFAULT PRIVILEGES .*|COMMENT ON EXTENSION .*)\n", RegexOptions.Multiline)]
    private static partial Regex ForPsqlOnly();
}
