using System.Net;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Xunit;

namespace Workshop.Web.Tests.Stores;

/// <summary>Several people at once, over HTTP against two copies of the service on one database.</summary>
public sealed class StockRaceTests(WorkshopApp app) : IClassFixture<WorkshopApp>, IAsyncLifetime
{
    private readonly List<WebApplicationFactory<WorkshopDbContext>> copies = [];
    private readonly List<StoresDesk> desks = [];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        for (var i = 0; i < 2; i++)
        {
            copies.Add(app.Copy());
            desks.Add(new StoresDesk(app, await WorkshopApp.Of(copies[i], Roles.Manager)));
        }
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var copy in copies)
        {
            await copy.DisposeAsync();
        }
    }

    [Fact]
    public async Task Twelve_who_take_one_each_of_the_last_five_get_five()
    {
        var (part, place) = (await desks[0].Part(), await desks[0].Place());
        await StoresDesk.Done(await desks[0].Receive(part, place, 5));

        var answers = await AtOnce(12, i => Desk(i).Scrap(part, place, 1));

        Assert.Equal((5, 7), (answers.Count(a => a.StatusCode == HttpStatusCode.OK), answers.Count(a => a.StatusCode == HttpStatusCode.Conflict)));
        Assert.Equal((0m, 0m), await desks[0].At(part, place));
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task The_last_one_is_moved_or_scrapped_and_never_both()
    {
        var (part, here, there) = (await desks[0].Part(), await desks[0].Place(), await desks[0].Place());
        await StoresDesk.Done(await desks[0].Receive(part, here, 1));

        var answers = await AtOnce(8, i => i % 2 == 0 ? Desk(i).Scrap(part, here, 1) : Desk(i).Move(part, here, there, 1));

        var done = Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
        Assert.All(answers.Where(a => a != done), a => Assert.Equal(HttpStatusCode.Conflict, a.StatusCode));
        var moved = done.RequestMessage!.RequestUri!.AbsolutePath.EndsWith("moves", StringComparison.Ordinal);
        Assert.Equal((0m, moved ? 1m : 0m), ((await desks[0].At(part, here)).OnHand, (await desks[0].At(part, there)).OnHand));
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task A_part_that_is_merged_while_cards_reserve_it_loses_nothing()
    {
        var (part, other, place) = (await desks[0].Part(), await desks[0].Part(), await desks[0].Place());
        await StoresDesk.Done(await desks[0].Receive(part, place, 6));
        await StoresDesk.Done(await desks[0].Receive(other, place, 1));
        var visits = new List<TestVisit>();
        for (var i = 0; i < 6; i++)
        {
            visits.Add(await desks[0].Booked(part));
        }

        var answers = await AtOnce(7, i => i == 3
            ? Desk(i).Merge(part, other)
            : Desk(i).Client.PostAsync(new Uri($"{visits[i > 3 ? i - 1 : i].Api}/kit/reservation", UriKind.Relative), null, Ct));

        Assert.All(answers, a => Assert.True(a.StatusCode is HttpStatusCode.OK or HttpStatusCode.Conflict or HttpStatusCode.PreconditionFailed, a.ToString()));
        if (answers[3].StatusCode != HttpStatusCode.OK)
        {
            await StoresDesk.Done(await desks[0].Merge(part, other));
        }

        // Whoever came too late asks again, by the old code still.
        foreach (var visit in visits)
        {
            await desks[0].Reserve(visit);
        }

        Assert.Equal((7m, 6m), await desks[0].At(other, place));
        Assert.False(await app.Look(db => db.StockBalances.AnyAsync(
            b => db.Parts.Any(p => p.Id == b.PartId && p.Code == part) && (b.OnHand != 0 || b.Reserved != 0), Ct)));
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task A_place_is_retired_or_goods_come_there_and_never_both()
    {
        var (part, place) = (await desks[0].Part(), await desks[0].Place());
        var found = await desks[0].Get($"/api/v1/stock/places/{place}");
        var version = await desks[0].Version($"/api/v1/stock/places/{place}");
        var body = new { name = found.GetProperty("name").GetString(), code = place, walkOrder = 1, retired = true };

        var answers = await AtOnce(6, i => i == 0
            ? Desk(i).Put($"/api/v1/stock/places/{found.GetProperty("id").GetGuid()}", body, version)
            : Desk(i).Receive(part, place, 1));

        var came = answers.Skip(1).Count(a => a.StatusCode == HttpStatusCode.OK);
        Assert.Equal(answers[0].StatusCode == HttpStatusCode.OK, came == 0);
        Assert.Equal(came, (await desks[0].At(part, place)).OnHand);
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task A_count_is_closed_once_however_many_close_it()
    {
        var (part, place) = (await desks[0].Part(), await desks[0].Place());
        await StoresDesk.Done(await desks[0].Receive(part, place, 5));
        var count = await desks[0].Count(place);
        await StoresDesk.Done(await desks[0].CountLine(count, part, 3));
        await desks[0].ExplainAll(count);

        var answers = await AtOnce(6, i => Desk(i).Close(count));

        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
        Assert.All(answers, a => Assert.True(a.StatusCode is HttpStatusCode.OK or HttpStatusCode.Conflict or HttpStatusCode.PreconditionFailed, a.ToString()));
        Assert.Equal(3m, (await desks[0].At(part, place)).OnHand);
    }

    [Fact]
    public async Task Of_several_who_change_a_part_from_the_same_version_one_goes_through()
    {
        var part = await desks[0].Part();
        var version = await desks[0].Version($"/api/v1/stock/parts/{part}");

        var answers = await AtOnce(6, i => Desk(i).Put($"/api/v1/stock/parts/{part}", new { name = $"By {i}", stocked = true }, version));

        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
        Assert.Equal(5, answers.Count(a => a.StatusCode == HttpStatusCode.PreconditionFailed));
    }

    [Fact]
    public async Task Receipts_of_a_new_lot_at_once_make_one_lot()
    {
        var (part, place) = (await desks[0].Part("sealant", shelfLifeMonths: 12), await desks[0].Place());

        var answers = await AtOnce(6, i => Desk(i).Receive(part, place, 1, "SAME"));

        Assert.All(answers, a => Assert.Equal(HttpStatusCode.OK, a.StatusCode));
        Assert.Equal(6m, (await desks[0].At(part, place)).OnHand);
        Assert.Equal(1, await app.Look(db => db.StockLots.CountAsync(l => l.Code == "SAME", Ct)));
    }

    private StoresDesk Desk(int number) => desks[number % desks.Count];

    private static async Task<HttpResponseMessage[]> AtOnce(int people, Func<int, Task<HttpResponseMessage>> act)
    {
        var go = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var acting = Enumerable.Range(0, people).Select(async number =>
        {
            await go.Task;
            return await act(number);
        }).ToList();
        go.SetResult();
        return await Task.WhenAll(acting);
    }
}
