using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests;

/// <summary>One whole visit through the pages, by keyboard alone: the advisor books, the technician measures, the manager looks.</summary>
[Collection(RunningDemo.Name)]
public sealed partial class VisitJourneyTests(Chromium browser) : IClassFixture<Chromium>
{
    private const string StartOfWork = "Start of the work";
    private const string Plate = "JOURNEY 1";

    [Fact]
    public async Task From_due_to_a_forecast_by_keyboard_alone()
    {
        var advisor = new Hands(await browser.SignedInAs("greta"));
        var motorcycle = await TakeIntoTheBooks(advisor);
        var card = await Book(advisor, motorcycle);
        await CheckIn(advisor, card);

        var technician = new Hands(await browser.SignedInAs("tilda"));
        await LookAtTheKit(technician, card);
        await MeasureAsFound(technician, card);
        var fitted = await FitAShim(technician, card);
        await Tighten(technician, card);
        await TurnByHand(technician, card);
        await MeasureAsLeft(technician, card, fitted);
        await TimeTheCamshafts(technician, card);
        await InspectSeals(technician, card);
        await FinishTheWork(technician, card);
        await SignOff(technician, card);

        var manager = new Hands(await browser.SignedInAs("otto"));
        await LookAtDrift(manager, motorcycle);
    }

    private static async Task<string> TakeIntoTheBooks(Hands advisor)
    {
        await advisor.Page.GotoAsync("/motorcycles/new");
        await Seen(advisor.Page, "01-new-motorcycle");
        await advisor.Type("Registration", Plate);
        await advisor.Type("Maker", "Invented");
        await advisor.Type("Model", "Journey");
        await advisor.Type("Model year", "2021");
        await advisor.Choose("Engine model", "Gable");
        await advisor.TypeDigits("In service since", "04012021");
        await advisor.Type("Owner", "Jo Urney");
        await advisor.Press("Add");
        await advisor.Page.GotoAsync($"/motorcycles?search={Uri.EscapeDataString(Plate)}");
        await Seen(advisor.Page, "02-motorcycles");
        await advisor.Follow(Plate);
        await Seen(advisor.Page, "03-motorcycle");
        var id = advisor.Page.Url.Split('/')[^1].Split('?')[0];
        await advisor.Page.GotoAsync("/due");
        while (!await advisor.Page.GetByRole(AriaRole.Link, new() { Name = Plate, Exact = true }).IsVisibleAsync())
        {
            await advisor.Follow("Next page");
        }

        await Seen(advisor.Page, "04-due");
        return id;
    }

    private static async Task<int> Book(Hands advisor, string motorcycle)
    {
        await advisor.Press(advisor.Page.GetByRole(AriaRole.Link, new() { Name = $"Book {Plate}" }).First);
        Assert.Contains(motorcycle, advisor.Page.Url, StringComparison.Ordinal);
        await ShowAnOpenDay(advisor);
        await Seen(advisor.Page, "05-book");
        await advisor.Choose("Bay", "Bay 1");
        await advisor.Choose("Technician", "TV");
        await advisor.TypeDigits(StartOfWork, "0900AM");
        await advisor.Press("Book");
        await Seen(advisor.Page, "06-job-card");
        var number = CardNumber().Match(advisor.Page.Url);
        Assert.True(number.Success, $"Booking ended on {advisor.Page.Url}: {await advisor.Page.InnerTextAsync("main")}");
        return int.Parse(number.Groups[1].Value, CultureInfo.InvariantCulture);
    }

    /// <summary>A working day of next month; holidays and weekends are passed over.</summary>
    private static async Task ShowAnOpenDay(Hands advisor)
    {
        var shown = DateOnly.Parse(await advisor.Page.GetByLabel("Day", new() { Exact = true }).InputValueAsync(), CultureInfo.InvariantCulture);
        for (var ahead = 30; ahead < 40; ahead++)
        {
            await advisor.TypeDigits("Day", shown.AddDays(ahead).ToString("MMddyyyy", CultureInfo.InvariantCulture));
            await advisor.Press("Show the day");
            if (await advisor.Page.GetByLabel(StartOfWork, new() { Exact = true }).IsVisibleAsync())
            {
                return;
            }
        }

        Assert.Fail("No open day within ten days.");
    }

