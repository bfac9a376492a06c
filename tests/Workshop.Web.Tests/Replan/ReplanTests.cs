using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Replan;

/// <summary>Each test has a week of its own, so that none moves another's visits.</summary>
public sealed class ReplanTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Route = "/api/v1/bookings/replan";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_week_that_could_be_over_earlier_is_proposed_as_differences_and_nothing_moves_yet()
    {
        var (first, second) = (await Book(2026, 3, 12, 9), await Book(2026, 3, 13, 14));
        var manager = await app.As(Roles.Manager);

        var proposal = await Propose(manager, "2026-W11");

        Assert.Equal([first, second], Numbers(proposal).Order());
        Assert.True(Moment(proposal, "endsProposed") < Moment(proposal, "endsToday"));
        Assert.True(proposal.GetProperty("proven").GetBoolean());
        // Whoever does it, it is the same work: 30 min, 15 min to run warm, 20 min to ride, twice.
        var loads = proposal.GetProperty("loads").EnumerateArray().ToList();
        Assert.Equal((130, 130), (loads.Sum(l => l.GetProperty("todayMinutes").GetInt32()), loads.Sum(l => l.GetProperty("proposedMinutes").GetInt32())));
        Assert.Equal(0, await app.Look(db => db.JobCards.Where(c => c.Number == first || c.Number == second).SumAsync(c => c.PlanRevision, Ct)));
    }

    [Fact]
    public async Task A_part_of_a_proposal_is_accepted_and_the_rest_stays()
    {
        var (first, second) = (await Book(2026, 3, 19, 9), await Book(2026, 3, 20, 14));
        var manager = await app.As(Roles.Manager);
        var proposal = await Propose(manager, "2026-W12");
        var move = Move(proposal, second);

        var accepted = await Accept(manager, "2026-W12", move);

        Assert.Equal(HttpStatusCode.OK, accepted.StatusCode);
        var card = await app.Look(db => db.JobCards.AsNoTracking().SingleAsync(c => c.Number == second, Ct));
        Assert.Equal((1, Moment(Proposed(proposal, second), "readyAt")), (card.PlanRevision, card.EndsAt));
        Assert.Equal(0, await app.Look(db => db.JobCards.Where(c => c.Number == first).Select(c => c.PlanRevision).SingleAsync(Ct)));
        var live = await app.Look(db => db.Occupancies.AsNoTracking().Where(o => o.JobCardNumber == second && o.Live).ToListAsync(Ct));
        Assert.All(live, o => Assert.InRange(o.Span.End, card.StartsAt, card.EndsAt));
    }

    [Fact]
    public async Task A_visit_that_goes_where_another_stands_is_refused_alone_and_moves_with_it()
    {
        var (first, second) = (await Book(2026, 3, 23, 9), await Book(2026, 3, 23, 13));
        var manager = await app.As(Roles.Manager);
        var (toSecond, toFirst) = (await Swap(first, second), await Swap(second, first));

        var alone = await Accept(manager, "2026-W13", toFirst);
        var both = await Accept(manager, "2026-W13", toFirst, toSecond);
        var again = await Accept(manager, "2026-W13", toFirst, toSecond);

        Assert.Equal(HttpStatusCode.Conflict, alone.StatusCode);
        Assert.Contains($"Job card {second} would take Bay 1, which job card {first} has from 2026-03-23 09:00 on: if job card {first} moves in the same proposal, accept both; else leave job card {second} where it is.", await alone.Sentence(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, both.StatusCode);
        Assert.Equal(Instant.FromUtc(2026, 3, 23, 8, 0), await app.Look(db => db.JobCards.Where(c => c.Number == second).Select(c => c.StartsAt).SingleAsync(Ct)));
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Contains($"Job card {first} was changed meanwhile", await again.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_no_longer_keeps_to_the_hours_is_refused_in_words()
    {
        var card = await Book(2026, 3, 31, 9);
        var manager = await app.As(Roles.Manager);
        var move = await Swap(card, card, Duration.FromHours(9));

        var refused = await Accept(manager, "2026-W14", move);

        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Contains($"Job card {card} no longer fits there", await refused.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_technician_who_was_made_absent_is_said_and_his_visits_go_to_another()
    {
        var card = await Book(2026, 4, 8, 9);
        var other = await app.AddResource(ResourceKind.Technician, "KV", capabilities: "valve work");
        var span = new Interval(Instant.FromUtc(2026, 4, 7, 0, 0), Instant.FromUtc(2026, 4, 11, 0, 0));
        await app.Look(async db =>
        {
            db.Absences.Add(new Absence
            {
                Id = NewId.At(app.Clock), ResourceId = TestWorkshop.TechnicianResource, Span = span, Reason = AbsenceReason.Training,
                EnteredBy = TestWorkshop.Manager, EnteredAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync(Ct);
        });
        var manager = await app.As(Roles.Manager);

        var proposal = await Propose(manager, "2026-W15");
        var accepted = await Accept(manager, "2026-W15", Move(proposal, card));

        Assert.Equal([card], proposal.GetProperty("brokenToday").EnumerateArray().Select(b => b.GetInt32()));
        Assert.Equal(HttpStatusCode.OK, accepted.StatusCode);
        Assert.Contains(other, await app.Look(db => db.Occupancies.Where(o => o.JobCardNumber == card && o.Live).Select(o => o.ResourceId).ToListAsync(Ct)));
    }

    [Fact]
    public async Task The_page_shows_the_differences_and_moves_what_is_ticked()
    {
        var (first, second) = (await Book(2026, 4, 16, 9), await Book(2026, 4, 17, 14));
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var asked = await pages.Open("/diary/replan?week=2026-W16");
        var page = await pages.Open("/diary/replan?week=2026-W16&look=true");
        page.Html.QuerySelector($"input[name=accept][value='{first}']")!.RemoveAttribute("checked");
        var moved = await pages.Send(page, "/diary/replan", [], "#accept");

        Assert.NotNull(asked.Html.QuerySelector("form[method=get] button"));
        Assert.Contains("What it gains", page.MainText, StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.Redirect, "/diary/week?week=2026-W16"), (moved.Status, moved.Location));
        Assert.Equal([(first, 0), (second, 1)], await app.Look(async db => (await db.JobCards.Where(c => c.Number == first || c.Number == second)
            .OrderBy(c => c.Number).Select(c => new { c.Number, c.PlanRevision }).ToListAsync(Ct)).Select(c => (c.Number, c.PlanRevision)).ToArray()));
    }

    [Fact]
    public async Task Nothing_ticked_a_week_that_is_none_and_another_role_are_refused()
    {
        var manager = await app.As(Roles.Manager);

        var nothing = await Accept(manager, "2026-W20");
        var week = await manager.GetAsync($"{Route}?week=2026-W54", Ct);
        var advisor = await (await app.As(Roles.Advisor)).GetAsync(Route, Ct);

        Assert.Contains("tick at least one visit", await nothing.Sentence(), StringComparison.Ordinal);
        Assert.Equal("week is \"2026-W54\": a week of that year such as 2026-W49 is allowed.", await week.Sentence());
        Assert.Equal(HttpStatusCode.Forbidden, advisor.StatusCode);
    }

    private static async Task<JsonElement> Propose(HttpClient manager, string week)
    {
        var answer = await manager.GetAsync($"{Route}?week={week}&seconds=5", Ct);
        answer.EnsureSuccessStatusCode();
        return await answer.Json();
    }

    private static Task<HttpResponseMessage> Accept(HttpClient manager, string week, params object[] moves) =>
        manager.PostAsJsonAsync(Route, new { week, moves }, Ct);

    private static IEnumerable<int> Numbers(JsonElement proposal) =>
        proposal.GetProperty("moves").EnumerateArray().Select(m => m.GetProperty("number").GetInt32());

    private static JsonElement MoveOf(JsonElement proposal, int number) =>
        proposal.GetProperty("moves").EnumerateArray().Single(m => m.GetProperty("number").GetInt32() == number);

    private static JsonElement Proposed(JsonElement proposal, int number) => MoveOf(proposal, number).GetProperty("proposed");

    /// <summary>As the proposal has it, sent back.</summary>
    private static object Move(JsonElement proposal, int number)
    {
        var (move, to) = (MoveOf(proposal, number), Proposed(proposal, number));
        return new
        {
            number,
            planRevision = move.GetProperty("planRevision").GetInt32(),
            bayId = to.GetProperty("bayId").GetGuid(),
            technicianId = to.GetProperty("technicianId").GetGuid(),
            toolIds = to.GetProperty("toolIds"),
            phases = to.GetProperty("phases"),
        };
    }

    private static Instant Moment(JsonElement of, string name) =>
        NodaTime.Text.InstantPattern.ExtendedIso.Parse(of.GetProperty(name).GetString()!).Value;

    /// <summary>A move of one card to where another of the same items stands.</summary>
    private Task<object> Swap(int number, int to, Duration later = default) => app.Look<object>(async db =>
    {
        var phases = await db.PlannedPhases.AsNoTracking().Where(p => p.JobCardNumber == to).ToListAsync(Ct);
        return new
        {
            number,
            planRevision = 0,
            bayId = TestWorkshop.Bay1,
            technicianId = TestWorkshop.TechnicianResource,
            phases = phases.Select(p => new
            {
                phase = JsonNamingPolicy.CamelCase.ConvertName(p.Phase.ToString()), from = (p.Span.Start + later).ToString(), until = (p.Span.End + later).ToString(),
            }).ToArray(),
        };
    });

    private async Task<int> Book(int year, int month, int day, int hour)
    {
        var advisor = await app.As(Roles.Advisor);
        var zone = DateTimeZoneProviders.Tzdb["Europe/Vienna"];
        var at = new LocalDateTime(year, month, day, hour, 0).InZoneLeniently(zone).ToInstant();
        return await (await advisor.Book(await advisor.AddMotorcycle(), at)).Number();
    }
}
