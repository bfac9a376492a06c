using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Contacts;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Motorcycles;
using Xunit;

namespace Workshop.Web.Tests.Contacts;

/// <summary>No mail server is set up here.</summary>
public sealed class ContactPagesTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task From_the_call_list_to_a_consent_a_letter_that_is_copied_and_a_contact()
    {
        var (owner, motorcycle) = await (await app.As(Roles.Advisor)).AddOwner("Berta Brief");
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var list = await pages.Open("/due/calls");
        Assert.Contains("Berta Brief", list.MainText, StringComparison.Ordinal);
        Assert.Contains("No consent: ask when the owner comes next", list.MainText, StringComparison.Ordinal);

        var given = await pages.Send($"/motorcycles/{motorcycle}/owner", new() { ["Agreed.Channel"] = "Letter", ["Agreed.HowGiven"] = "said at the counter" }, "#consent-form");
        Assert.Equal(HttpStatusCode.Redirect, given.Status);
        var draft = await pages.Open($"/messages/new?motorcycle={motorcycle}");
        Assert.Equal($"Testwerk Twin 600, {await Plate(motorcycle)}: service is due", draft.ValueOf("Input.Subject"));
        var text = draft.ValueOf("Input.Body")!;
        Assert.StartsWith("Dear Berta Brief,", text, StringComparison.Ordinal);
        Assert.Matches(@"is due for service now \(since \d+ [A-Z][a-z]+ 202[45]\)\.", text);
        Assert.Contains("\n- ", text.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.DoesNotContain("{", text, StringComparison.Ordinal);
        Assert.Contains("The workshop's telephone is not on record", draft.MainText, StringComparison.Ordinal);

        var kept = await pages.Send(draft, "/messages/new", new() { ["Input.Body"] = $"{text}\nP.S. Öl" }, "#message");
        Assert.Matches("^/messages/", kept.Location!);
        var message = await pages.Open(kept.Location!);
        Assert.Contains("waiting to be copied", message.MainText, StringComparison.Ordinal);
        Assert.EndsWith("P.S. Öl", message.Html.QuerySelector("#text")!.TextContent.TrimEnd(), StringComparison.Ordinal);
        Assert.Equal(["Mark as copied", "Discard"], message.Html.QuerySelectorAll("#decide button").Select(b => b.TextContent));
        await pages.Send(message, kept.Location!, new() { ["decision"] = "MarkAsCopied" }, "#decide");

        Assert.Contains("copied 2026-03-02 09:00, said by Ada Visor", (await pages.Open(kept.Location!)).MainText, StringComparison.Ordinal);
        Assert.Contains("written to", (await pages.Open($"/motorcycles/{motorcycle}/owner")).MainText, StringComparison.Ordinal);
        Assert.DoesNotContain("Berta Brief", (await pages.Open("/due/calls")).MainText, StringComparison.Ordinal);
        Assert.Contains("Berta Brief", (await pages.Open("/messages?state=copied")).MainText, StringComparison.Ordinal);
        Assert.True(await app.Look(db => db.Contacts.AnyAsync(c => c.PersonId == owner && c.Outcome == ContactOutcome.Written, Ct)));
    }

    [Fact]
    public async Task Without_a_mail_server_an_email_waits_to_be_copied_and_cannot_be_sent()
    {
        var advisor = await app.As(Roles.Advisor);
        var (_, motorcycle) = await advisor.AddOwner(channels: [ContactChannel.Email]);
        var written = await advisor.Write(motorcycle);
        var made = await written.Json();
        Assert.True(made.GetProperty("toCopy").GetBoolean());
        var id = made.GetProperty("id").GetGuid();

        var sent = await advisor.Decide(id, "send");

        Assert.Equal(
            (HttpStatusCode.Conflict, "No mail server is set up: copy the text and send it by hand, then mark it as copied."), (sent.StatusCode, await sent.Detail()));
        Assert.Null((await app.MessageRow(id)).NextTryAt);
        Assert.Contains("No mail server is set up", (await (await TestPages.SignedIn(app, Roles.Advisor)).Open("/messages")).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_contact_typed_on_the_page_comes_back_when_it_is_refused_and_stands_when_it_is_right()
    {
        var (_, motorcycle) = await (await app.As(Roles.Advisor)).AddOwner();
        var (pages, address) = (await TestPages.SignedIn(app, Roles.Advisor), $"/motorcycles/{motorcycle}/owner");

        var refused = await pages.Send(address, new()
        {
            ["Spoken.Outcome"] = "Reached", ["Spoken.CallBackOn"] = "2026-03-09", ["Spoken.Remark"] = "In a week",
        }, "#contact-form");
        Assert.Equal(HttpStatusCode.BadRequest, refused.Status);
        Assert.Equal(["Call back from this day on is given, but nobody asked to be called back: leave it empty, or say that they did."], refused.Faults);
        Assert.Equal(("2026-03-09", "In a week"), (refused.ValueOf("Spoken.CallBackOn"), refused.ValueOf("Spoken.Remark")));
        await pages.Send(refused, address, new() { ["Spoken.Outcome"] = "CallsBack" }, "#contact-form");

        Assert.Contains("asked to be called back from 2026-03-09 on", (await pages.Open(address)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_manager_changes_a_template_sees_an_invented_example_and_is_told_what_is_no_placeholder()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var page = await pages.Open("/messages/template?new=true");
        var refused = await pages.Send(page, "/messages/template", new()
        {
            ["Input.Name"] = "Winter", ["Input.Subject"] = "Winter for {items}", ["Input.Body"] = "Dear {ownr}",
        }, "#template");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Equal(2, refused.Faults.Count);
        Assert.Contains(refused.Faults, f => f.StartsWith("Text has {ownr}, which is no placeholder here", StringComparison.Ordinal));
        Assert.Equal("Dear {ownr}", refused.ValueOf("Input.Body"));
        var saved = await pages.Send(refused, "/messages/template", new() { ["Input.Subject"] = "Winter for {registration}", ["Input.Body"] = "Dear {owner}, {{ok}\n{items}" }, "#template");

        var shown = await pages.Open(saved.Location!);
        Assert.Contains("Winter for XX 123 Y", shown.MainText, StringComparison.Ordinal);
        Assert.Contains("Dear Ida Invented, {ok}\n- Engine oil and filter", shown.MainText.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        var open = await pages.Open(saved.Location!);
        var changed = await pages.Send(shown, saved.Location!, new() { ["Input.Subject"] = "Winter comes" }, "#template");
        Assert.Equal(HttpStatusCode.Redirect, changed.Status);
        var stale = await pages.Send(open, saved.Location!, new() { ["Input.Subject"] = "Winter went" }, "#template");
        Assert.Equal((HttpStatusCode.PreconditionFailed, "Winter went"), (stale.Status, stale.ValueOf("Input.Subject")));
        Assert.Equal(HttpStatusCode.Redirect, (await pages.Send(stale, saved.Location!, [], "#template")).Status);
    }

    [Fact]
    public async Task The_texts_that_a_workshop_starts_with_are_in_order()
    {
        var templates = (await (await app.As(Roles.Advisor)).GetFromJsonAsync<JsonElement>("/api/v1/message-templates", Ct))
            .GetProperty("templates").EnumerateArray().Where(t => t.GetProperty("name").GetString()!.StartsWith("Service is due", StringComparison.Ordinal)).ToList();

        Assert.Equal(["email", "letter"], templates.Select(t => t.GetProperty("channel").GetString()));
        Assert.All(templates, t => Assert.Contains("Dear Ida Invented,", t.GetProperty("exampleBody").GetString(), StringComparison.Ordinal));
        Assert.All(templates, t => Assert.Contains("service is due", t.GetProperty("exampleSubject").GetString(), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Another_motorcycle_of_the_same_owner_needs_no_name_again()
    {
        var (owner, _) = await (await app.As(Roles.Advisor)).AddOwner("Zita Zwei");
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var page = await pages.Open($"/motorcycles/new?owner={owner}");
        Assert.Contains("Owner: Zita Zwei", page.MainText, StringComparison.Ordinal);

        var added = await pages.Send(page, "/motorcycles/new", new()
        {
            ["Input.Registration"] = "ZITA 2", ["Input.Maker"] = "Testwerk", ["Input.Model"] = "Twin 600", ["Input.ModelYear"] = "2024",
            ["Input.EngineModelId"] = TestWorkshop.EngineModel.ToString(), ["Input.InServiceSince"] = "2024-01-01",
        });

        Assert.Equal(HttpStatusCode.Redirect, added.Status);
        Assert.Equal(2, await app.Look(db => db.Motorcycles.CountAsync(m => m.OwnerId == owner, Ct)));
    }

    private Task<string> Plate(Guid motorcycle) => app.Look(db => db.Motorcycles.Where(m => m.Id == motorcycle).Select(m => m.Registration).SingleAsync(Ct));
}
