using System.Net;
using Npgsql;
using Workshop.Domain.Shims;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Xunit;
using static Workshop.Web.Tests.Shims.ShimStores;

namespace Workshop.Web.Tests.Shims;

/// <summary>What happens when two want the same shim, and what the database refuses whoever asks.</summary>
public sealed class ShimRaceTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const int Rounds = 10;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_last_shim_of_a_size_goes_to_one_of_two_cards_and_the_other_is_told_what_is_near()
    {
        var (one, other) = (await app.CheckedIn(), await app.CheckedIn());
        for (var round = 0; round < Rounds; round++)
        {
            var thickness = 2.901m + (round * 0.002m);
            await app.Receive(thickness, 1);
            object Shim() => new { valve = "1-exhaust-1", thicknessMm = thickness, fromBox = true };

            var answers = await Task.WhenAll(app.Fit(one, Shim()), app.Fit(other, Shim()));

            Assert.Equal([HttpStatusCode.OK, HttpStatusCode.Conflict], answers.Select(a => a.StatusCode).Order());
            var refused = await answers.Single(a => a.StatusCode == HttpStatusCode.Conflict).Json();
            Assert.Contains("the box holds none", refused.Fault("shims[0].thicknessMm"), StringComparison.Ordinal);
            Assert.Contains("Nearest in it", refused.Fault("shims[0].thicknessMm"), StringComparison.Ordinal);
        }

        await app.LedgerAgrees();
    }

    [Fact]
    public async Task Of_a_fitting_and_a_scrapping_of_one_shim_at_once_one_wins()
    {
        var visit = await app.CheckedIn();
        for (var round = 0; round < Rounds; round++)
        {
            var id = Assert.Single(await app.Receive(2.951m, 1));

            var answers = await Task.WhenAll(
                app.Fit(visit, new { valve = "1-exhaust-1", fromBox = true, shimId = id, thicknessMm = 2.951 }),
                app.PostShims($"{id}/scrap", new { reason = "chipped" }));

            Assert.Equal([HttpStatusCode.OK, HttpStatusCode.Conflict], answers.Select(a => a.StatusCode).Order());
            Assert.Equal(answers[0].IsSuccessStatusCode ? ShimWhere.Engine : ShimWhere.Gone, (await app.Shim(id)).Where);
        }

        await app.LedgerAgrees();
    }

    [Fact]
    public async Task What_is_in_an_engine_cannot_be_put_into_the_box_by_any_way()
    {
        var id = Assert.Single(await app.Receive(2.961m, 1));
        var visit = await app.CheckedIn();
        (await app.Fit(visit, new { valve = "1-exhaust-1", fromBox = true, shimId = id })).EnsureSuccessStatusCode();

        var asked = await app.PostShims($"{id}/put-away", new { thicknessMm = 2.961, cleanedAndMeasured = true });
        var told = await Refused(app.Database.Connections.Service, Movement(id, "returned", 1));
        var byHand = await Refused(app.Database.Connections.Service, $"update shims set engine_id = null, valve = null, place_id = '{TestWorkshop.ShimBox}' where id = '{id}'");
        var asOwner = await Refused(app.Database.Connections.Direct, $"update shims set place_id = '{TestWorkshop.ShimBox}' where id = '{id}'");

        Assert.Equal(HttpStatusCode.Conflict, asked.StatusCode);
        Assert.Contains("what is in an engine is not in the box", (await asked.Json()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal("ck_shims_moved_from", told.ConstraintName);
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, byHand.SqlState);
        Assert.Equal("ck_shims_in_one_place", asOwner.ConstraintName);
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task A_shim_leaves_the_box_once_and_a_movement_without_a_shim_moves_none()
    {
        var id = Assert.Single(await app.Receive(2.971m, 1));
        await Execute(app.Database.Connections.Service, Movement(id, "scrapped", -1, 2.971m));

        var twice = await Refused(app.Database.Connections.Service, Movement(id, "scrapped", -1, 2.971m));
        var back = await Refused(app.Database.Connections.Service, Movement(id, "returned", 1, 2.971m));
        var nameless = await Refused(app.Database.Connections.Service, Movement(null, "received", 1, 2.971m));
        var two = await Refused(app.Database.Connections.Service, Movement(Domain.NewId.At(app.Clock), "received", 2, 2.971m));

        Assert.Equal(
            ["ck_shims_moved_from", "ck_shims_moved_from", "ck_stock_movements_shim", "ck_stock_movements_shim"],
            new[] { twice.ConstraintName, back.ConstraintName, nameless.ConstraintName, two.ConstraintName });
        await app.LedgerAgrees();
    }

    private static string Movement(Guid? shim, string kind, int change, decimal thickness = 2.961m) =>
        $"""
         insert into stock_movements (id, part_id, place_id, shim_id, thickness_mm, condition, kind, on_hand_change, reserved_change, moved_by, moved_at)
         select gen_random_uuid(), id, '{TestWorkshop.ShimBox}', {(shim is null ? "null" : $"'{shim}'")}, {thickness.ToString(System.Globalization.CultureInfo.InvariantCulture)},
           'new', '{kind}', {change}, 0, '{TestWorkshop.Manager}', now() from parts where code = '{TestEngines.ShimPart}'
         """;

    private static Task<PostgresException> Refused(string connection, string sql) =>
        Assert.ThrowsAsync<PostgresException>(() => Execute(connection, sql));

    private static async Task Execute(string connection, string sql)
    {
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(Ct);
    }
}
