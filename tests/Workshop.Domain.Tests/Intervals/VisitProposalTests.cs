using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Tests.Bookings;

namespace Workshop.Domain.Tests.Intervals;

/// <summary>The motorcycle has done 20,000 km in 1000 days, 20 a day for certain; what is due is 100 days and 2000 km apart.</summary>
public class VisitProposalTests
{
    private static readonly LocalDate Start = new(2023, 1, 1);

    private static readonly LocalDate Last = Start.PlusDays(1_000);

    private static readonly TogetherWithin Within = new(Distance.FromKilometres(500), 20);

    [Fact]
    public void What_falls_due_within_the_tolerance_is_done_together()
    {
        var proposal = Propose([Item("oil", 21_000), Item("filter", 21_500), Item("plugs", 21_501)]);

        Assert.Equal(["oil First", "filter Together", "plugs Later"], Said(proposal));
        Assert.Equal(Last.PlusDays(50), proposal.ComesOn);
    }

    /// <summary>The example of the page: the check in 2000 km is done now, since the tank is off and the covers are open.</summary>
    [Fact]
    public void What_needs_the_same_opening_is_brought_forward_when_it_gives_away_little()
    {
        var proposal = Propose(
        [
            Item("plugs", 21_000, accesses: ["tank", "covers"]),
            Item("check", 23_000, every: 24_000, accesses: ["tank", "covers"], minutes: 90),
            Item("chain", 26_000, every: 24_000, accesses: []),
        ]);

        Assert.Equal(["plugs First", "check BroughtForward", "chain Later"], Said(proposal));
        Assert.Equal(40, proposal.Items[1].SavesMinutes);
        Assert.Equal((10 + 90 + 40, 40), (proposal.LabourMinutes, proposal.SavesMinutes));
    }

    [Fact]
    public void What_would_give_away_more_than_a_quarter_of_its_interval_waits() => Assert.Equal(
        ["plugs First", "check Later"],
        Said(Propose([Item("plugs", 21_000, accesses: ["tank"]), Item("check", 23_000, every: 7_900, accesses: ["tank", "covers"])])));

    [Fact]
    public void One_that_is_brought_forward_opens_the_way_for_the_next() => Assert.Equal(
        ["plugs First", "check BroughtForward", "radiator BroughtForward"],
        Said(Propose(
        [
            Item("plugs", 21_000, accesses: ["tank"]),
            Item("check", 23_000, every: 24_000, accesses: ["tank", "covers"]),
            Item("radiator", 23_100, every: 24_000, accesses: ["covers", "radiator"]),
        ])));

    /// <summary>Nobody came for 200 days, which are 4000 km by its rate.</summary>
    [Fact]
    public void What_has_become_due_while_nobody_came_is_done_together()
    {
        var proposal = Propose([Item("oil", 21_000), Item("plugs", 23_900), Item("chain", 24_501)], today: Last.PlusDays(200));

        Assert.Equal(["oil First", "plugs Together", "chain Later"], Said(proposal));
        Assert.Equal(Last.PlusDays(50), proposal.ComesOn);
    }

    [Fact]
    public void What_was_put_off_comes_up_on_its_day_and_is_not_brought_forward()
    {
        var until = Last.PlusDays(300);
        var proposal = Propose(
            [Item("plugs", 21_000, accesses: ["tank"]), Item("check", 20_100, every: 24_000, accesses: ["tank", "covers"])],
            putOff: ("check", until));

        Assert.Equal(["plugs First", "check Later"], Said(proposal));
        Assert.Equal(until, proposal.Items[1].Entry.ComesOn);
        Assert.Equal(Last.PlusDays(5), proposal.Items[1].Entry.Next.ExpectedOn);
    }

    [Fact]
    public void A_bigger_item_swallows_what_it_contains_when_that_is_not_late_by_more_than_the_tolerance()
    {
        var big = Item("big", 24_000) with { Includes = ["small"] };

        Assert.Equal(["big First", "small Included"], Said(Propose([big, Item("small", 24_000)])));
        Assert.Equal(["big First", "small Included"], Said(Propose([big, Item("small", 23_500)])));
        Assert.Equal(["big First", "small Included"], Said(Propose([big, Item("small", 30_000)])));
        Assert.Equal(["small First", "big Later"], Said(Propose([big, Item("small", 23_499)])));
    }

