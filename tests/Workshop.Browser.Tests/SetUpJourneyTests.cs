using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests;

/// <summary>
/// A workshop that was started with nothing but its first manager is set up by keyboard alone, until a visit can be booked. Engine
/// models come by the API, as specifications do.
/// </summary>
[Collection(RunningDemo.Name)]
public sealed class SetUpJourneyTests(Chromium browser, BareService bare) : IClassFixture<Chromium>, IClassFixture<BareService>
{
    private static readonly string[] Weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task From_a_bare_workshop_to_a_visit_in_the_diary_by_keyboard_alone()
    {
        using var api = await Api();
        var engineModel = await AddEngineModel(api);
        var manager = new Hands(await browser.SignedIn(
            BareService.Manager, bare.Password, new BrowserNewContextOptions { BaseURL = bare.Address.ToString() }));

        await Open(manager);
        await Add(manager, "bay", "Name", "Bay 1", "What it has, parted by commas", "lift, exhaust extraction");
        await Add(manager, "parking place", "Name", "Stand 1", null, null);
        await AddTechnician(manager);
        var day = await TakeABreak(manager);
        var number = await Book(api, engineModel, day);

        await manager.Page.GotoAsync($"/diary?date={day}&by=technicians");
        await Seen(manager.Page, "set-up-06-diary");
        await Assertions.Expect(manager.Page.Locator(".diary-table").GetByRole(AriaRole.Link, new() { Name = number.ToString(CultureInfo.InvariantCulture), Exact = true }))
            .ToBeVisibleAsync();
        Assert.Contains("break", await manager.Page.Locator("svg.phase-bars").TextContentAsync() ?? "", StringComparison.Ordinal);
    }

    /// <summary>Every day of the week, whatever day the test runs on.</summary>
    private static async Task Open(Hands manager)
    {
        await manager.Page.GotoAsync("/people/workshop");
        foreach (var weekday in Weekdays)
        {
            await manager.TypeDigits($"{weekday}, opens", "0800AM");
            await manager.TypeDigits($"{weekday}, closes", "0530PM");
        }

        await manager.Press("Save the hours");
        await Assertions.Expect(manager.Page.GetByText("The opening hours are saved.")).ToBeVisibleAsync();
        await manager.Type("Holidays to add, one a line: the day, then its name", "2027-01-01 New Year");
        await manager.Press("Add");
        await Assertions.Expect(manager.Page.GetByText("Holidays: 1 added")).ToBeVisibleAsync();
        await Seen(manager.Page, "set-up-01-workshop");
    }

    private static async Task Add(Hands manager, string kind, string nameLabel, string name, string? canLabel, string? can)
    {
        await manager.Page.GotoAsync("/people/resources");
        await manager.Follow($"Add a {kind}");
        await manager.Type(nameLabel, name);
        if (canLabel is not null)
        {
            await manager.Type(canLabel, can!);
        }

        await Seen(manager.Page, $"set-up-02-{kind.Replace(' ', '-')}");
        await manager.Press("Add");
        await Assertions.Expect(manager.Page.GetByText($"{name} is entered.")).ToBeVisibleAsync();
    }

    private static async Task AddTechnician(Hands manager)
    {
        await manager.Page.GotoAsync("/people");
        await manager.Follow("Add a person");
        await manager.Type("Name", "Tess Wrenford");
        await manager.Type("Signs in as", "tess");
        await manager.Tick(manager.Page.GetByLabel("technician", new() { Exact = true }));
        await manager.Press("Add");
        await Assertions.Expect(manager.Page.Locator("code.password")).ToBeVisibleAsync();
        await Seen(manager.Page, "set-up-03-person");
        await manager.Follow("Make a technician of this person");
        await manager.Type("Initials", "TW");
        await manager.Type("Skills, parted by commas", "service, valve work, brakes");
        await manager.Choose("Grade", "master");
        await manager.Press("Add");
        await Assertions.Expect(manager.Page.GetByText("TW is entered.")).ToBeVisibleAsync();
    }

    /// <summary>A break on the weekday of the day after tomorrow, on which the visit comes.</summary>
    private static async Task<string> TakeABreak(Hands manager)
    {
        var technician = manager.Page.Url;
        await manager.Page.GotoAsync("/diary");
        var day = DateOnly.Parse(await manager.Page.GetByLabel("Day", new() { Exact = true }).InputValueAsync(), CultureInfo.InvariantCulture).AddDays(2);
        await manager.Page.GotoAsync(technician);
        if (day is { Month: 1, Day: 1 })
        {
            day = day.AddDays(1);
        }

        await manager.TypeDigits($"{day.DayOfWeek}, break 1 from", "1200PM");
        await manager.TypeDigits($"{day.DayOfWeek}, break 1 until", "1230PM");
        await manager.Press("Save the week");
        await Assertions.Expect(manager.Page.GetByText("The week is saved.")).ToBeVisibleAsync();
        await Seen(manager.Page, "set-up-04-technician");
        return day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    }

    private static async Task<int> Book(HttpClient api, Guid engineModel, string day)
    {
        var motorcycle = await Post(api, "/api/v1/motorcycles", new
        {
            registration = "BARE 1", maker = "Invented", model = "First", modelYear = 2021, engineModelId = engineModel, odometerUnit = "kilometres",
            inServiceSince = "2021-04-01",
        });
        var resources = (await api.GetFromJsonAsync<JsonElement>("/api/v1/resources", Ct)).GetProperty("resources").EnumerateArray().ToList();
        Guid Of(string kind) => resources.Single(r => r.GetProperty("kind").GetString() == kind).GetProperty("id").GetGuid();
        var booked = await Post(api, "/api/v1/bookings", new
        {
            motorcycleId = motorcycle.GetProperty("id").GetGuid(), items = new[] { new { code = "engine-oil-and-filter", likelihood = "certain" } },
            bayId = Of("bay"), technicianId = Of("technician"), day, time = "09:00:00",
        });
        return booked.GetProperty("number").GetInt32();
    }

    private static async Task<Guid> AddEngineModel(HttpClient api)
    {
        var seed = JsonElement.Parse(await File.ReadAllTextAsync(
            Path.Combine(AcceptedFile.Root, "seed", "demo", "engine-models", "in-line-four-buckets.json"), Ct));
        return (await Post(api, "/api/v1/engine-models", seed)).GetProperty("id").GetGuid();
    }

    private async Task<HttpClient> Api()
    {
        var api = new HttpClient { BaseAddress = bare.Address };
        var session = await api.PostAsJsonAsync("/api/v1/session", new { userName = BareService.Manager, password = bare.Password }, Ct);
        var token = (await session.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("token").GetString();
        api.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        return api;
    }

    private static async Task<JsonElement> Post(HttpClient api, string address, object body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = JsonContent.Create(body) };
        request.Headers.Add("Idempotency-Key", $"set-up {address}");
        var answer = await api.SendAsync(request, Ct);
        var text = await answer.Content.ReadAsStringAsync(Ct);
        Assert.True(answer.StatusCode == HttpStatusCode.Created, $"{address} answered {answer.StatusCode}: {text}");
        return JsonElement.Parse(text);
    }

    private static async Task Seen(IPage page, string name)
    {
        await Chromium.Keep(page, name);
        await Chromium.IsAccessible(page);
    }
}
