using System.Net;
using AngleSharp.Html.Dom;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Bookings;

public sealed class BookPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_due_is_ticked_and_the_adjustment_stands_beside_its_check_as_the_forecast_has_it()
    {
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();
        await Due(motorcycle, TestEngines.ValveCheck, new LocalDate(2026, 3, 20));
        await Due(motorcycle, TestEngines.OilService, new LocalDate(2026, 9, 1));
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var possible = await pages.Open($"/book?motorcycle={motorcycle}");
        await Forecast(motorcycle, leavesLimitsKm: 20_000);
        var likely = await pages.Open($"/book?motorcycle={motorcycle}");

        Assert.True(Box(possible, TestEngines.ValveCheck).IsChecked);
        Assert.False(Box(possible, TestEngines.OilService).IsChecked);
        Assert.Equal("valve-clearance-adjustment:possible", Choice(possible, TestEngines.Adjustment));
        Assert.Contains("2 h 10 min of work; 2 h 0 min more if a possible item is begun", Squeezed(possible), StringComparison.Ordinal);
        Assert.Equal("valve-clearance-adjustment:likely", Choice(likely, TestEngines.Adjustment));
        Assert.Contains("4 h 10 min of work.", Squeezed(likely), StringComparison.Ordinal);
        Assert.Contains("cam-alignment-jig", likely.MainText, StringComparison.Ordinal);
        Assert.Contains("Head cover gasket", likely.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_visit_is_booked_in_two_steps_and_the_taken_hour_is_drawn_and_said()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var shown = await pages.Open($"/book?motorcycle={motorcycle}&shown=true&take={TestEngines.OilService}:certain&take=&day=2026-03-10");
        var booked = await pages.Send(shown, "/book", Typed(TestWorkshop.Bay1, "09:00"), "#book");

        Assert.Equal(HttpStatusCode.Redirect, booked.Status);
        var card = await pages.Open(booked.Location!);
        Assert.Contains("Engine oil and filter", card.MainText, StringComparison.Ordinal);
        Assert.Contains("2026-03-10 09:00 to 2026-03-10 10:20", Squeezed(card), StringComparison.Ordinal);
        var number = await app.Look(db => db.JobCards.Where(c => c.MotorcycleId == motorcycle).Select(c => c.Number).SingleAsync(Ct));
        var after = await pages.Open($"/book?motorcycle={motorcycle}&shown=true&take={TestEngines.OilService}:certain&day=2026-03-10");
        Assert.Contains($"09:00 to 09:30: job card {number}", Squeezed(after), StringComparison.Ordinal);
        Assert.Equal(6, after.Html.QuerySelectorAll(".time-bars rect.taken").Length);
    }

    [Fact]
    public async Task A_taken_hour_comes_back_as_409_with_the_form_as_it_was_filled()
    {
        var advisor = await app.As(Roles.Advisor);
        var first = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 11, 8, 0))).Number();
        var motorcycle = await advisor.AddMotorcycle();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var shown = await pages.Open(
            $"/book?motorcycle={motorcycle}&shown=true&take={TestEngines.ValveCheck}:certain&take={TestEngines.Adjustment}:likely&day=2026-03-11");
        var refused = await pages.Send(shown, "/book", Typed(TestWorkshop.Bay1, "08:15"), "#book");

        Assert.Equal(HttpStatusCode.Conflict, refused.Status);
        Assert.Contains(refused.Faults, f => f.StartsWith($"Bay 1 is taken by job card {first} (", StringComparison.Ordinal));
        Assert.Contains("The next free slot is 2026-03-11 10:05 in Bay 2 with TN.", refused.Faults);
        Assert.Equal(
            (TestWorkshop.Bay1.ToString(), TestWorkshop.TechnicianResource.ToString(), "08:15", "2026-03-11"),
            (ByHand(refused, "Input.BayId"), ByHand(refused, "Input.TechnicianId"), ByHand(refused, "Input.Time"), ByHand(refused, "Input.Day")));
        Assert.True(Box(refused, TestEngines.ValveCheck).IsChecked);
        Assert.Equal("valve-clearance-adjustment:likely", Choice(refused, TestEngines.Adjustment));

        var later = await pages.Send(refused, "/book", new() { ["Input.Time"] = "10:05" }, "#book");
        Assert.Equal(HttpStatusCode.Redirect, later.Status);
        Assert.Equal(Likelihood.Likely, await app.Look(db => (
            from i in db.JobCardItems join c in db.JobCards on i.JobCardNumber equals c.Number
            where c.MotorcycleId == motorcycle && i.ServiceItemCode == TestEngines.Adjustment select i.Likelihood).SingleAsync(Ct)));
    }

    [Fact]
    public async Task A_slot_is_booked_by_one_button_with_what_was_wished()
    {
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var shown = await pages.Open($"/book?motorcycle={motorcycle}&shown=true&take={TestEngines.OilService}:certain&why=true"
            + $"&Wishes.NotBeforeDay=2026-03-16&Wishes.BayId={TestWorkshop.Bay2}");
        var booked = await pages.Send(shown, "/book", [], "form.slot");

        Assert.Contains("2026-03-16 08:00 in Bay 2 with", Squeezed(shown), StringComparison.Ordinal);
        Assert.Contains("The motorcycle does not come before 2026-03-16 00:00.", Squeezed(shown), StringComparison.Ordinal);
        Assert.Equal("2026-03-16", shown.ValueOf("Wishes.NotBeforeDay"));
        Assert.Equal(HttpStatusCode.Redirect, booked.Status);
        Assert.Equal(TestWorkshop.Bay2, await app.Look(db => (
            from w in db.VisitWishes join c in db.JobCards on w.JobCardNumber equals c.Number
            where c.MotorcycleId == motorcycle select w.BayId).SingleAsync(Ct)));
    }

    [Fact]
    public async Task Every_fault_of_the_form_leads_to_a_field_that_is_on_the_page()
    {
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var shown = await pages.Open($"/book?motorcycle={motorcycle}&shown=true&take={TestEngines.OilService}:certain&day=2026-03-12");

        var empty = await pages.Send(shown, "/book", new() { ["Input.Time"] = "25:00" }, "#book");

        Assert.Equal(HttpStatusCode.BadRequest, empty.Status);
        Assert.Contains("Start of the work is \"25:00\": a time of day such as 09:30 is allowed.", empty.Faults);
        var early = await pages.Send(empty, "/book", Typed(TestWorkshop.Bay1, "07:00"), "#book");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, early.Status);
        Assert.All(empty.Html.QuerySelectorAll(".faults a").Concat(early.Html.QuerySelectorAll(".faults a")),
            a => Assert.True(early.Html.GetElementById(a.GetAttribute("href")![1..]) is not null, a.GetAttribute("href")));
    }

    [Fact]
    public async Task A_closed_day_offers_no_booking_and_says_why()
    {
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var page = await pages.Open($"/book?motorcycle={motorcycle}&shown=true&take={TestEngines.OilService}:certain&day=2026-03-08");

        Assert.Contains("Closed on 2026-03-08 (Sunday).", Squeezed(page), StringComparison.Ordinal);
        Assert.Null(page.Html.QuerySelector("#book"));
    }

    [Fact]
    public async Task A_technician_who_lacks_a_skill_cannot_be_chosen()
    {
        await app.AddResource(ResourceKind.Technician, "ZZ", capabilities: "wheels");
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var page = await pages.Open($"/book?motorcycle={motorcycle}&shown=true&take={TestEngines.ValveCheck}:certain&day=2026-03-12");

        var option = page.Html.QuerySelectorAll("[name='Input.TechnicianId'] option").Single(o => o.TextContent.StartsWith("ZZ", StringComparison.Ordinal));
        Assert.Equal(("ZZ lacks valve work", true), (option.TextContent, option.HasAttribute("disabled")));
    }

    [Fact]
    public async Task Without_a_motorcycle_the_page_finds_one()
    {
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle("SEEK 7");
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var page = await pages.Open("/book?search=seek");

        Assert.NotNull(page.Html.QuerySelector($"main a[href='/book?motorcycle={motorcycle}']"));
    }

    [Fact]
    public async Task A_technician_does_not_get_the_page()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        Assert.Equal(HttpStatusCode.Forbidden, (await pages.Open("/book")).Status);
    }

    [Fact]
    public async Task The_api_proposes_the_same()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        var proposal = await (await advisor.GetAsync(new Uri(
            $"/api/v1/bookings/proposal?motorcycleId={motorcycle}&item={TestEngines.ValveCheck}:certain&item={TestEngines.Adjustment}:possible", UriKind.Relative), Ct)).Json();
        var wrong = await advisor.GetAsync(new Uri($"/api/v1/bookings/proposal?motorcycleId={motorcycle}&item=oil:soon", UriKind.Relative), Ct);

        Assert.Equal((130, 120), (proposal.GetProperty("bookedMinutes").GetInt32(), proposal.GetProperty("possibleMinutes").GetInt32()));
        Assert.Equal(["valve-clearance-check", "valve-clearance-adjustment"],
            proposal.GetProperty("taken").EnumerateArray().Select(t => t.GetProperty("code").GetString()));
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
        Assert.Contains("is \"oil:soon\": code:likelihood, where likelihood is certain, likely, possible, is allowed.", await wrong.Sentence(), StringComparison.Ordinal);
    }

    private static Dictionary<string, string?> Typed(Guid bay, string time) => new()
    {
        ["Input.BayId"] = bay.ToString(), ["Input.TechnicianId"] = TestWorkshop.TechnicianResource.ToString(), ["Input.Time"] = time,
    };

    private static AngleSharp.Html.Dom.IHtmlInputElement Box(TestPage page, string code) =>
        (AngleSharp.Html.Dom.IHtmlInputElement)page.Html.GetElementById($"take-{code}")!;

    private static string Choice(TestPage page, string code) =>
        ((AngleSharp.Html.Dom.IHtmlSelectElement)page.Html.GetElementById($"take-{code}")!).Value!;

    /// <summary>What stands in a field of the form in which bay, technician and time are chosen by hand.</summary>
    private static string? ByHand(TestPage page, string name) => page.Html.QuerySelector($"#book [name='{name}']") switch
    {
        IHtmlInputElement input => input.Value,
        IHtmlSelectElement select => select.Value,
        _ => null,
    };

    private static string Squeezed(TestPage page) => string.Join(' ', page.MainText.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private Task<int> Due(Guid motorcycle, string code, LocalDate on) => app.Look(async db =>
    {
        await db.DueItems.Where(d => d.MotorcycleId == motorcycle && d.ServiceItemCode == code).ExecuteDeleteAsync(Ct);
        db.DueItems.Add(new DueItem
        {
            MotorcycleId = motorcycle, ServiceItemCode = code, Name = code, ExpectedOn = on, ComesOn = on, Advice = DueAdvice.First, ComputedAt = app.Clock.Now,
        });
        return await db.SaveChangesAsync(Ct);
    });

    private Task<int> Forecast(Guid motorcycle, int leavesLimitsKm) => app.Look(async db =>
    {
        var (engine, valve) = (
            await db.EngineFittings.Where(f => f.MotorcycleId == motorcycle).Select(f => f.EngineId).SingleAsync(Ct), new ValveKey(1, Side.Exhaust, 1));
        await db.ClearanceForecasts.Where(f => f.EngineId == engine && f.Valve == valve).ExecuteDeleteAsync(Ct);
        db.ClearanceForecasts.Add(new ClearanceForecast
        {
            EngineId = engine,
            Valve = valve, Lobe = 1, ComputedAt = app.Clock.Now, Readings = 3,
            LeavesLimitsEarliestAt = Distance.FromKilometres(leavesLimitsKm),
        });
        return await db.SaveChangesAsync(Ct);
    });
}
