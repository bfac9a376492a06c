using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Stores;

public sealed class LedgerTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_free_moves_first_and_reservations_go_along_with_the_rest()
    {
        var desk = await StoresDesk.Of(app);
        var (part, here, there) = (await desk.Part(), await desk.Place(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, here, 5));
        var visit = await desk.Reserved(part, 3);

        var free = await StoresDesk.Done(await desk.Move(part, here, there, 2));
        var held = await StoresDesk.Done(await desk.Move(part, here, there, 2));

        Assert.Empty(free.GetProperty("cardsThatFollow").EnumerateArray());
        var card = Assert.Single(held.GetProperty("cardsThatFollow").EnumerateArray());
        Assert.Equal((visit.Number, 2m), (card.GetProperty("jobCardNumber").GetInt32(), card.GetProperty("quantity").GetDecimal()));
        Assert.Equal(((1m, 1m), (4m, 2m)), (await desk.At(part, here), await desk.At(part, there)));
        Assert.Equal(3, await desk.HeldBy(visit, part));
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task More_than_lies_there_a_part_of_a_piece_and_the_same_place_are_refused()
    {
        var desk = await StoresDesk.Of(app);
        var (part, here, there) = (await desk.Part(), await desk.Place(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, here, 2));

        var tooMuch = await desk.Move(part, here, there, 3);
        var broken = await desk.Scrap(part, here, 0.5m);
        var same = await desk.Move(part, here, here, 1);
        var nowhere = await desk.Scrap(part, there, 1);
        var shim = await desk.Move(TestEngines.ShimPart, here, there, 1);

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.UnprocessableEntity, HttpStatusCode.BadRequest, HttpStatusCode.Conflict, HttpStatusCode.UnprocessableEntity),
            (tooMuch.StatusCode, broken.StatusCode, same.StatusCode, nowhere.StatusCode, shim.StatusCode));
        Assert.Contains("there are 2 of", await tooMuch.Sentence(), StringComparison.Ordinal);
        Assert.Contains("comes in whole pieces", await broken.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_scrapped_is_gone_whoever_has_it_reserved_and_who_comes_last_loses_it()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 2));
        var early = await desk.Reserved(part);
        app.Clock.Now += Duration.FromHours(1);
        var late = await desk.Reserved(part);

        var gone = await StoresDesk.Done(await desk.Scrap(part, place, 1, reason: "contaminated"));

        var lost = Assert.Single(gone.GetProperty("cardsThatLost").EnumerateArray());
        Assert.Equal(late.Number, lost.GetProperty("jobCardNumber").GetInt32());
        Assert.Equal((1m, 0m), (await desk.HeldBy(early, part), await desk.HeldBy(late, part)));
        Assert.Equal((1m, 1m), await desk.At(part, place));
        var row = (await desk.Get($"/api/v1/stock/parts/{part}/ledger?kind=scrapped")).GetProperty("rows")[0];
        Assert.Equal((-1m, "contaminated", "seen by a test", "Mana Ger"), (
            row.GetProperty("onHandChange").GetDecimal(), row.GetProperty("scrapReason").GetString(), row.GetProperty("remark").GetString(), row.GetProperty("who").GetString()));
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task No_more_comes_back_than_was_issued_for_the_card()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 4));
        var visit = await app.Booked();
        await app.Look(async db =>
        {
            db.StockMovements.Add(new StockMovement
            {
                Id = Domain.NewId.At(app.Clock), PartId = await db.Parts.Where(p => p.Code == part).Select(p => p.Id).SingleAsync(Ct),
                PlaceId = await db.StoragePlaces.Where(p => p.Code == place).Select(p => p.Id).SingleAsync(Ct), Kind = MovementKind.Issued,
                OnHandChange = -3, ReservedChange = 0, JobCardNumber = visit.Number, MovedBy = TestWorkshop.Technician, MovedAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync(Ct);
        });

        var back = await Return(2);
        var tooMuch = await Return(2);
        await StoresDesk.Done(await Return(1));
        var none = await Return(1);

        Assert.Equal(3m, (await StoresDesk.Done(back)).GetProperty("onHand").GetDecimal());
        Assert.Contains($"but 1 of Part {part} is out for job card {visit.Number}", await tooMuch.Sentence(), StringComparison.Ordinal);
        Assert.Contains("but none of", await none.Sentence(), StringComparison.Ordinal);
        Assert.Equal((4m, 0m), await desk.At(part, place));

        Task<HttpResponseMessage> Return(decimal quantity) => desk.Client.PostAsJsonAsync(
            "/api/v1/stock/returns", new { partCode = part, placeCode = place, quantity, jobCardNumber = visit.Number }, Ct);
    }

    [Fact]
    public async Task The_ledger_comes_page_by_page_the_latest_first_and_each_row_once()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        for (var i = 1; i <= 7; i++)
        {
            // Some in the same moment: the id decides among them.
            app.Clock.Now += Duration.FromSeconds(i % 3);
            await StoresDesk.Done(await desk.Receive(part, place, i));
        }

        var seen = new List<(Guid Id, decimal Change)>();
        string? after = null;
        do
        {
            var page = await desk.Get($"/api/v1/stock/parts/{part}/ledger?take=3{after}");
            seen.AddRange(page.GetProperty("rows").EnumerateArray().Select(r => (r.GetProperty("id").GetGuid(), r.GetProperty("onHandChange").GetDecimal())));
            after = page.GetProperty("next").ValueKind == JsonValueKind.Null ? null : $"&after={page.GetProperty("next").GetGuid()}";
        }
        while (after is not null);

        Assert.Equal(7, seen.Select(s => s.Id).Distinct().Count());
        Assert.Equal(7, seen.Count);
        Assert.Equal(28, seen.Sum(s => s.Change));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await desk.Client.GetAsync(new Uri($"/api/v1/stock/parts/{part}/ledger?after={Guid.CreateVersion7()}", UriKind.Relative), Ct)).StatusCode);
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        Assert.Contains("+7", (await pages.Open($"/stores/parts/{part}/ledger?kind=received")).MainText, StringComparison.Ordinal);
        Assert.Contains("No movement yet.", (await pages.Open($"/stores/parts/{part}/ledger?kind=scrapped")).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_the_page_goods_are_moved_and_scrapped_and_a_refusal_keeps_what_was_typed()
    {
        var desk = await StoresDesk.Of(app);
        var (part, here, there) = (await desk.Part(), await desk.Place(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, here, 5));
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var wrong = await pages.Send($"/stores/parts/{part}/book", new() { ["Move.ToPlaceCode"] = there, ["Move.Quantity"] = "6" }, "#move");
        var moved = await pages.Send(wrong, $"/stores/parts/{part}/book", new() { ["Move.Quantity"] = "4" }, "#move");
        var scrapped = await pages.Send($"/stores/parts/{part}/book", new() { ["Scrap.Quantity"] = "1", ["Scrap.Reason"] = "Damaged", ["Scrap.PlaceCode"] = there }, "#scrap");

        Assert.Equal((HttpStatusCode.Conflict, "6", there), (wrong.Status, wrong.ValueOf("Move.Quantity"), wrong.ValueOf("Move.ToPlaceCode")));
        Assert.Equal($"/stores/parts/{part}", moved.Location);
        Assert.Equal($"/stores/parts/{part}", scrapped.Location);
        Assert.Equal(((1m, 0m), (3m, 0m)), (await desk.At(part, here), await desk.At(part, there)));
    }

    [Fact]
    public async Task The_database_finds_a_balance_that_somebody_wrote_past_the_ledger()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 5));
        await StoresDesk.LedgerAgrees(app);

        await Owner("update stock_balances set on_hand = on_hand + 1 where part_id = (select id from parts where code = @code)");
        var found = await desk.Get("/api/v1/stock/check");
        var watch = app.Services.GetRequiredService<LedgerWatch>();
        await watch.Look(Ct);
        var health = await app.Anonymous().GetStringAsync(new Uri("/health/ready", UriKind.Relative), Ct);
        var page = await (await TestPages.SignedIn(app, Roles.Manager)).Open("/stores/check");
        await Owner("update stock_balances set on_hand = on_hand - 1 where part_id = (select id from parts where code = @code)");

        Assert.Equal("Degraded", health);
        Assert.Equal(0, await watch.Look(Ct));
        Assert.Equal("Healthy", await app.Anonymous().GetStringAsync(new Uri("/health/ready", UriKind.Relative), Ct));
        Assert.Equal(1, found.GetProperty("differences").GetInt32());
        var row = found.GetProperty("rows")[0];
        Assert.Equal((part, 5m, 6m), (row.GetProperty("partCode").GetString(), row.GetProperty("ledgerOnHand").GetDecimal(), row.GetProperty("balanceOnHand").GetDecimal()));
        Assert.Contains("1 rows differ", page.MainText, StringComparison.Ordinal);
        Assert.Contains("They agree.", (await (await TestPages.SignedIn(app, Roles.Manager)).Open("/stores/check")).MainText, StringComparison.Ordinal);

        async Task Owner(string sql)
        {
            await using var connection = new Npgsql.NpgsqlConnection(app.Database.Connections.Direct);
            await connection.OpenAsync(Ct);
            await using var command = new Npgsql.NpgsqlCommand(sql, connection);
            command.Parameters.AddWithValue("code", part);
            await command.ExecuteNonQueryAsync(Ct);
        }
    }

    [Fact]
    public async Task The_service_itself_cannot_write_a_balance()
    {
        var refused = await Assert.ThrowsAsync<Npgsql.PostgresException>(() => app.Look(db =>
            db.Database.ExecuteSqlAsync($"update stock_balances set on_hand = on_hand + 1", Ct)));

        Assert.Equal(Npgsql.PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
    }
}
