using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.Kits;

public sealed class SubstitutionTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_alternative_is_reserved_picked_and_settled_in_the_place_of_a_part()
    {
        await app.Alternatives(await app.Ring("copper"), await app.Ring("aluminium", 5), "softer: mind the torque");
        var technician = await app.As(Roles.Technician);
        var visit = await app.Finish(await app.DrainVisit(("copper", 2)), technician);
        var before = Line(await technician.Get($"{visit.Api}/kit"));

        var chosen = await Instead(technician, visit, "copper", "aluminium", "Copper comes next week.");
        var line = Line(await chosen.Body());
        var reserved = await app.Balance("aluminium");
        await technician.Pick(visit, new { partCode = "copper" });
        (await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_001 }, Ct)).EnsureSuccessStatusCode();

        Assert.Equal((2m, "aluminium"), (before.GetProperty("shortBy").GetDecimal(), before.GetProperty("alternatives")[0].GetProperty("partCode").GetString()));
        Assert.Equal((0m, "aluminium", "Copper comes next week."), (
            line.GetProperty("shortBy").GetDecimal(), line.GetProperty("instead").GetProperty("partCode").GetString(), line.GetProperty("instead").GetProperty("note").GetString()));
        Assert.Equal((5m, 2m), reserved);
        Assert.Equal((3m, 0m), await app.Balance("aluminium"));
        Assert.Equal((0m, 0m), await app.Balance("copper"));
    }

    [Fact]
    public async Task A_substitution_is_taken_back_by_naming_the_part_itself()
    {
        await app.Alternatives(await app.Ring("first", 5), await app.Ring("second", 5));
        var visit = await app.DrainVisit(("first", 1));
        var technician = await app.As(Roles.Technician);

        await Instead(technician, visit, "first", "second", "To try.");
        var twice = await Instead(technician, visit, "first", "second", "To try.");
        app.Clock.Now += NodaTime.Duration.FromMinutes(1);
        var back = Line(await (await Instead(technician, visit, "first", "first", "Found some.")).Body());

        Assert.Equal(HttpStatusCode.Conflict, twice.StatusCode);
        Assert.Equal(JsonValueKind.Null, back.GetProperty("instead").ValueKind);
        Assert.Equal(((5m, 1m), (5m, 0m)), (await app.Balance("first"), await app.Balance("second")));
    }

    [Fact]
    public async Task Only_what_does_the_same_work_stands_in_and_a_reason_is_asked_for()
    {
        await app.Alternatives(await app.Ring("strict"), await app.Ring("strict-other", 1));
        await app.Ring("stranger", 1);
        var visit = await app.DrainVisit(("strict", 1));
        var technician = await app.As(Roles.Technician);

        var stranger = await Instead(technician, visit, "strict", "stranger", "It lay there.");
        var silent = await Instead(technician, visit, "strict", "strict-other", "");
        var elsewhere = await Instead(technician, visit, "stranger", "strict", "No.");

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.BadRequest, HttpStatusCode.UnprocessableEntity), (stranger.StatusCode, silent.StatusCode, elsewhere.StatusCode));
        Assert.Contains("what may stand in for Ring strict is strict-other, or strict itself again", (await stranger.Body()).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_kit_whose_part_is_made_no_more_says_so_with_what_took_its_place()
    {
        var (old, replacement) = (await app.Ring("old-kind"), await app.Ring("new-kind", 3));
        await app.Look(db => db.Parts.Where(p => p.Id == old)
            .ExecuteUpdateAsync(p => p.SetProperty(x => x.Discontinued, true).SetProperty(x => x.ReplacedById, replacement), Ct));
        var visit = await app.DrainVisit(("old-kind", 1));
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open($"{visit.Pages}/kit");
        var sent = await pages.Send(page, $"{visit.Pages}/kit", new() { ["Other.InsteadCode"] = "new-kind", ["Other.Reason"] = "Made no more." }, "#instead-0");

        Assert.Contains("made no more", page.MainText, StringComparison.Ordinal);
        Assert.Contains("took its place: Ring new-kind, 3 free", page.MainText, StringComparison.Ordinal);
        Assert.Contains("Ring new-kind (new-kind) took its place, 3 free.", page.MainText, StringComparison.Ordinal);
        Assert.Equal($"{visit.Pages}/kit", sent.Location);
        var after = await pages.Open(sent.Location!);
        Assert.Contains("Ring new-kind stands in for old-kind on this card.", after.MainText, StringComparison.Ordinal);
        Assert.DoesNotContain("short by", after.MainText, StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> Instead(HttpClient client, TestVisit visit, string part, string instead, string reason) =>
        client.PostAsJsonAsync($"{visit.Api}/kit/substitutions", new { partCode = part, insteadCode = instead, reason }, Ct);

    private static JsonElement Line(JsonElement kit) => Assert.Single(kit.GetProperty("lines").EnumerateArray());
}
