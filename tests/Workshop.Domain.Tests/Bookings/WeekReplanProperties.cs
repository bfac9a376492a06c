using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Tests.Bookings;

public class WeekReplanProperties
{
    private const string Seed = "0000KPyDj2x3";
    private static readonly ScheduleEffort Effort = ScheduleEffort.Usual with { Seconds = 2 };

    private static readonly Gen<(MadeUpFloor Floor, ReplanWeek Week)> Weeks =
        from made in MadeUpFloor.Gen
        from others in MadeUpFloor.Gen.Array[1, 4]
        from wishes in Gen.Int[0, 5].Array[4]
        select (made, WeekOf(made, others, wishes));

    [Fact]
    public void Every_proposal_is_feasible_keeps_the_wishes_and_is_never_worse() => Weeks.Sample(
        week =>
        {
            var proposal = WeekReplan.Propose(week.Week, Effort);

            Assert.Null(new PlanTally(week.Floor).FirstFault(proposal.Visits.Select(v => (v.Visit, v.Proposed))));
            Assert.Empty(proposal.BrokenToday);
            Assert.True(proposal.EndsProposed <= proposal.EndsToday || proposal.Visits.Count == 0);
            Assert.True(
                proposal.EndsProposed < proposal.EndsToday || Unevenness(proposal, l => l.ProposedMinutes) <= Unevenness(proposal, l => l.TodayMinutes) + 1e-3);
            Assert.Equal(week.Week.Visits.Select(v => v.Number).Order(), proposal.Visits.Select(v => v.Visit.Number).Order());
        },
        seed: Seed, iter: 40, threads: 1);

    [Fact]
    public void The_plans_that_stand_pass_the_same_tally() => Weeks.Sample(
        week => Assert.Null(new PlanTally(week.Floor).FirstFault(week.Week.Visits.Select(v => (v, v.Today)))),
        seed: Seed, iter: 40);

    [Fact]
    public void A_plan_that_is_pushed_over_another_is_caught_by_the_tally() => Weeks.Sample(
        week =>
        {
            foreach (var visit in week.Week.Visits)
            {
                var twice = week.Week.Visits.Select(v => (v, v.Today)).Append((visit with { Number = 999 }, visit.Today));

                Assert.NotNull(new PlanTally(week.Floor).FirstFault(twice));
            }
        },
        seed: Seed, iter: 40);

    /// <summary>What was shown is what is written when it is accepted, take by take.</summary>
    [Fact]
    public void A_proposal_that_is_accepted_gives_the_plans_that_were_shown() => Weeks.Sample(
        week =>
        {
            var moved = WeekReplan.Propose(week.Week, Effort).Visits.Where(v => v.Moves).ToList();
            var others = week.Week.Visits.Where(v => moved.TrueForAll(m => m.Visit != v)).SelectMany(v => v.Today.Takes);

            var accepted = WeekReplan.Accept(
                week.Week with { Visits = [.. moved.Select(m => m.Visit)], Floor = WeekReplan.With(week.Week.Floor, others) },
                [.. moved.Select(m => m.Proposed)]);

            Assert.All(moved.Zip(accepted), pair =>
            {
                Assert.Equal(pair.First.Proposed.Phases, pair.Second!.Phases);
                Assert.Equal(pair.First.Proposed.Takes.ToHashSet(), pair.Second.Takes.ToHashSet());
            });
        },
        seed: Seed, iter: 25, threads: 1);

    /// <summary>Of the weeks above some can be bettered: else the property would be kept by doing nothing.</summary>
    [Fact]
    public void Some_weeks_are_bettered()
    {
        var bettered = 0;
        Weeks.Sample(
            week => bettered += WeekReplan.Propose(week.Week, Effort) is { Moved.Count: > 0 } p && p.EndsProposed < p.EndsToday ? 1 : 0,
            seed: Seed, iter: 15, threads: 1);

        Assert.True(bettered >= 5, $"{bettered} of 15");
    }

    private static double Unevenness(ReplanProposal proposal, Func<ReplannedLoad, int> minutes)
    {
        var shares = proposal.Loads.Where(l => l.AvailableMinutes > 0).Select(l => minutes(l) / (double)l.AvailableMinutes).ToList();
        return shares.Count == 0 ? 0 : shares.Max() - shares.Min();
    }

    /// <summary>Visits booked one after the other, each at the latest of the first few slots: there is something to better.</summary>
    private static ReplanWeek WeekOf(MadeUpFloor made, MadeUpFloor[] others, int[] wishes)
    {
        var (floor, visits) = (made.Floor(), new List<ReplanVisit>());
        for (var i = 0; i < others.Length; i++)
        {
            var (shape, needs, wish) = (others[i].Shape, others[i].Needs, wishes[i]);
            var terms = new PlanTerms { Now = made.Terms.Now, NotBefore = wish == 0 ? made.Terms.NotBefore : null, PartsFrom = wish == 1 ? made.Terms.PartsFrom : null };
            var around = WeekReplan.With(floor, visits.SelectMany(v => v.Today.Takes));
            var found = SlotSearch.Find(new PhasePlanner(around, shape, needs, terms), new SlotQuery(4, 300)).Slots;
            if (found.Count > 0)
            {
                var slot = found[^1];
                visits.Add(new ReplanVisit(
                    i + 1, shape, needs, terms with { ReadyBy = wish == 2 ? slot.Plan.ReadyAt : null },
                    wish == 3 ? slot.Technician.Id : null, wish == 4 ? slot.Bay.Id : null, slot.Plan));
            }
        }

        return new ReplanWeek(made.Window, floor, visits);
    }
}