    private static async Task CheckIn(Hands advisor, int card)
    {
        await advisor.Page.GotoAsync($"/job-cards/{card}/check-in");
        await advisor.Type("Odometer in km", "24510");
        await advisor.Type("The owner's words", "Ticks a little when cold.");
        await Seen(advisor.Page, "07-check-in");
        await advisor.Press("Check in");
        await Assertions.Expect(advisor.Page.GetByText("24,510 km").First).ToBeVisibleAsync();
        await Seen(advisor.Page, "08-checked-in");
    }

    private static async Task LookAtTheKit(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/cautions");
        while (await technician.Page.GetByRole(AriaRole.Button, new() { NameRegex = ReadButton() }).CountAsync() > 0)
        {
            await technician.Press(technician.Page.GetByRole(AriaRole.Button, new() { NameRegex = ReadButton() }).First);
        }

        await Seen(technician.Page, "09-cautions");
        await technician.Page.GotoAsync($"/job-cards/{card}");
        await technician.Follow("Kit");
        await Seen(technician.Page, "10-kit");
    }

    private static async Task MeasureAsFound(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/readings");
        await technician.Type("Cylinder head, °C", "21,5");
        await technician.Choose("Feeler set", "0.01");
        var rows = technician.Page.Locator("table.position tbody tr");
        var count = await rows.CountAsync();
        Assert.True(count >= 8, $"{count} lobes to measure");
        var tight = true;
        for (var i = 0; i < count; i++)
        {
            var row = rows.Nth(i);
            var (lower, _, setTo) = await Limits(row);
            var exhaust = (await row.Locator("th").InnerTextAsync()).Contains("exhaust", StringComparison.Ordinal);
            var go = exhaust && tight ? lower - 0.03m : setTo;
            tight &= !exhaust;
            await technician.Type(row.GetByLabel("Go, ", new() { Exact = false }).First, Comma(go));
            await technician.Type(row.GetByLabel("No-go, ", new() { Exact = false }).First, Comma(go + 0.01m));
        }

        await Seen(technician.Page, "11-readings-typed");
        await technician.Press("Write readings as found");
        await Assertions.Expect(technician.Page.Locator(".verdict").First).ToBeVisibleAsync();
        await Seen(technician.Page, "12-readings-as-found");

        // What came out of the tight valve.
        var valve = await TightValve(technician);
        await technician.Type($"Shim as found, {valve}, mm", "2,300");
        await technician.Choose("Micrometer", "icrometer");
        await technician.Press("Write readings as found");
    }

    private static async Task<string> FitAShim(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/shims");
        await Seen(technician.Page, "13-shims");
        var article = technician.Page.Locator("article.shim", new() { Has = technician.Page.GetByRole(AriaRole.Button, new() { Name = "Fitted" }) })
            .Filter(new() { HasTextRegex = ThicknessAdvised() }).First;
        var valve = (await article.GetAttributeAsync("id"))!["valve-".Length..];
        var advised = ThicknessAdvised().Match(await article.Locator("h2").InnerTextAsync()).Groups[1].Value;
        await technician.Type(article.GetByLabel("Shim fitted, mm"), advised);
        var micrometer = article.GetByLabel("Micrometer", new() { Exact = true });
        await micrometer.FocusAsync();
        await technician.Page.Keyboard.PressAsync("ArrowDown");
        if (!await article.GetByLabel("from the box", new() { Exact = true }).IsCheckedAsync())
        {
            await technician.Tick(article.GetByLabel("from the box", new() { Exact = true }));
        }

        await technician.Press(article.GetByRole(AriaRole.Button, new() { Name = "Fitted" }));
        await Assertions.Expect(technician.Page.GetByText("Fitted at this visit").First).ToBeVisibleAsync();
        await Seen(technician.Page, "14-shim-fitted");
        return valve;
    }

