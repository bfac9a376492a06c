using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

public class LateRunningTests
{
    private static readonly Instant Eight = Instant.FromUtc(2026, 3, 2, 7, 0);
    private static readonly Guid Bay = Id(1);
    private static readonly Guid OtherBay = Id(2);
    private static readonly Guid Anna = Id(3);
    private static readonly Guid Ben = Id(4);
    private static readonly Guid Jig = Id(5);

    /// <summary>Eight to twelve and one to five, for three weeks.</summary>
    private static readonly Interval[] Hours = [.. Enumerable.Range(0, 21).SelectMany(day => new[] { Span(day * 24, (day * 24) + 4), Span((day * 24) + 5, (day * 24) + 9) })];

    private static readonly Dictionary<Guid, IReadOnlyList<Interval>> Working = new() { [Anna] = Hours, [Ben] = Hours };

    [Fact]
    public void Work_that_was_begun_an_hour_late_pushes_the_next_in_its_bay_and_that_one_the_next_of_its_technician()
    {
        var first = Visit(1, 0, 3, Bay, Anna) with { CameAt = At(0), Begun = [(VisitPhase.Work, At(1))] };
        var next = Visit(2, 3, 4, Bay, Ben);
        var afterwards = Visit(3, 5, 7, OtherBay, Ben);

        var found = LateRunning.Of([afterwards, next, first], Working, null, At(1.5));

        var late = Assert.Single(found.Late);
        Assert.Equal((1, LateReason.BegunLate, VisitPhase.Work, Duration.FromHours(1)), (late.Number, late.Reason, late.Phase, late.Late));
        Assert.Equal(At(4), late.ExpectedReady);
        Assert.Collection(
            found.Pushed,
            p =>
            {
                Assert.Equal((2, 1, Bay), (p.Number, p.By, p.ResourceId));
                Assert.Equal((At(3), At(4)), (p.PlannedAt, p.ExpectedAt));

                // From twelve on there is a break: the hour of work ends at two.
                Assert.Equal(At(6), p.ExpectedReady);
            },
            p => Assert.Equal((3, 2, Ben, At(6)), (p.Number, p.By, p.ResourceId, p.ExpectedAt)));
    }

    [Fact]
    public void A_phase_beyond_its_end_is_expected_to_end_now_and_pushes_by_the_minute_who_is_here_for_its_place()
    {
        var over = Visit(1, 0, 2, Bay, Anna) with { CameAt = At(0), Begun = [(VisitPhase.Work, At(0))] };
        var next = Visit(2, 2, 3, Bay, Anna) with { CameAt = At(1) };

        Assert.Empty(LateRunning.Of([over, next], Working, null, At(2)).Pushed);
        var found = LateRunning.Of([over, next], Working, null, At(2) + Duration.FromMinutes(17));

        Assert.Equal(LateReason.RunsOver, Assert.Single(found.Late).Reason);
        Assert.Equal(Duration.FromMinutes(17), Assert.Single(found.Pushed).Pushed);
    }

    [Fact]
    public void A_motorcycle_that_has_not_come_soaks_from_now_on_and_one_with_time_to_spare_is_not_late()
    {
        var soaks = new VisitToday
        {
            Number = 1,
            Planned = [new(VisitPhase.Arrival, Span(0, 1)), new(VisitPhase.ColdSoak, Span(1, 24)), new(VisitPhase.Work, Span(24, 26))],
            Takes = [new(VisitPhase.Work, Bay, Span(24, 26)), new(VisitPhase.Work, Anna, Span(24, 26))],
            Soak = Duration.FromHours(8),
        };
        var next = Visit(2, 26, 27, Bay, Ben);

        var inTime = LateRunning.Of([soaks, next], Working, null, At(9));
        var late = LateRunning.Of([soaks, next], Working, null, At(20));

        Assert.Equal(LateReason.NotHere, Assert.Single(inTime.Late).Reason);
        Assert.Empty(inTime.Pushed);
        Assert.Equal(At(26), Assert.Single(inTime.Late).ExpectedReady);
        Assert.Equal(At(20 + 1 + 8 + 2), Assert.Single(late.Late).ExpectedReady);
        Assert.Equal(At(20 + 1 + 8 + 2), Assert.Single(late.Pushed).ExpectedAt);
    }

    [Fact]
    public void An_engine_that_ran_again_delays_its_work_until_it_is_cold()
    {
        var soaks = new VisitToday
        {
            Number = 1,
            Planned = [new(VisitPhase.ColdSoak, Span(-10, 0)), new(VisitPhase.Work, Span(0, 2))],
            Takes = [new(VisitPhase.Work, Bay, Span(0, 2)), new(VisitPhase.Work, Anna, Span(0, 2))],
            CameAt = At(-10),
            ColdFrom = At(1),
        };

        var found = LateRunning.Of([soaks, Visit(2, 2, 3, OtherBay, Anna)], Working, null, At(-1));

        Assert.Equal((LateReason.SoaksLonger, At(3)), (Assert.Single(found.Late).Reason, found.Late[0].ExpectedReady));
        Assert.Equal((Anna, At(3)), (Assert.Single(found.Pushed).ResourceId, found.Pushed[0].ExpectedAt));
    }

    [Fact]
    public void An_engine_that_waits_open_holds_its_bay_until_then_and_for_what_is_left()
    {
        var waits = Visit(1, 0, 4, Bay, Anna) with
        {
            CameAt = At(0), Begun = [(VisitPhase.Work, At(0))], Waits = (At(1), At(24)),
        };
        var next = Visit(2, 5, 6, Bay, Ben);

        var found = LateRunning.Of([waits, next], Working, null, At(2));

        Assert.Equal(LateReason.Waits, Assert.Single(found.Late).Reason);
        Assert.Equal(At(27), Assert.Single(found.Pushed).ExpectedAt);
    }

