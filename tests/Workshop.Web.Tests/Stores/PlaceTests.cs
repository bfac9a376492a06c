using System.Net;
using System.Net.Http.Json;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Stores;

public sealed class PlaceTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_place_gets_the_next_free_code_and_comes_last_on_the_walk()
    {
        var desk = await StoresDesk.Of(app);

        var (first, second) = (await desk.Place(), await desk.Place());

        var places = (await desk.Get("/api/v1/stock/places")).GetProperty("places").EnumerateArray().ToList();
        Assert.NotEqual(first, second);
        Assert.Equal([first, second], places.TakeLast(2).Select(p => p.GetProperty("code").GetString()));
        var walk = places.Select(p => p.GetProperty("walkOrder").GetInt32()).ToList();
        Assert.Equal(walk.Order(), walk);
    }

    [Fact]
    public async Task A_name_or_code_that_another_place_or_a_part_has_is_refused()
    {
        var desk = await StoresDesk.Of(app);
        var (place, part) = (await desk.Place(), await desk.Part());

        var answers = new[] { await Add("Shelf A", null), await Add("Here", place), await Add("There", part), await Add("", "a b") };

        Assert.Equal([HttpStatusCode.Conflict, HttpStatusCode.Conflict, HttpStatusCode.Conflict, HttpStatusCode.BadRequest], answers.Select(a => a.StatusCode));
        Assert.Contains("a scanner could not tell them apart", await answers[2].Sentence(), StringComparison.Ordinal);

        Task<HttpResponseMessage> Add(string name, string? code) => desk.Client.PostAsJsonAsync("/api/v1/stock/places", new { name, code }, Ct);
    }

    [Fact]
    public async Task A_place_is_retired_only_when_nothing_lies_there_and_nothing_is_put_there_then()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place, other) = (await desk.Part(), await desk.Place(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 2));

        var full = await Retire(place);
        await StoresDesk.Done(await desk.Move(part, place, other, 2));
        var count = await desk.Count(place);
        var counted = await Retire(place);
        await StoresDesk.Done(await desk.Close(count, giveUp: true));
        await StoresDesk.Done(await Retire(place));

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.Conflict), (full.StatusCode, counted.StatusCode));
        Assert.Contains($"Part {part} still lie there; move them first.", await full.Sentence(), StringComparison.Ordinal);
        Assert.Contains("a count of it is open", await counted.Sentence(), StringComparison.Ordinal);
        Assert.Contains("which is retired", await (await desk.Receive(part, place, 1)).Sentence(), StringComparison.Ordinal);
        Assert.Contains("which is retired", await (await desk.Move(part, other, place, 1)).Sentence(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await desk.Client.GetAsync(new Uri($"/api/v1/stock/codes/{place}", UriKind.Relative), Ct)).StatusCode);

        async Task<HttpResponseMessage> Retire(string code)
        {
            var found = await desk.Get($"/api/v1/stock/places/{code}");
            return await desk.Put(
                $"/api/v1/stock/places/{found.GetProperty("id").GetGuid()}",
                new { name = found.GetProperty("name").GetString(), code, walkOrder = found.GetProperty("walkOrder").GetInt32(), retired = true },
                await desk.Version($"/api/v1/stock/places/{code}"));
        }
    }

    [Fact]
    public async Task The_shim_box_is_not_retired_under_its_shims()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var desk = await StoresDesk.Of(app);
        var box = (await desk.Get("/api/v1/stock/places")).GetProperty("places").EnumerateArray()
            .Single(p => p.GetProperty("name").GetString() == "Shim box").GetProperty("code").GetString();

        var answer = await pages.Send($"/stores/places/{box}", new() { ["Input.Retired"] = "true", ["Input.Name"] = "Shims" }, "#edit");

        Assert.Equal((HttpStatusCode.Conflict, "Shims"), (answer.Status, answer.ValueOf("Input.Name")));
        Assert.Contains("still lie there", Assert.Single(answer.Faults), StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_the_page_a_place_is_added_and_renamed_and_its_address_follows_its_code()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var added = await pages.Send("/stores/places", new() { ["Input.Name"] = "Drawer 9", ["Input.Code"] = "D9", ["Input.WalkOrder"] = "7" }, "#add");
        var changed = await pages.Send("/stores/places/D9", new() { ["Input.Code"] = "D-9" }, "#edit");

        Assert.Equal("/stores/places", added.Location);
        Assert.Equal("/stores/places/D-9", changed.Location);
        Assert.Contains("Nothing lies there.", (await pages.Open("/stores/places/D-9")).MainText, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open("/stores/places/D9")).Status);
    }
}
