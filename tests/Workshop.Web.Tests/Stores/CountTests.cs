using System.Net;
using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Stores;

public sealed class CountTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_difference_is_explained_before_a_count_is_closed_and_booked_then()
    {
        var desk = await StoresDesk.Of(app);
        var (part, right, place) = (await desk.Part(), await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 5));
        await StoresDesk.Done(await desk.Receive(right, place, 2));
        var count = await desk.Count(place);
        await StoresDesk.Done(await desk.CountLine(count, part, 4));
        await StoresDesk.Done(await desk.CountLine(count, right, 2));

        var early = await desk.Close(count);
        await desk.ExplainAll(count);
        var closed = await StoresDesk.Done(await desk.Close(count));

        Assert.Contains($"Part {part}: 5 by the books, 4 counted, and nobody said why.", await early.Sentence(), StringComparison.Ordinal);
        Assert.Equal((2, 1), (closed.GetProperty("lines").GetInt32(), closed.GetProperty("differences").GetInt32()));
        Assert.Equal((4m, 2m), ((await desk.At(part, place)).OnHand, (await desk.At(right, place)).OnHand));
        var row = (await desk.Get($"/api/v1/stock/parts/{part}/ledger?kind=counted")).GetProperty("rows")[0];
        Assert.Equal((-1m, count), (row.GetProperty("onHandChange").GetDecimal(), row.GetProperty("countId").GetGuid()));
        Assert.Equal(HttpStatusCode.Conflict, (await desk.CountLine(count, part, 4)).StatusCode);
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task What_comes_and_goes_between_counting_and_closing_stays_booked()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place, other) = (await desk.Part(), await desk.Place(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 10));
        var count = await desk.Count(place);
        await StoresDesk.Done(await desk.CountLine(count, part, 8));
        await StoresDesk.Done(await desk.Receive(part, place, 5));
        await StoresDesk.Done(await desk.Move(part, place, other, 3));
        await desk.ExplainAll(count);

        await StoresDesk.Done(await desk.Close(count));

        // Counted 8, then 5 came and 3 went.
        Assert.Equal(10m, (await desk.At(part, place)).OnHand);
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task A_count_that_would_fall_below_zero_is_counted_again_and_a_negative_one_is_none()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place, other) = (await desk.Part(), await desk.Place(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 10));
        var count = await desk.Count(place);

        var negative = await desk.CountLine(count, part, -1);
        await StoresDesk.Done(await desk.CountLine(count, part, 2));
        await desk.ExplainAll(count);
        await StoresDesk.Done(await desk.Move(part, place, other, 9));
        var below = await desk.Close(count);
        await StoresDesk.Done(await desk.CountLine(count, part, 1));
        await StoresDesk.Done(await desk.Close(count));

        Assert.Equal(HttpStatusCode.BadRequest, negative.StatusCode);
        Assert.Contains("counted is -1", await negative.Sentence(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, below.StatusCode);
        Assert.Contains("8 fewer than the books were counted, but since then only 1 are left; count it again", await below.Sentence(), StringComparison.Ordinal);
        Assert.Equal(1m, (await desk.At(part, place)).OnHand);
    }

    [Fact]
    public async Task A_count_below_what_is_reserved_says_which_card_loses()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 3));
        var early = await desk.Reserved(part, 2);
        app.Clock.Now += Duration.FromHours(1);
        var late = await desk.Reserved(part);
        var count = await desk.Count(place);
        await StoresDesk.Done(await desk.CountLine(count, part, 2));
        await desk.ExplainAll(count);

        var line = (await desk.Get($"/api/v1/stock/counts/{count}")).GetProperty("lines")[0];
        var closed = await StoresDesk.Done(await desk.Close(count));

        Assert.Equal(1m, line.GetProperty("reservedTooMuch").GetDecimal());
        var lost = Assert.Single(closed.GetProperty("cardsThatLost").EnumerateArray());
        Assert.Equal((part, late.Number), (lost.GetProperty("partCode").GetString(), lost.GetProperty("card").GetProperty("jobCardNumber").GetInt32()));
        Assert.Equal((2m, 0m), (await desk.HeldBy(early, part), await desk.HeldBy(late, part)));
        Assert.Equal((2m, 2m), await desk.At(part, place));
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task Whatever_nobody_counted_stays_unless_it_is_said_that_nothing_is_there()
    {
        var desk = await StoresDesk.Of(app);
        var (counted, left, place) = (await desk.Part(), await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(counted, place, 1));
        await StoresDesk.Done(await desk.Receive(left, place, 1));
        var first = await desk.Count(place);
        await StoresDesk.Done(await desk.CountLine(first, counted, 1));
        await StoresDesk.Done(await desk.Close(first));
        Assert.Equal(1m, (await desk.At(left, place)).OnHand);

        var second = await desk.Count(place);
        await StoresDesk.Done(await desk.CountLine(second, counted, 1));
        await StoresDesk.Done(await desk.Client.PostAsync(new Uri($"/api/v1/stock/counts/{second}/rest", UriKind.Relative), null, Ct));
        await desk.ExplainAll(second);
        await StoresDesk.Done(await desk.Close(second));

        Assert.Equal((1m, 0m), ((await desk.At(counted, place)).OnHand, (await desk.At(left, place)).OnHand));
    }

    [Fact]
    public async Task One_count_of_a_place_is_open_at_a_time_and_one_that_is_given_up_books_nothing()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 5));
        var count = await desk.Count(place);
        var second = await desk.Client.PostAsJsonAsync("/api/v1/stock/counts", new { placeCode = place }, Ct);
        await StoresDesk.Done(await desk.CountLine(count, part, 0));
        await StoresDesk.Done(await desk.Close(count, giveUp: true));

        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        Assert.Equal(5m, (await desk.At(part, place)).OnHand);
        Assert.Contains("given up", await (await desk.CountLine(count, part, 1)).Sentence(), StringComparison.Ordinal);
        await desk.Count(place);
    }

    [Fact]
    public async Task A_count_that_changed_since_it_was_looked_at_is_not_closed()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        var count = await desk.Count(place);
        var seen = await desk.Version($"/api/v1/stock/counts/{count}");
        await StoresDesk.Done(await desk.CountLine(count, part, 0));

        var late = await desk.Put($"/api/v1/stock/counts/{count}/closing", new { giveUp = false }, seen);

        Assert.Equal(HttpStatusCode.PreconditionFailed, late.StatusCode);
    }

    [Fact]
    public async Task Shims_are_counted_in_their_box()
    {
        var desk = await StoresDesk.Of(app);
        var count = await desk.Count(await desk.Place());

        var shims = await desk.CountLine(count, TestEngines.ShimPart, 3);

        Assert.Contains("count them by thickness in the shim box", await shims.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_the_pages_a_place_is_counted_explained_and_closed()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 3));
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var begun = await pages.Send($"/stores/places/{place}", [], "#count");
        var wrong = await pages.Send(begun.Location!, new() { ["Input.Code"] = "nobody", ["Input.Counted"] = "2" }, "#add");
        var line = await pages.Send(wrong, begun.Location!, new() { ["Input.Code"] = part }, "#add");
        var early = await pages.Send(line.Location!, [], "#close");
        var explained = await pages.Send(line.Location!, new() { ["Why.Reason"] = "TakenWithoutIssue", ["Why.Remark"] = "for the yard" }, "#explain");
        var closed = await pages.Send(line.Location!, [], "#close");
        var after = await pages.Open(closed.Location!);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, "2"), (wrong.Status, wrong.ValueOf("Input.Counted")));
        Assert.Equal(HttpStatusCode.Conflict, early.Status);
        Assert.Contains("nobody said why", Assert.Single(early.Faults), StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (explained.Status, closed.Status));
        Assert.Contains("1 counted, 1 differed and are booked.", after.MainText, StringComparison.Ordinal);
        Assert.Contains("taken and not booked: for the yard", after.MainText, StringComparison.Ordinal);
        Assert.Null(after.Html.QuerySelector("#close"));
        Assert.Equal(2m, (await desk.At(part, place)).OnHand);
        Assert.Contains("closed", (await pages.Open("/stores/counts")).MainText, StringComparison.Ordinal);
    }
}
