using System.Net;
using System.Text.Json.Nodes;
using AngleSharp.Dom;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.EngineModels.Editing;
using Xunit;

namespace Workshop.Web.Tests.EngineModels;

public sealed class DraftPagesTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Section = "#section";
    private const string Plug = "specification.fasteners[2]";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_manager_changes_a_torque_sees_what_changed_and_publishes()
    {
        var drafts = await Drafts.OfNewModel(app);
        var (pages, edit) = (await Manager(), Edit(drafts));

        var kept = await pages.Send($"{edit}/fasteners/drain-plug", new() { [$"{Plug}.torqueNm"] = "26,5" }, Section);
        Assert.Equal((HttpStatusCode.Redirect, $"{edit}#fasteners"), (kept.Status, kept.Location));
        var overview = await pages.Open(edit);
        Assert.Contains("Fasteners, Oil drain plug, Final torque", overview.MainText, StringComparison.Ordinal);
        Assert.Contains("24 N.m", overview.MainText, StringComparison.Ordinal);
        Assert.Contains("A wrong figure here can hurt someone.", overview.MainText, StringComparison.Ordinal);

        var published = await pages.Send(edit, new() { ["Note"] = "Sheet 12" }, "#publish");

        Assert.Equal((HttpStatusCode.Redirect, $"/engine-models/{drafts.Id}"), (published.Status, published.Location));
        Assert.Contains("26.5 N.m", (await pages.Open($"/engine-models/{drafts.Id}")).MainText, StringComparison.Ordinal);
        var differences = await pages.Open($"/engine-models/{drafts.Id}/differences");
        Assert.Contains("One difference.", differences.MainText, StringComparison.Ordinal);
        Assert.Contains("Sheet 12", differences.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_figure_that_no_field_can_take_comes_back_as_typed_with_the_fault_beside_it()
    {
        var drafts = await Drafts.OfNewModel(app);
        var pages = await Manager();

        var page = await pages.Send($"{Edit(drafts)}/fasteners/drain-plug",
            new() { [$"{Plug}.torqueNm"] = "a lot", [$"{Plug}.count"] = "1.5", [$"{Plug}.tool"] = "13 mm hexagon" }, Section);

        Assert.Equal(HttpStatusCode.BadRequest, page.Status);
        Assert.Equal("a lot", page.ValueOf($"{Plug}.torqueNm"));
        Assert.Equal("13 mm hexagon", page.ValueOf($"{Plug}.tool"));
        var field = page.Html.GetElementById("specification_fasteners_2__torqueNm")!;
        Assert.Equal("true", field.GetAttribute("aria-invalid"));
        Assert.Contains("specification.fasteners[2].torqueNm is \"a lot\"",
            page.Html.GetElementById(field.GetAttribute("aria-describedby")!)!.TextContent, StringComparison.Ordinal);
        Assert.Contains("How many alike is \"1.5\": a whole number is allowed.", page.Faults);
        Assert.Equal(0, await app.Look(db => db.SpecificationDrafts.CountAsync(d => d.EngineModelId == drafts.Id, Ct)));
    }

    [Fact]
    public async Task What_is_kept_but_wrong_is_shown_beside_its_field_and_stops_the_publishing()
    {
        var drafts = await Drafts.OfNewModel(app);
        var (pages, edit) = (await Manager(), Edit(drafts));

        var kept = await pages.Send($"{edit}/limits", new() { ["specification.limits[0].setToMm"] = "0.5" }, Section);

        Assert.Equal($"{edit}/limits", kept.Location);
        var page = await pages.Open(kept.Location!);
        Assert.Equal("0.5", page.ValueOf("specification.limits[0].setToMm"));
        Assert.Contains("it lies within the limits", page.Html.GetElementById("specification_limits_0__setToMm-fault")!.TextContent, StringComparison.Ordinal);
        var refused = await pages.Send(edit, new() { ["Note"] = "Too wide" }, "#publish");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Equal("Too wide", refused.ValueOf("Note")!.Trim());
    }

    [Fact]
    public async Task Rows_are_added_and_taken_out_by_buttons_and_nothing_is_kept_meanwhile()
    {
        var drafts = await Drafts.OfNewModel(app);
        var (pages, address) = (await Manager(), $"{Edit(drafts)}/joints/cam-caps");
        const string Seals = "specification.joints[1].seals";

        var page = await Press(pages, await pages.Open(address), address, "add", Seals, new() { ["specification.joints[1].name"] = "Caps" });
        page = await Press(pages, page, address, "add", Seals, new() { [$"{Seals}[0].partCode"] = "first" });
        Assert.Equal(("first", "", "Caps"), (page.ValueOf($"{Seals}[0].partCode"), page.ValueOf($"{Seals}[1].partCode"), page.ValueOf("specification.joints[1].name")));
        page = await Press(pages, page, address, "remove", $"{Seals}[0]", new() { [$"{Seals}[1].partCode"] = "cap-ring", [$"{Seals}[1].quantity"] = "4" });
        Assert.Equal("cap-ring", page.ValueOf($"{Seals}[0].partCode"));
        Assert.Null(page.ValueOf($"{Seals}[1].partCode"));
        Assert.Equal(0, await app.Look(db => db.SpecificationDrafts.CountAsync(d => d.EngineModelId == drafts.Id, Ct)));

        Assert.Equal(HttpStatusCode.Redirect, (await pages.Send(page, address, [], Section)).Status);
        var joint = await drafts.Part("joints", "cam-caps");
        Assert.Equal("""[{"partCode":"cap-ring","quantity":4,"policy":"replaceAlways","reuseAllowedBy":null}]""", joint["seals"]!.ToJsonString());
    }

    [Fact]
    public async Task Every_form_gives_back_the_document_that_it_was_made_from()
    {
        var drafts = await Drafts.OfNewModel(app);
        var (pages, edit) = (await Manager(), Edit(drafts));
        var before = JsonNode.Parse((await drafts.Read()).GetProperty("specification").GetRawText());
        var forms = (await pages.Open(edit)).Html.QuerySelectorAll("main tbody a").Select(a => a.GetAttribute("href")!)
            .Where(href => href.StartsWith($"{edit}/", StringComparison.Ordinal)).ToList();
        Assert.True(forms.Count > 15);

        foreach (var form in forms)
        {
            Assert.Equal((form, HttpStatusCode.Redirect), (form, (await pages.Send(form, [], Section)).Status));
        }

        var draft = await drafts.Read();
        Assert.Empty(draft.GetProperty("differences").EnumerateArray());
        Assert.True(JsonNode.DeepEquals(before, JsonNode.Parse(draft.GetProperty("specification").GetRawText())));
    }

    [Fact]
    public async Task An_entry_is_added_with_the_figures_of_another_and_taken_out_again()
    {
        var drafts = await Drafts.OfNewModel(app);
        var (pages, edit) = (await Manager(), Edit(drafts));

        var there = await pages.Send(edit, new() { ["List"] = "fasteners", ["Code"] = "second-drain", ["Like"] = "drain-plug" }, "#add");
        var kept = await pages.Send(there.Location!, new() { ["specification.fasteners[3].name"] = "Second drain plug" }, Section);

        Assert.Equal(HttpStatusCode.Redirect, kept.Status);
        var added = await drafts.Part("fasteners", "second-drain");
        Assert.Equal(("Second drain plug", "24"), (added["name"]!.ToString(), added["torqueNm"]!.ToString()));
        Assert.Contains("belongs to no joint", (await pages.Open(edit)).MainText, StringComparison.Ordinal);

        await pages.Send($"{edit}/fasteners/second-drain", [], "#remove");
        Assert.Equal(3, (await drafts.Part("fasteners")).AsArray().Count);
        var wrong = await pages.Send(edit, new() { ["List"] = "fasteners", ["Code"] = "Not A Code" }, "#add");
        Assert.Equal((HttpStatusCode.BadRequest, "Not A Code"), (wrong.Status, wrong.ValueOf("Code")));
    }

    [Fact]
    public async Task Marking_as_checked_asks_that_the_figures_were_compared()
    {
        var drafts = await Drafts.OfNewModel(app);
        var (pages, address) = (await Manager(), $"{Edit(drafts)}/fasteners/drain-plug");

        var refused = await pages.Send(address, new() { ["Compared"] = null }, "form.check");
        Assert.Equal(HttpStatusCode.BadRequest, refused.Status);
        Assert.Contains("compared is false", Assert.Single(refused.Faults), StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.Redirect, (await pages.Send(address, new() { ["Compared"] = "true" }, "form.check")).Status);
        Assert.Contains("checked by Mana Ger on 2026-03-02", (await pages.Open(address)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_new_engine_model_begins_on_a_page_of_its_own()
    {
        var pages = await Manager();

        var begun = await pages.Send("/engine-models/new", new() { ["Input.Maker"] = "Testwerk", ["Input.Name"] = "From a page" });

        Assert.Equal(HttpStatusCode.Redirect, begun.Status);
        var edit = await pages.Open(begun.Location!);
        Assert.Contains("not in the books yet", edit.MainText, StringComparison.Ordinal);
        var discarded = await pages.Send(edit, begun.Location!, [], "#discard");
        Assert.Equal("/engine-models", discarded.Location);
        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open(begun.Location!)).Status);
    }

    [Fact]
    public async Task A_section_that_does_not_exist_ends_in_a_page_that_says_so()
    {
        var (pages, edit) = (await Manager(), $"/engine-models/{TestWorkshop.EngineModel}/edit");

        foreach (var place in new[] { "paint", "fasteners", "limits/intake", "fasteners/Not A Code" })
        {
            Assert.Equal((place, HttpStatusCode.NotFound), (place, (await pages.Open($"{edit}/{place}")).Status));
        }
    }

    [Fact]
    public async Task The_pages_are_the_managers()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        Assert.Equal(HttpStatusCode.Forbidden, (await pages.Open($"/engine-models/{TestWorkshop.EngineModel}/edit")).Status);
        Assert.Equal(HttpStatusCode.OK, (await pages.Open($"/engine-models/{TestWorkshop.EngineModel}/differences")).Status);
        Assert.Null((await pages.Open("/engine-models")).Html.QuerySelector("a[href='/engine-models/new']"));
    }

    [Fact]
    public void Every_member_of_a_specification_has_a_section_and_words()
    {
        Assert.All(FieldShape.OfDocument, member => Assert.NotNull(SpecificationSection.Covering(member.Name)));
        Assert.All(Records(FieldShape.OfDocument), record =>
            Assert.All(FieldShape.Of(record), member => Assert.True(FieldLabels.Has(record, member.Name), $"{record.Name}.{member.Name} has no label in FieldLabels.")));
    }

    private static IEnumerable<Type> Records(IReadOnlyList<FieldShape> members) => members
        .Where(m => m.Kind is FieldKind.Group or FieldKind.Rows).SelectMany(m => Records(m.Members).Append(m.Type)).Distinct();

    private static string Edit(Drafts drafts) => $"/engine-models/{drafts.Id}/edit";

    private Task<TestPages> Manager() => TestPages.SignedIn(app, Roles.Manager);

    /// <summary>Sends the section's form by one of its buttons.</summary>
    private static async Task<TestPage> Press(
        TestPages pages, TestPage page, string address, string button, string value, Dictionary<string, string?> typed)
    {
        var form = page.Html.QuerySelector(Section)!;
        Assert.NotNull(form.QuerySelector($"button[name='{button}'][value='{value}']"));
        var hidden = page.Html.CreateElement("input");
        hidden.SetAttribute("type", "hidden");
        hidden.SetAttribute("name", button);
        hidden.SetAttribute("value", value);
        form.AppendChild(hidden);
        return await pages.Send(page, address, typed, Section);
    }
}
