using System.Net;
using AngleSharp.Dom;
using Workshop.Domain.Arrivals;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Arrivals;

public sealed class ArrivalPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    [Fact]
    public async Task The_check_in_form_takes_a_tap_for_each_and_comes_back_filled_when_words_are_missing()
    {
        var visit = await app.Booked();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var page = await pages.Open($"{visit.Pages}/check-in");
        var (leak, low, lamp) = (Row(page, ArrivalKind.Leak, ArrivalSubject.EngineOil), Row(page, ArrivalKind.Level, ArrivalSubject.Coolant), Row(page, ArrivalKind.Lamp, ArrivalSubject.EngineLamp));
        Dictionary<string, string?> typed = new()
        {
            ["Input.OdometerCount"] = "24310", ["Input.EngineStoppedDay"] = "2026-03-02", ["Input.EngineStoppedTime"] = "08:15",
            [$"{leak}.State"] = "Dripping", [$"{low}.State"] = "Low", [$"{lamp}.State"] = "Noted", ["Input.NothingElseSeen"] = "true",
        };

        var refused = await pages.Send(page, $"{visit.Pages}/check-in", typed, "#check-in");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains(refused.Faults, f => f.EndsWith(" is empty: say in words where it is, or choose one of the usual places.", StringComparison.Ordinal));
        Assert.NotNull(refused.Html.QuerySelector($"[name='{leak}.State'][value=Dripping][checked]"));
        Assert.NotNull(refused.Html.QuerySelector($"[name='{low}.State'][value=Low][checked]"));

        var damage = Row(page, ArrivalKind.Damage, ArrivalSubject.LeftSide);
        (typed[$"{leak}.Place"], typed[$"{damage}.Place"]) = ("drain plug", "elsewhere");
        refused = await pages.Send(refused, $"{visit.Pages}/check-in", typed, "#check-in");
        Assert.Contains(refused.Faults, f => f.EndsWith(" is empty: say in words where it is, or choose one of the usual places.", StringComparison.Ordinal));
        Assert.NotNull(refused.Html.QuerySelector($"[name='{leak}.Place'][value='drain plug'][checked]"));
        Assert.NotNull(refused.Html.QuerySelector($"[name='{damage}.Place'][value=elsewhere][checked]"));

        typed[$"{damage}.Words"] = "scratch on the horn";
        var done = await pages.Send(refused, $"{visit.Pages}/check-in", typed, "#check-in");
        Assert.Equal(HttpStatusCode.Redirect, done.Status);
        foreach (var address in new[] { $"{visit.Pages}/check-in", visit.Pages, $"{visit.Pages}/sign-off" })
        {
            var text = Text(await pages.Open(address));
            Assert.Contains("engine oil dripping: drain plug", text, StringComparison.Ordinal);
            Assert.Contains("left side: scratch on the horn", text, StringComparison.Ordinal);
            Assert.Contains("coolant low", text, StringComparison.Ordinal);
            Assert.Contains("engine lamp", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_was_noted_is_corrected_struck_and_added_to_on_the_same_page()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var page = await pages.Open($"{visit.Pages}/check-in");
        var (keys, oil) = (Row(page, ArrivalKind.Left, ArrivalSubject.Keys), Row(page, ArrivalKind.Level, ArrivalSubject.EngineOil));
        Assert.Equal(HttpStatusCode.Redirect, (await pages.Send(page, $"{visit.Pages}/check-in", new() { [$"{keys}.State"] = "Noted", [$"{oil}.State"] = "Low" }, "#more")).Status);

        page = await pages.Open($"{visit.Pages}/check-in");
        var level = page.Html.QuerySelectorAll("form[id^=correct-]").First(f => f.QuerySelector("select")?.TextContent.Contains("low", StringComparison.Ordinal) == true).Id;
        var corrected = await pages.Send(page, $"{visit.Pages}/check-in", new() { ["More.Notes[0].State"] = "Over", ["More.Reason"] = "Read upright." }, $"#{level}");
        Assert.True(corrected.Status == HttpStatusCode.Redirect, string.Join(" ", corrected.Faults));
        page = await pages.Open($"{visit.Pages}/check-in");
        var left = page.Html.QuerySelectorAll("form[id^=correct-]")[^1].Id;
        Assert.Equal(HttpStatusCode.Redirect, (await pages.Send(page, $"{visit.Pages}/check-in", new() { ["More.Notes[0].Struck"] = "true", ["More.Reason"] = "They are with the owner." }, $"#{left}")).Status);

        var text = Text(await pages.Open($"{visit.Pages}/check-in"));
        Assert.Contains("engine oil over its mark", text, StringComparison.Ordinal);
        Assert.Contains("left with us: struck, by Tek Nician", text, StringComparison.Ordinal);
        Assert.Contains("fluid levels: engine oil low, by Tek Nician", text, StringComparison.Ordinal);
    }

    /// <summary>The prefix of a row's fields.</summary>
    private static string Row(TestPage page, ArrivalKind kind, ArrivalSubject subject)
    {
        var kinds = page.Html.QuerySelectorAll($".arrival-row input[name$='.Kind'][value={kind}]").Select(i => i.GetAttribute("name")![..^".Kind".Length]);
        return kinds.Single(prefix => page.Html.QuerySelector($"[name='{prefix}.Subject'][value={subject}]") is not null);
    }

    private static string Text(TestPage page) => string.Join(' ', page.Html.Body!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