    /// <summary>As left is not open before: its fields are not there.</summary>
    private static async Task TurnByHand(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/readings?stage=AsLeft");
        await Seen(technician.Page, "17-as-left-not-open");
        Assert.Equal(0, await technician.Page.GetByLabel("Go, ", new() { Exact = false }).CountAsync());
        await technician.Tick(technician.Page.GetByLabel("Turned two full turns by hand", new() { Exact = false }));
        await technician.Tick(technician.Page.GetByLabel("Every mark is right again", new() { Exact = false }));
        await technician.Press("Confirm the two turns");
    }

    private static async Task MeasureAsLeft(Hands technician, int card, string fitted)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/readings?stage=AsLeft");
        await technician.Type("Cylinder head, °C", "21.5");
        await technician.Choose("Feeler set", "0.01");
        var rows = technician.Page.Locator("table.position tbody tr");
        for (var i = 0; i < await rows.CountAsync(); i++)
        {
            var (_, _, setTo) = await Limits(rows.Nth(i));
            await technician.Type(rows.Nth(i).GetByLabel("Go, ", new() { Exact = false }).First, Comma(setTo));
            await technician.Type(rows.Nth(i).GetByLabel("No-go, ", new() { Exact = false }).First, Comma(setTo + 0.01m));
        }

