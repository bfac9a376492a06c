using System.Net;
using System.Net.Http.Json;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Stores;

public sealed class PartTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_part_is_entered_changed_and_never_by_two_from_the_same_version()
    {
        var desk = await StoresDesk.Of(app);
        var code = await desk.Part();
        var version = await desk.Version($"/api/v1/stock/parts/{code}");

        var first = await desk.Put($"/api/v1/stock/parts/{code}", new { name = "Ring, copper", innerDiameterMm = 14, outerDiameterMm = 18, sectionMm = 1.5, stocked = true }, version);
        var second = await desk.Put($"/api/v1/stock/parts/{code}", new { name = "Ring, aluminium", stocked = true }, version);
        var without = await desk.Put($"/api/v1/stock/parts/{code}", new { name = "Ring", stocked = true }, null);

        await StoresDesk.Done(first);
        Assert.Equal((HttpStatusCode.PreconditionFailed, HttpStatusCode.PreconditionRequired), (second.StatusCode, without.StatusCode));
        var part = await desk.PartOf(code);
        Assert.Equal(("Ring, copper", 18m), (part.GetProperty("name").GetString(), part.GetProperty("outerDiameterMm").GetDecimal()));
    }

    [Fact]
    public async Task A_code_that_a_scanner_could_take_for_something_else_is_refused()
    {
        var desk = await StoresDesk.Of(app);
        var (code, place) = (await desk.Part(), await desk.Place());

        var number = await Add("12345");
        var blank = await Add("ring 14");
        var ofPlace = await Add(place);
        var twice = await Add(code);
        var shim = await Add("shim-x", kind: "shim");

        Assert.Equal([HttpStatusCode.BadRequest, HttpStatusCode.BadRequest, HttpStatusCode.Conflict, HttpStatusCode.Conflict, HttpStatusCode.BadRequest],
            [number.StatusCode, blank.StatusCode, ofPlace.StatusCode, twice.StatusCode, shim.StatusCode]);
        Assert.Equal(
            "code is \"12345\": letters, figures, hyphens, dots and underscores, with a letter among them, is allowed.", await number.Sentence());

        Task<HttpResponseMessage> Add(string as_, string kind = "general") =>
            desk.Client.PostAsJsonAsync("/api/v1/stock/parts", new { code = as_, name = "x", kind, unit = "piece" }, Ct);
    }

    [Fact]
    public async Task What_is_on_a_package_finds_the_part_and_says_how_much_is_in_it()
    {
        var desk = await StoresDesk.Of(app);
        var (code, other) = (await desk.Part(), await desk.Part());

        await StoresDesk.Done(await Set(code, "4006381333931", 50));
        var taken = await Set(other, "4006381333931", 1);
        var likeQuantity = await Set(other, "1234567", 1);

        var read = await desk.Get("/api/v1/stock/codes/4006381333931");
        Assert.Equal((code, 50m), (read.GetProperty("partCode").GetString(), read.GetProperty("packageQuantity").GetDecimal()));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.BadRequest), (taken.StatusCode, likeQuantity.StatusCode));
        var found = (await desk.Get("/api/v1/stock?search=400638133")).GetProperty("rows");
        Assert.Equal([code], found.EnumerateArray().Select(r => r.GetProperty("code").GetString()));

        async Task<HttpResponseMessage> Set(string part, string scanCode, decimal quantity) => await desk.Put(
            $"/api/v1/stock/parts/{part}/packages", new { packages = new[] { new { scanCode, quantity } } }, await desk.Version($"/api/v1/stock/parts/{part}"));
    }

    [Fact]
    public async Task An_alternative_holds_in_both_directions_and_is_one_row()
    {
        var desk = await StoresDesk.Of(app);
        var (copper, aluminium) = (await desk.Part(), await desk.Part());

        await Set(copper, aluminium, "aluminium instead of copper");
        await Set(aluminium, copper, "the other way round");

        foreach (var (code, other) in new[] { (copper, aluminium), (aluminium, copper) })
        {
            var alternative = Assert.Single((await desk.PartOf(code)).GetProperty("alternatives").EnumerateArray());
            Assert.Equal((other, "the other way round"), (alternative.GetProperty("code").GetString(), alternative.GetProperty("note").GetString()));
        }

        async Task Set(string part, string partCode, string note) => await StoresDesk.Done(await desk.Put(
            $"/api/v1/stock/parts/{part}/alternatives", new { alternatives = new[] { new { partCode, note } } }, await desk.Version($"/api/v1/stock/parts/{part}")));
    }

    [Fact]
    public async Task A_discontinued_part_names_what_takes_its_place_and_takes_nothing_in()
    {
        var desk = await StoresDesk.Of(app);
        var (old, next, place) = (await desk.Part(), await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(old, place, 2));

        await StoresDesk.Done(await End(old, true, next));
        var circle = await End(next, true, old);
        var received = await desk.Receive(old, place, 1);
        var back = await End(old, false, next);

        Assert.Equal(next, (await desk.PartOf(old)).GetProperty("replacedBy").GetProperty("code").GetString());
        Assert.Contains($"which is itself replaced by {next} in the end", await circle.Sentence(), StringComparison.Ordinal);
        Assert.Contains("is discontinued; nothing is taken in", await received.Sentence(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, back.StatusCode);
        Assert.Equal([old], (await desk.Get($"/api/v1/stock?show=discontinued&search={old}")).GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("code").GetString()));
        await StoresDesk.Done(await End(old, false, null));
        await StoresDesk.Done(await desk.Receive(old, place, 1));

        async Task<HttpResponseMessage> End(string code, bool discontinued, string? replacedBy) => await desk.Put(
            $"/api/v1/stock/parts/{code}/discontinuation", new { discontinued, replacedBy }, await desk.Version($"/api/v1/stock/parts/{code}"));
    }

    [Fact]
    public async Task What_is_short_and_where_things_lie_can_be_asked_for()
    {
        var desk = await StoresDesk.Of(app);
        var (gone, there, place) = (await desk.Part(), await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(there, place, 1));

        async Task<IEnumerable<string?>> Codes(string query) =>
            (await desk.Get($"/api/v1/stock?take=500&{query}")).GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("code").GetString());

        Assert.Equal([there], await Codes($"place={place}"));
        var shortOnes = (await Codes("show=runsShort")).ToList();
        Assert.Contains(gone, shortOnes);
        Assert.DoesNotContain(there, shortOnes);
        await desk.Reserved(there);
        Assert.Contains(there, await Codes("show=runsShort"));
        Assert.Equal(HttpStatusCode.BadRequest, (await desk.Client.GetAsync(new Uri("/api/v1/stock?show=nonsense", UriKind.Relative), Ct)).StatusCode);
    }

    [Fact]
    public async Task By_its_pages_a_part_is_added_filled_found_and_changed()
    {
        var desk = await StoresDesk.Of(app);
        var place = await desk.Place();
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var wrong = await pages.Send("/stores/parts/new", new()
        {
            ["Input.Code"] = "fork-oil-7", ["Input.Name"] = "Fork oil", ["Input.Kind"] = "Fluid", ["Input.Unit"] = "Millilitre",
            ["Input.ShelfLifeMonths"] = "soon", ["Input.PackQuantity"] = "1000",
        });
        var added = await pages.Send(wrong, "/stores/parts/new", new() { ["Input.ShelfLifeMonths"] = "36" });
        var taken = await pages.Send("/stores/parts/fork-oil-7/book", new()
        {
            ["Input.PlaceCode"] = place, ["Input.Quantity"] = "2500,5", ["Input.LotCode"] = "L7", ["Input.ExpiresOn"] = "2027-01-31",
        }, "#receive");
        var part = await pages.Open(taken.Location!);
        var changed = await pages.Send("/stores/parts/fork-oil-7/edit", new() { ["Input.Name"] = "Fork oil 7" }, "#edit");
        var codes = await pages.Send("/stores/parts/fork-oil-7/edit", new() { ["Codes.Packages[0].ScanCode"] = "04711-X", ["Codes.Packages[0].Quantity"] = "1000" }, "#packages");

        Assert.Equal(HttpStatusCode.BadRequest, wrong.Status);
        Assert.Equal(("fork-oil-7", "soon"), (wrong.ValueOf("Input.Code"), wrong.ValueOf("Input.ShelfLifeMonths")));
        Assert.Equal("/stores/parts/fork-oil-7", added.Location);
        Assert.Contains("Took in 2,500.5 ml", part.MainText, StringComparison.Ordinal);
        Assert.Contains("2027-01-31", part.MainText, StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (changed.Status, codes.Status));
        Assert.Contains("04711-X", (await pages.Open("/stores/parts/fork-oil-7")).MainText, StringComparison.Ordinal);
        Assert.Contains("Fork oil 7", (await pages.Open("/stores?search=04711")).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_that_was_overtaken_comes_back_as_typed_and_goes_through_the_second_time()
    {
        var desk = await StoresDesk.Of(app);
        var code = await desk.Part();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var open = await pages.Open($"/stores/parts/{code}/edit");
        await StoresDesk.Done(await desk.Put($"/api/v1/stock/parts/{code}", new { name = "Meanwhile", stocked = true }, await desk.Version($"/api/v1/stock/parts/{code}")));

        var late = await pages.Send(open, $"/stores/parts/{code}/edit", new() { ["Input.Name"] = "Mine" }, "#edit");
        var again = await pages.Send(late, $"/stores/parts/{code}/edit", [], "#edit");

        Assert.Equal((HttpStatusCode.PreconditionFailed, "Mine"), (late.Status, late.ValueOf("Input.Name")));
        Assert.Equal(HttpStatusCode.Redirect, again.Status);
        Assert.Equal("Mine", (await desk.PartOf(code)).GetProperty("name").GetString());
    }

    [Fact]
    public async Task Only_a_manager_ends_or_merges_a_part()
    {
        var desk = await StoresDesk.Of(app);
        var code = await desk.Part();
        var technician = new StoresDesk(app, await app.As(Roles.Technician));

        var merged = await technician.Merge(code, await desk.Part());
        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open($"/stores/parts/{code}/edit");

        Assert.Equal(HttpStatusCode.Forbidden, merged.StatusCode);
        Assert.Null(page.Html.QuerySelector("#merge"));
    }
}