    [Fact]
    public void Doing_the_big_one_counts_as_doing_all_that_it_contains_through_others_too()
    {
        ServiceItem[] items =
        [
            Item("big", 24_000) with { Includes = ["middle"] }, Item("middle", 24_000) with { Includes = ["small"] }, Item("small", 24_000),
        ];
        var done = new OdometerPoint(Start.PlusDays(500), Distance.FromKilometres(9_000));

        var last = LastDone.Of([("big", done), ("small", done with { On = Start.PlusDays(100) })], items);

        Assert.Equal(["big", "middle", "small"], last.Keys.Order(StringComparer.Ordinal));
        Assert.All(last.Values, point => Assert.Equal(done, point));
        Assert.Equal(["middle", "small"], LastDone.Of([("middle", done)], items).Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_does_not_apply_is_not_due()
    {
        var only = Item("recall", 21_000) with { OnlyFor = new Applicability { FromModelYear = 2030 } };

        Assert.Null(VisitProposal.Of(Subject([only], null), DueEntry.Of(Subject([only], null)), Last));
    }

    [Fact]
    public void Special_tools_are_those_of_what_is_done_now()
    {
        var proposal = Propose([Item("sync", 21_000, tools: ["gauges"]), Item("timing", 29_000, tools: ["degree wheel"])]);

        Assert.Equal(["gauges"], proposal.SpecialTools);
    }

    private static IEnumerable<string> Said(VisitProposal proposal) => proposal.Items.Select(i => $"{i.Entry.Item.Code} {i.Advice}");

    private static VisitProposal Propose(ServiceItem[] items, (string Code, LocalDate Until)? putOff = null, LocalDate? today = null)
    {
        var subject = Subject(items, putOff);
        return VisitProposal.Of(subject, DueEntry.Of(subject), today ?? Last)!;
    }

    /// <summary>Due at so many km: last done one interval before.</summary>
    private static ServiceItem Item(
        string code, int dueAt, int every = 0, string[]? accesses = null, string[]? tools = null, int minutes = 10) =>
        new(code, code, ServiceItemKind.Routine, minutes, new Provenance("Invented for tests", "1"))
        {
            Interval = every == 0
                ? new ServiceInterval { Every = Distance.FromKilometres(dueAt) }
                : new ServiceInterval { Every = Distance.FromKilometres(every), First = Distance.FromKilometres(dueAt) },
            Accesses = accesses ?? [],
            SpecialTools = tools ?? [],
        };

    private static DueSubject Subject(ServiceItem[] items, (string Code, LocalDate Until)? putOff)
    {
        // With a first occurrence the interval that is given away is that one; done once, it is the usual one.
        var start = new OdometerPoint(Start, Distance.Zero);
        var done = items.Where(i => i.Interval!.First is not null).ToDictionary(
            i => i.Code, i => new OdometerPoint(Start.PlusDays(1), i.Interval!.First!.Value - i.Interval.Every!.Value));
        return new DueSubject(
            TestItems.Specification with { ServiceItems = items },
            new MotorcycleFacts(2023, OdometerUnit.Kilometres, RidingUse.Normal, []),
            start,
            OdometerTrack.Of(start, [new OdometerPoint(Last, Distance.FromKilometres(20_000))]),
            new RidingRate(Distance.FromKilometres(20), 0, 0, RidingSeason.None, RateBasis.OwnReadings, 5),
            done,
            Within)
        {
            PutOffs = putOff is { } off
                ? new Dictionary<string, PutOff>
                {
                    [off.Code] = new()
                    {
                        Id = Guid.Empty, MotorcycleId = Guid.Empty, ServiceItemCode = off.Code, Until = off.Until, Reason = "Spring",
                        DecidedOn = Last, DecidedBy = Guid.Empty, DecidedAt = default,
                    },
                }
                : [],
        };
    }
}