        await technician.Press("Write readings as left");
        await Assertions.Expect(technician.Page.Locator(".verdict").First).ToBeVisibleAsync();
        Assert.NotEmpty(fitted);
        await Seen(technician.Page, "18-readings-as-left");
    }

    private static async Task Tighten(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/torque-sheet");
        await Seen(technician.Page, "15-torque-sheet");
        var buttons = technician.Page.GetByRole(AriaRole.Button, new() { NameRegex = TightenButton() });
        for (var left = 60; left > 0 && await buttons.CountAsync() > 0; left--)
        {
            await technician.Press(buttons.First);
        }

        await Seen(technician.Page, "16-torque-sheet-ticked");
    }

    /// <summary>The adjustment opened what holds the camshafts' drives: their timing is looked at as left, and each drive once more.</summary>
    private static async Task TimeTheCamshafts(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/cam-timing?stage=AsLeft");
        var camshafts = await technician.Page.Locator("select[name*='Alignments']").CountAsync();
        for (var i = 0; i < camshafts; i++)
        {
            await technician.Choose(technician.Page.Locator("select[name*='Alignments']").Nth(i), "passes");
        }

        await technician.Tick(technician.Page.GetByLabel("running direction", new() { Exact = false }));
        await technician.Press("Write cam timing as left");
        await Seen(technician.Page, "18-cam-timing-as-left");
        var again = technician.Page.Locator("form", new() { Has = technician.Page.GetByRole(AriaRole.Button, new() { Name = "Confirm the re-check" }) });
        for (var left = 4; left > 0 && await again.CountAsync() > 0; left--)
        {
            var form = again.First;
            for (var i = 0; i < await form.Locator("input[type=checkbox]").CountAsync(); i++)
            {
                await technician.Tick(form.Locator("input[type=checkbox]").Nth(i));
            }

            if (await form.Locator("select").CountAsync() > 0)
            {
                await technician.Choose(form.Locator("select"), "N.m");
            }

            await technician.Press(form.GetByRole(AriaRole.Button));
        }

        await Seen(technician.Page, "18-drives-checked-once-more");
    }

    private static async Task InspectSeals(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/seals");
        var fit = technician.Page.Locator("article", new() { HasText = "not inspected yet" }).GetByLabel("Fit, goes back in");
        for (var i = 0; i < await fit.CountAsync(); i++)
        {
            await technician.Tick(fit.Nth(i));
        }

        await Seen(technician.Page, "19-seals");
        await technician.Press("Write what was seen");
        await Assertions.Expect(technician.Page.GetByText("Every seal that must be inspected is.").First).ToBeVisibleAsync();
    }

    /// <summary>What the engine model asks for after the work: counted back, run warm, ridden, looked at once more.</summary>
    private static async Task FinishTheWork(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/after-work");
        await Seen(technician.Page, "19-after-work");
        foreach (var way in new[] { "went in", "came back" })
        {
            await technician.Press(technician.Page.GetByRole(AriaRole.Button, new() { Name = $"One more Rags and cloths {way}" }));
        }

        await technician.Type("It is hot: °C", "86");
        await technician.Type("Cylinder 1, kPa", "27,5");
        await technician.Type("Cylinder 2, kPa", "27,9");
        await technician.Press("Write the balance");
        await technician.Press(technician.Page.GetByRole(AriaRole.Button, new() { NameRegex = AllDryButton() }));
        await technician.Type("or how far, km", "2,5");
        await technician.Press(technician.Page.GetByRole(AriaRole.Button, new() { Name = "Ridden", Exact = true }));
        var again = technician.Page.Locator("[id^=recheck-]").Filter(new() { HasText = "Not looked at yet" });
        for (var left = 4; left > 0 && await again.CountAsync() > 0; left--)
        {
            var early = again.First.GetByLabel("Why it was not left to cool");
            if (await early.CountAsync() > 0)
            {
                await technician.Type(early, "The owner waits; comes by tomorrow.");
            }

            await technician.Press(again.First.GetByRole(AriaRole.Button, new() { Name = "In order", Exact = true }));
        }

        await technician.Press(technician.Page.GetByRole(AriaRole.Button, new() { Name = "Reset", Exact = true }));
        await Assertions.Expect(technician.Page.Locator("section[aria-labelledby=after-left]")).ToContainTextAsync("Nothing.");
        await Seen(technician.Page, "19-after-work-done");
    }

    private static async Task SignOff(Hands technician, int card)
    {
        await technician.Page.GotoAsync($"/job-cards/{card}/sign-off");
        await Seen(technician.Page, "19-sign-off");
        await technician.Type("Odometer as it leaves", "24512");
        await technician.Press("Sign off");
        await Seen(technician.Page, "20-signed-off");
        await Assertions.Expect(technician.Page.GetByText("Signed off by")).ToBeVisibleAsync();
    }

    private static async Task LookAtDrift(Hands manager, string motorcycle)
    {
        await manager.Page.GotoAsync("/drift");
        await Seen(manager.Page, "21-drift-list");
        await manager.Page.GotoAsync($"/drift/{motorcycle}");
        await Assertions.Expect(manager.Page.GetByText(Plate).First).ToBeVisibleAsync();
        await Seen(manager.Page, "22-drift-of-motorcycle");
        await manager.Page.GotoAsync($"/motorcycles/{motorcycle}");
        await Seen(manager.Page, "23-motorcycle-after");
    }

    private static async Task Seen(IPage page, string name)
    {
        await Chromium.Keep(page, name);
        await Chromium.IsAccessible(page);
    }

    private static async Task<(decimal Lower, decimal Upper, decimal SetTo)> Limits(ILocator row)
    {
        var figures = Figure().Matches(await row.Locator(".limits").InnerTextAsync())
            .Select(m => decimal.Parse(m.Value, CultureInfo.InvariantCulture)).ToList();
        return (figures[0], figures[1], figures[2]);
    }

    private static async Task<string> TightValve(Hands technician)
    {
        var row = technician.Page.Locator("table.position tbody tr").Filter(new() { HasText = "too tight" }).First;
        var name = (await row.Locator("th").InnerTextAsync()).Split('\n')[0].Trim();
        return name.Split(", lobe")[0];
    }

    private static string Comma(decimal value) => value.ToString("0.00##", CultureInfo.InvariantCulture).Replace('.', ',');

    [GeneratedRegex(@"/job-cards/(\d+)")]
    private static partial Regex CardNumber();

    [GeneratedRegex("^(Read|All \\d+ read)$")]
    private static partial Regex ReadButton();

    [GeneratedRegex("^(Tightened|All [0-9]+ tightened)$")]
    private static partial Regex TightenButton();

    [GeneratedRegex("^(It is dry|All [0-9]+ that are open are dry)$")]
    private static partial Regex AllDryButton();

    [GeneratedRegex(@"(\d\.\d{2,3}) mm")]
    private static partial Regex ThicknessAdvised();

    [GeneratedRegex(@"\d\.\d+")]
    private static partial Regex Figure();
}
