using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.EngineModels;

public sealed class DraftTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Several_sections_are_collected_and_become_one_version()
    {
        var drafts = await Drafts.OfNewModel(app);
        Assert.Equal((0u, JsonValueKind.Null), ((await drafts.Read()).GetProperty("rowVersion").GetUInt32(), (await drafts.Read()).GetProperty("startedAt").ValueKind));

        await drafts.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);
        var cold = await drafts.Part("cold");
        cold["soakHours"] = 9;
        await Drafts.Json(await drafts.Put("cold", new JsonObject { ["cold"] = cold }));

        var draft = await drafts.Read();
        Assert.Equal(["cold.soakHours", "fasteners[drain-plug].torqueNm"],
            draft.GetProperty("differences").EnumerateArray().Select(d => d.GetProperty("path").GetString()!));
        Assert.Equal("24", (await Current(drafts)).GetProperty("fasteners")[2].GetProperty("torqueNm").GetRawText());

        var made = await Drafts.Json(await drafts.Publish("Sheet 12 says so"));

        Assert.Equal(2, made.GetProperty("version").GetInt32());
        Assert.Equal("26", (await Current(drafts)).GetProperty("fasteners")[2].GetProperty("torqueNm").GetRawText());
        var versions = await drafts.Client.GetFromJsonAsync<JsonElement>($"{Drafts.Models}/{drafts.Id}/versions", Ct);
        Assert.Equal("Sheet 12 says so", versions.GetProperty("versions")[0].GetProperty("note").GetString());
        Assert.Equal(0, await app.Look(db => db.SpecificationDrafts.CountAsync(d => d.EngineModelId == drafts.Id, Ct)));
    }

    [Fact]
    public async Task The_difference_of_two_versions_is_told_by_path_value_and_words()
    {
        var drafts = await Drafts.OfNewModel(app);
        await drafts.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);
        await Drafts.Json(await drafts.Publish());

        var answer = await drafts.Client.GetFromJsonAsync<JsonElement>($"{Drafts.Models}/{drafts.Id}/versions/2/differences", Ct);

        Assert.Equal(1, answer.GetProperty("from").GetInt32());
        var difference = Assert.Single(answer.GetProperty("differences").EnumerateArray());
        Assert.Equal("fasteners[drain-plug].torqueNm", difference.GetProperty("path").GetString());
        Assert.Equal(("24", "26"), (difference.GetProperty("before").GetRawText(), difference.GetProperty("after").GetRawText()));
        Assert.Equal("Fasteners, Oil drain plug, Final torque", difference.GetProperty("place").GetString());
        Assert.Equal(("24 N.m", "26 N.m"), (difference.GetProperty("beforeInWords").GetString(), difference.GetProperty("afterInWords").GetString()));
        Assert.Equal(HttpStatusCode.NotFound, (await drafts.Client.GetAsync($"{Drafts.Models}/{drafts.Id}/versions/9/differences", Ct)).StatusCode);
    }

    [Fact]
    public async Task A_draft_need_not_hold_together_but_a_version_must()
    {
        var drafts = await Drafts.OfNewModel(app);

        var kept = await Drafts.Json(await drafts.Delete("/fasteners/drain-plug"));

        Assert.Contains(kept.GetProperty("faults").EnumerateArray(), f => f.GetProperty("field").GetString() == "specification.joints[2].fasteners[0]");
        var refused = await drafts.Publish();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("specification.joints[2].fasteners[0]", (await Drafts.Errors(refused)).Keys);
        Assert.Equal(1, await app.Look(db => db.EngineModelVersions.CountAsync(v => v.EngineModelId == drafts.Id, Ct)));
    }

    [Fact]
    public async Task What_has_not_the_form_of_a_specification_is_not_kept()
    {
        var drafts = await Drafts.OfNewModel(app);
        var plug = await drafts.Part("fasteners", TestEngines.DrainPlug);
        plug["torqueNm"] = 5000;

        var answer = await drafts.Put("fasteners/drain-plug", plug);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("specification.fasteners[2].torqueNm is 5000", (await Drafts.Errors(answer))["specification.fasteners[2].torqueNm"], StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, (await drafts.Read()).GetProperty("startedAt").ValueKind);
        Assert.Equal(HttpStatusCode.BadRequest, (await drafts.Put("paint", new JsonObject())).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await drafts.Put("fasteners/Not A Code", plug.DeepClone())).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await drafts.Put("cold", new JsonObject { ["limits"] = new JsonArray() })).StatusCode);
    }

    [Fact]
    public async Task What_is_unusual_is_asked_back_when_the_draft_is_published()
    {
        var drafts = await Drafts.OfNewModel(app);
        var limits = await drafts.Part("limits");
        limits[0]!["leverRatio"] = 1.2m;
        await Drafts.Json(await drafts.Put("limits", new JsonObject { ["limits"] = limits }));

        var asked = await drafts.Publish();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        Assert.Contains("confirmUnusual", (await Drafts.Errors(asked)).Keys);
        await Drafts.Json(await drafts.Post("publish", new { note = "Measured at the stem", confirmUnusual = true }));
    }

    [Fact]
    public async Task Two_managers_do_not_overwrite_each_other()
    {
        var mine = await Drafts.OfNewModel(app);
        var theirs = new Drafts(await SecondManager(), mine.Id);
        await mine.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);
        await theirs.Set("fasteners", TestEngines.CoverBolt, "fasteners", "torqueNm", 9);
        await theirs.Set("fasteners", TestEngines.DrainPlug, "fasteners", "tool", "another hexagon");
        Assert.Equal(["Mana Ger"], (await theirs.Read()).GetProperty("otherDrafts").EnumerateArray().Select(n => n.GetString()!));
        await Drafts.Json(await theirs.Publish());

        var late = await mine.Publish();
        Assert.Equal(HttpStatusCode.PreconditionFailed, late.StatusCode);

        var rebased = await Drafts.Json(await mine.Post("rebase", new { }));
        Assert.Equal(2, rebased.GetProperty("basedOnVersion").GetInt32());
        await Drafts.Json(await mine.Publish());
        var fasteners = (await Current(mine)).GetProperty("fasteners");
        Assert.Equal(("9", "26", "another hexagon"), (
            fasteners[0].GetProperty("torqueNm").GetRawText(), fasteners[2].GetProperty("torqueNm").GetRawText(), fasteners[2].GetProperty("tool").GetString()));
    }

    [Theory]
    [InlineData("mine", "26")]
    [InlineData("theirs", "27")]
    public async Task Where_both_changed_a_figure_the_second_says_whose_stands(string take, string stands)
    {
        var mine = await Drafts.OfNewModel(app);
        var theirs = new Drafts(await SecondManager(), mine.Id);
        await mine.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);
        await theirs.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 27);
        await Drafts.Json(await theirs.Publish());

        var asked = await mine.Post("rebase", new { });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        Assert.Contains("specification.fasteners[drain-plug].torqueNm", (await Drafts.Errors(asked)).Keys);

        await Drafts.Json(await mine.Post("rebase", new { take }));
        Assert.Equal(stands, (await mine.Part("fasteners", TestEngines.DrainPlug))["torqueNm"]!.ToString());
    }

    [Fact]
    public async Task Of_two_who_publish_at_once_one_is_told_to_look_again()
    {
        var mine = await Drafts.OfNewModel(app);
        var theirs = new Drafts(await SecondManager(), mine.Id);
        await mine.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);
        await theirs.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 27);

        var answers = await Task.WhenAll(mine.Publish(), theirs.Publish());

        Assert.Equal([HttpStatusCode.Created, HttpStatusCode.PreconditionFailed], answers.Select(a => a.StatusCode).Order());
        Assert.Equal(2, await app.Look(db => db.EngineModelVersions.CountAsync(v => v.EngineModelId == mine.Id, Ct)));
    }

    [Fact]
    public async Task A_change_says_which_draft_it_was_made_from()
    {
        var drafts = await Drafts.OfNewModel(app);
        var plug = await drafts.Part("fasteners", TestEngines.DrainPlug);

        Assert.Equal((HttpStatusCode)428, (await drafts.Put("fasteners/drain-plug", plug, tag: "")).StatusCode);
        await Drafts.Json(await drafts.Put("fasteners/drain-plug", plug.DeepClone(), tag: "\"0\""));
        Assert.Equal(HttpStatusCode.PreconditionFailed, (await drafts.Put("fasteners/drain-plug", plug.DeepClone(), tag: "\"0\"")).StatusCode);
        Assert.Equal(HttpStatusCode.PreconditionFailed, (await drafts.Delete(tag: "\"7\"")).StatusCode);
    }

    [Fact]
    public async Task Figures_are_marked_as_checked_by_whoever_compared_them_until_one_changes()
    {
        var drafts = await Drafts.OfNewModel(app);
        Assert.Equal(HttpStatusCode.BadRequest, (await drafts.Post("checks", new { path = "fasteners[drain-plug]", compared = false })).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await drafts.Post("checks", new { path = "layout", compared = true })).StatusCode);

        await Drafts.Json(await drafts.Post("checks", new { path = "fasteners[drain-plug]", compared = true }));
        var provenance = (await drafts.Part("fasteners", TestEngines.DrainPlug))["provenance"]!;
        Assert.Equal(("Mana Ger", "2026-03-02"), (provenance["checkedBy"]!.ToString(), provenance["checkedOn"]!.ToString()));

        await drafts.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);
        Assert.Null((await drafts.Part("fasteners", TestEngines.DrainPlug))["provenance"]!["checkedBy"]);
    }

    [Fact]
    public async Task Nobody_is_marked_as_having_checked_by_typing_a_name()
    {
        var drafts = await Drafts.OfNewModel(app);

        await drafts.Set("fasteners", TestEngines.DrainPlug, "fasteners", "provenance",
            new JsonObject { ["source"] = "Manual", ["edition"] = "3", ["checkedBy"] = "Ada Visor", ["checkedOn"] = "2026-01-01" });

        Assert.Null((await drafts.Part("fasteners", TestEngines.DrainPlug))["provenance"]!["checkedBy"]);
    }

    [Fact]
    public async Task A_refit_is_asked_for_only_where_limits_changed()
    {
        var drafts = await Drafts.OfNewModel(app);
        await drafts.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);
        await Drafts.Json(await drafts.Publish());
        Assert.Equal(0, await app.Look(db => db.DriftRefits.CountAsync(r => r.EngineModelId == drafts.Id, Ct)));

        var limits = await drafts.Part("limits");
        limits[0]!["setToMm"] = 0.14m;
        await Drafts.Json(await drafts.Put("limits", new JsonObject { ["limits"] = limits }));
        await Drafts.Json(await drafts.Publish());
        Assert.Equal(1, await app.Look(db => db.DriftRefits.CountAsync(r => r.EngineModelId == drafts.Id, Ct)));
    }

    [Fact]
    public async Task A_booked_visit_keeps_its_version_and_is_counted()
    {
        var visit = await app.Booked();
        var model = await app.Look(db => db.EngineModelVersions.Where(v => v.Id == visit.EngineModelVersionId).Select(v => v.EngineModelId).SingleAsync(Ct));
        var drafts = new Drafts(await app.As(Roles.Manager), model);
        await drafts.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);
        await Drafts.Json(await drafts.Publish());

        var open = (await drafts.Read()).GetProperty("openVisits").EnumerateArray().Single(v => v.GetProperty("jobCardNumber").GetInt32() == visit.Number);
        Assert.Equal(1, open.GetProperty("version").GetInt32());
        Assert.Equal(visit.EngineModelVersionId, await app.Look(db => db.JobCards.Where(c => c.Number == visit.Number).Select(c => c.EngineModelVersionId).SingleAsync(Ct)));
        var versions = await drafts.Client.GetFromJsonAsync<JsonElement>($"{Drafts.Models}/{model}/versions", Ct);
        Assert.True(versions.GetProperty("versions")[1].GetProperty("openVisits").GetInt32() >= 1);
    }

    [Fact]
    public async Task A_new_engine_model_begins_as_a_draft_with_the_figures_of_another_checked_by_nobody()
    {
        var manager = await app.As(Roles.Manager);
        var begun = await Drafts.Json(await manager.PostAsJsonAsync($"{Drafts.Models}/drafts", new
        {
            maker = "Testwerk", name = "Begun like the twin", invented = true, likeId = TestWorkshop.EngineModel,
        }, Ct));
        var drafts = new Drafts(manager, begun.GetProperty("id").GetGuid());

        Assert.Equal(HttpStatusCode.NotFound, (await manager.GetAsync($"{Drafts.Models}/{drafts.Id}", Ct)).StatusCode);
        Assert.Equal(0, begun.GetProperty("faults").GetArrayLength());
        var made = await Drafts.Json(await drafts.Publish("First version"));
        Assert.Equal((drafts.Id, 1), (made.GetProperty("id").GetGuid(), made.GetProperty("version").GetInt32()));
        Assert.Equal("Begun like the twin", (await manager.GetFromJsonAsync<JsonElement>($"{Drafts.Models}/{drafts.Id}", Ct)).GetProperty("name").GetString());

        var empty = await Drafts.Json(await manager.PostAsJsonAsync($"{Drafts.Models}/drafts", new { maker = "Testwerk", name = "Begun empty" }, Ct));
        Assert.True(empty.GetProperty("faults").GetArrayLength() > 10);
    }

    [Fact]
    public async Task A_discarded_draft_leaves_the_version_as_it_was()
    {
        var drafts = await Drafts.OfNewModel(app);
        await drafts.Set("fasteners", TestEngines.DrainPlug, "fasteners", "torqueNm", 26);

        await Drafts.Json(await drafts.Delete());

        Assert.Equal("24", (await drafts.Part("fasteners", TestEngines.DrainPlug))["torqueNm"]!.ToString());
        Assert.Equal(HttpStatusCode.NotFound, (await drafts.Delete()).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await drafts.Publish()).StatusCode);
    }

    [Fact]
    public async Task Drafts_are_the_managers()
    {
        var technician = await app.As(Roles.Technician);

        Assert.Equal(HttpStatusCode.Forbidden, (await technician.GetAsync($"{Drafts.Models}/{TestWorkshop.EngineModel}/draft", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await technician.GetAsync($"{Drafts.Models}/{TestWorkshop.EngineModel}/versions", Ct)).StatusCode);
    }

    private static async Task<JsonElement> Current(Drafts drafts) =>
        (await drafts.Client.GetFromJsonAsync<JsonElement>($"{Drafts.Models}/{drafts.Id}", Ct)).GetProperty("specification");

    /// <summary>Another person with the manager's role.</summary>
    private async Task<HttpClient> SecondManager()
    {
        const string Name = "second-manager";
        await using var scope = app.Services.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        if (await accounts.FindByNameAsync(Name) is null)
        {
            var db = scope.ServiceProvider.GetRequiredService<WorkshopDbContext>();
            var person = new Person { Id = Domain.NewId.At(app.Clock), Name = "Mana Gertwo", IsStaff = true };
            db.People.Add(person);
            await db.SaveChangesAsync(Ct);
            var account = new Account { Id = Domain.NewId.At(app.Clock), UserName = Name, PersonId = person.Id };
            Assert.True((await accounts.CreateAsync(account, TestWorkshop.Password)).Succeeded);
            await accounts.AddToRoleAsync(account, Roles.Manager);
        }

        return await app.As(Name);
    }
}