    [Fact]
    public void A_tool_that_is_needed_longer_holds_back_who_needs_it_next_only()
    {
        var late = Visit(1, 0, 2, Bay, Anna, Jig) with { CameAt = At(0), Begun = [(VisitPhase.Work, At(1))] };

        var found = LateRunning.Of([late, Visit(2, 2, 3, OtherBay, Ben, Jig), Visit(3, 3.5, 4, OtherBay, Ben)], Working, null, At(1));

        Assert.Equal((2, Jig), (Assert.Single(found.Pushed, p => p.Number == 2).Number, found.Pushed[0].ResourceId));
    }

    [Fact]
    public void Nobody_fetches_a_motorcycle_while_the_doors_are_shut()
    {
        var late = new VisitToday
        {
            Number = 1,
            Planned = [new(VisitPhase.Work, Span(5, 8)), new(VisitPhase.HandOver, Span(8, 8.5))],
            Takes = [new(VisitPhase.Work, Bay, Span(5, 8)), new(VisitPhase.Work, Anna, Span(5, 8))],
            CameAt = At(5),
            Begun = [(VisitPhase.Work, At(6))],
        };

        Assert.Equal(At(9.5), Assert.Single(LateRunning.Of([late], Working, null, At(7)).Late).ExpectedReady);
        Assert.Equal(At(24.5), Assert.Single(LateRunning.Of([late], Working, Hours, At(7)).Late).ExpectedReady);
    }

    [Fact]
    public void Nobody_late_nobody_pushed()
    {
        Plans.Sample(
            visits =>
            {
                var found = LateRunning.Of(visits, Working, null, At(0));
                Assert.Empty(found.Late);
                Assert.Empty(found.Pushed);
            },
            iter: 200);
    }

    [Fact]
    public void More_lateness_never_means_less_effect()
    {
        Gen.Select(Plans, Gen.Int[0, 300], Gen.Int[0, 300]).Sample(
            (visits, one, more) =>
            {
                var less = Pushes(Delay(visits, one));
                var longer = Pushes(Delay(visits, one + more));
                Assert.All(less, l => Assert.True(longer.GetValueOrDefault(l.Key) >= l.Value, $"{l.Key}: {l.Value}, then {longer.GetValueOrDefault(l.Key)}"));
            },
            iter: 200);

        static Dictionary<int, Instant> Pushes(VisitToday[] visits) =>
            LateRunning.Of(visits, Working, null, At(0)).Pushed.ToDictionary(p => p.Number, p => p.ExpectedReady);
    }

    [Fact]
    public void Who_shares_nothing_with_a_late_visit_directly_or_through_others_is_never_pushed()
    {
        Gen.Select(Plans, Gen.Int[1, 600]).Sample(
            (visits, minutes) =>
            {
                var reached = new HashSet<Guid>(visits[0].Takes.Select(t => t.ResourceId));
                var touched = new HashSet<int> { visits[0].Number };
                while (visits.Where(v => v.Takes.Any(t => reached.Contains(t.ResourceId))).Any(v => touched.Add(v.Number)))
                {
                    reached.UnionWith(visits.Where(v => touched.Contains(v.Number)).SelectMany(v => v.Takes).Select(t => t.ResourceId));
                }

                Assert.All(LateRunning.Of(Delay(visits, minutes), Working, null, At(0)).Pushed, p => Assert.Contains(p.Number, touched));
            },
            iter: 200);
    }

    /// <summary>
    /// Up to eight visits of one to three hours, each after all that were planned before it with the same bay, technician or
    /// tool; all begin after the test's now.
    /// </summary>
    private static readonly Gen<VisitToday[]> Plans =
        Gen.Select(Gen.Int[1, 3], Gen.Int[10, 15], Gen.Int[20, 22], Gen.Int[30, 36], Gen.Int[0, 3]).Array[2, 8].Select(draws =>
        {
            var free = new Dictionary<Guid, double>();
            return draws.Select((draw, index) =>
            {
                var (hours, bay, technician, tool, gap) = draw;
                Guid[] resources = [Id(bay), Id(technician), Id(tool)];
                var from = resources.Max(r => free.GetValueOrDefault(r)) + gap;
                foreach (var resource in resources)
                {
                    free[resource] = from + hours;
                }

                return Visit(100 + index, from, from + hours, resources);
            }).ToArray();
        });

    /// <summary>The first visit was begun so many minutes late; the clock stands still.</summary>
    private static VisitToday[] Delay(VisitToday[] visits, int minutes) =>
    [
        visits[0] with
        {
            CameAt = At(0), Begun = [(VisitPhase.Work, visits[0].Planned[0].Span.Start + Duration.FromMinutes(minutes))],
        },
        .. visits[1..],
    ];

    private static VisitToday Visit(int number, double from, double until, params Guid[] resources) => new()
    {
        Number = number,
        Planned = [new PhaseSpan(VisitPhase.Work, Span(from, until))],
        Takes = [.. resources.Select(r => new Take(VisitPhase.Work, r, Span(from, until)))],
    };

    private static Instant At(double hours) => Eight + Duration.FromMinutes((long)(hours * 60));

    private static Interval Span(double from, double until) => new(At(from), At(until));

    private static Guid Id(int number) => new(number, 0, 0, new byte[8]);
}
