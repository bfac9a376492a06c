using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Consumables;

public sealed class SizesTests(WorkshopApp app) : IClassFixture<WorkshopApp>, IAsyncLifetime
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>Once for the class, whose database every test shares.</summary>
    public async ValueTask InitializeAsync() => await app.Look(async db =>
    {
        if (await db.Parts.AnyAsync(p => p.Code == "o-24", Ct))
        {
            return 0;
        }

        Part[] parts =
        [
            Ring("o-24", PartKind.ORing, 24, 29, 2.5m, "nitrile rubber"),
            Ring("o-26", PartKind.ORing, 26, 31, 2.5m, "nitrile rubber"),
            Ring("o-214", PartKind.ORing, 24.99m, 32.05m, 3.53m, "nitrile rubber"),
            Ring("o-214-fkm", PartKind.ORing, 24.99m, 32.05m, 3.53m, "fluorocarbon rubber"),
            Ring("r-14x18", PartKind.SealingRing, 14, 18, 1.5m, "copper"),
            Ring("r-14x18-al", PartKind.SealingRing, 14, 18, 1.5m, "aluminium"),
            Ring("r-14x20", PartKind.SealingRing, 14, 20, 1.5m, "copper"),
        ];
        db.Parts.AddRange(parts);
        db.PartAlternatives.Add(new PartAlternative { PartId = parts[3].Id, AlternativeId = parts[1].Id, Note = "in a worn groove" });
        return await db.SaveChangesAsync(Ct);
    });

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task What_fits_a_groove_is_ranked_with_its_stretch_over_stores_and_catalogue()
    {
        var found = await Get("/api/v1/sizes?size=25%20x%202.5%20groove");

        Assert.Equal("groove of 25 mm for a section of 2.5 mm", found.GetProperty("asked").GetString());
        var stored = Assert.Single(found.GetProperty("inStores").EnumerateArray());
        Assert.Equal(("o-24", 4.2m, true, "stretched 4.2 %"), (
            stored.GetProperty("partCode").GetString(), stored.GetProperty("stretchPercent").GetDecimal(),
            stored.GetProperty("sitsWell").GetBoolean(), stored.GetProperty("fit").GetString()));
        var standard = found.GetProperty("standard").EnumerateArray().ToList();
        Assert.Equal("25x2.5", standard[0].GetProperty("name").GetString());
        Assert.All(standard, s => Assert.True(s.GetProperty("source").GetString()!.Length > 10));
        Assert.Contains(standard, s => s.GetProperty("fit").GetString()!.StartsWith("loose", StringComparison.Ordinal)
            || s.GetProperty("sitsWell").GetBoolean());
    }

    [Fact]
    public async Task A_wider_tolerance_finds_what_lies_loose_and_says_so()
    {
        var found = await Get("/api/v1/sizes?size=25x2,5&groove=true&toleranceMm=1");

        var loose = found.GetProperty("inStores").EnumerateArray().Single(r => r.GetProperty("partCode").GetString() == "o-26");
        Assert.Equal(("loose by 1 mm", false), (loose.GetProperty("fit").GetString(), loose.GetProperty("sitsWell").GetBoolean()));
    }

    [Fact]
    public async Task A_ring_is_found_by_its_size_in_every_material_and_by_one()
    {
        var all = await Get("/api/v1/sizes?size=14%20x%2018%20x%201,5&toleranceMm=0");
        var copper = await Get("/api/v1/sizes?size=14x18&material=COPPER");

        Assert.Equal(["r-14x18", "r-14x18-al"], Codes(all.GetProperty("inStores")).Order(StringComparer.Ordinal));
        Assert.Equal(["r-14x18"], Codes(copper.GetProperty("inStores")));
        Assert.Equal(["DIN 7603 A 14x18"], all.GetProperty("standard").EnumerateArray().Select(r => r.GetProperty("name").GetString()));
    }

    [Fact]
    public async Task A_size_number_is_looked_up_and_an_unknown_one_is_said()
    {
        var found = await Get("/api/v1/sizes?size=AS568-214");
        var client = await app.As(Roles.Technician);
        var unknown = await client.GetAsync(new Uri("/api/v1/sizes?size=AS568-999", UriKind.Relative), Ct);

        Assert.Contains("AS568-214", found.GetProperty("standard").EnumerateArray().Select(r => r.GetProperty("name").GetString()));
        Assert.Equal(["o-214", "o-214-fkm"], Codes(found.GetProperty("inStores")).Take(2));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, unknown.StatusCode);
        Assert.Contains("the catalogue has no AS568-999", await unknown.Sentence());
    }

    [Theory]
    [InlineData("/api/v1/sizes", "size is empty: give a size.")]
    [InlineData("/api/v1/sizes?size=fourteen", "size is \"fourteen\": inner x outer (14x18, 14x18x1.5), inner x section (25 x 2.5), or a number such as AS568-214 is allowed.")]
    [InlineData("/api/v1/sizes?size=14x18&toleranceMm=-1", "toleranceMm is -1 mm: 0 to 20 mm with at most 3 decimals is allowed.")]
    [InlineData("/api/v1/sizes/gland?kind=onTheMoon&ring=25x2.5&grooveMm=25&counterpartMm=29&widthMm=3", "kind is \"onTheMoon\": one of radialOnPiston, radialInBore, facePressedOutward, facePressedInward is allowed.")]
    [InlineData("/api/v1/consumables?kind=oRing&after=x", "after is \"x\": what the page before gave as next is allowed.")]
    public async Task What_is_no_size_is_refused_with_what_is_allowed(string address, string sentence)
    {
        var client = await app.As(Roles.Technician);
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(sentence, await answer.Sentence());
    }

    [Fact]
    public async Task Equivalents_are_named_ones_first_then_other_materials_then_near_sizes_with_their_difference()
    {
        var rows = (await Get("/api/v1/sizes/equivalents?part=o-214-fkm")).GetProperty("rows").EnumerateArray().ToList();

        Assert.Equal(("named", "o-26", "in a worn groove"), (
            rows[0].GetProperty("kind").GetString(), rows[0].GetProperty("partCode").GetString(), rows[0].GetProperty("note").GetString()));
        Assert.Equal(("sameSizeOtherMaterial", "o-214", "the same size"), (
            rows[1].GetProperty("kind").GetString(), rows[1].GetProperty("partCode").GetString(), rows[1].GetProperty("difference").GetString()));
        var near = rows.Single(r => r.GetProperty("name").GetString() == "25x3.55");
        Assert.Equal(("nearSize", "inner +0.01 mm, section +0.02 mm"), (near.GetProperty("kind").GetString(), near.GetProperty("difference").GetString()));

        var back = (await Get("/api/v1/sizes/equivalents?part=o-26")).GetProperty("rows").EnumerateArray();
        Assert.Contains(back, r => r.GetProperty("partCode").GetString() == "o-214-fkm" && r.GetProperty("kind").GetString() == "named");
    }

    [Fact]
    public async Task A_gland_tells_squeeze_stretch_and_fill_with_the_tolerances_of_the_size_table()
    {
        var nominal = await Get("/api/v1/sizes/gland?kind=facePressedInward&ring=30x3&grooveMm=30&counterpartMm=2.3&widthMm=4");
        var table = await Get("/api/v1/sizes/gland?kind=radialOnPiston&ring=AS568-214&grooveMm=25.5&counterpartMm=31.2&widthMm=4.8");

        Assert.Equal((23.3m, 23.3m), Span(nominal.GetProperty("squeeze")));
        Assert.Equal((0m, 0m), Span(nominal.GetProperty("stretch")));
        Assert.Contains("nominal sizes only", nominal.GetProperty("ringTolerances").GetString());
        Assert.True(Span(table.GetProperty("squeeze")).Least < Span(table.GetProperty("squeeze")).Most);
        Assert.Contains("by the size table", table.GetProperty("ringTolerances").GetString());
        Assert.Equal(3, table.GetProperty("remarks").GetArrayLength());
    }

    [Fact]
    public async Task A_groove_without_room_and_a_tolerance_as_wide_as_the_length_are_refused()
    {
        var client = await app.As(Roles.Technician);
        var room = await client.GetAsync(new Uri("/api/v1/sizes/gland?kind=radialOnPiston&ring=25x2.5&grooveMm=25&counterpartMm=24&widthMm=3", UriKind.Relative), Ct);
        var wide = await client.GetAsync(new Uri("/api/v1/sizes/gland?kind=facePressedInward&ring=25x2.5&grooveMm=25&counterpartMm=2&counterpartToleranceMm=2&widthMm=3", UriKind.Relative), Ct);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (room.StatusCode, wide.StatusCode));
        Assert.Contains("between them there must be room", await room.Sentence());
        Assert.Contains("less than the length itself, 2 mm", await wide.Sentence());
    }

    [Fact]
    public async Task Consumables_come_by_size_a_page_at_a_time()
    {
        var seen = new List<string>();
        for (string? after = ""; after is not null;)
        {
            var page = await Get($"/api/v1/consumables?kind=oRing&take=2&after={Uri.EscapeDataString(after)}");
            seen.AddRange(page.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("code").GetString()!));
            after = page.GetProperty("next").GetString();
        }

        Assert.Equal(["o-24", "o-214", "o-214-fkm", "o-26"], seen.Except([TestEngines.PlugWellRing]));
        Assert.Equal(seen.Distinct(), seen);
    }

    [Fact]
    public async Task By_the_page_a_comma_is_read_and_what_is_no_size_stands_there_still()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var found = await pages.Open("/stores/sizes?size=25x2%2C5&groove=true&toleranceMm=0%2C5");
        var wrong = await pages.Open("/stores/sizes?size=fourteen");
        var gland = await pages.Open("/stores/sizes/gland?kind=radialOnPiston&ring=AS568-214&grooveMm=25%2C5&counterpartMm=31.8&widthMm=4.8");
        var equivalents = await pages.Open("/stores/sizes/equivalents?part=o-214");

        Assert.Contains("stretched 4.2 %", found.MainText);
        Assert.Equal("25x2,5", found.ValueOf("size"));
        Assert.Equal(HttpStatusCode.BadRequest, wrong.Status);
        Assert.Equal("fourteen", wrong.ValueOf("size"));
        Assert.Contains("too little squeeze", gland.MainText);
        Assert.Equal("25,5", gland.ValueOf("grooveMm"));
        Assert.Contains("same size, other material", equivalents.MainText);
    }

    private static Part Ring(string code, PartKind kind, decimal inner, decimal outer, decimal section, string material) => new()
    {
        Id = NewId.At(NodaTime.SystemClock.Instance), Code = code, Name = $"Ring {code}", Kind = kind, Unit = PartUnit.Piece,
        InnerDiameterMm = inner, OuterDiameterMm = outer, SectionMm = section, Material = material,
    };

    private static IEnumerable<string> Codes(JsonElement rows) => rows.EnumerateArray().Select(r => r.GetProperty("partCode").GetString()!);

    private static (decimal Least, decimal Most) Span(JsonElement percent) =>
        (percent.GetProperty("least").GetDecimal(), percent.GetProperty("most").GetDecimal());

    private async Task<JsonElement> Get(string address) =>
        await (await app.As(Roles.Technician)).GetFromJsonAsync<JsonElement>(address, Ct);
}
