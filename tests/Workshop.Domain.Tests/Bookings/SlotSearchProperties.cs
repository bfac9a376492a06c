using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>The search against the slow one of <see cref="MinuteByMinute"/>, on workshops made up across changes of the clocks in two zones.</summary>
public class SlotSearchProperties
{
    private const int Count = 4;
    private const int Apart = 45;

    [Fact]
    public void No_start_is_earlier_than_what_is_found_and_what_is_found_fits() =>
        MadeUpFloor.Gen.Sample(made =>
        {
            var slow = new MinuteByMinute(made);
            var found = SlotSearch.Find(new PhasePlanner(made.Floor(), made.Shape, made.Needs, made.Terms), new SlotQuery(Count, Apart));

            var expected = new List<int>();
            for (int? next = slow.First(0); next is { } start && expected.Count < Count; next = slow.First(start + Apart))
            {
                expected.Add(start);
            }

            Assert.Equal(expected, found.Slots.Select(s => slow.MinuteOf(s.Plan.WorkStartsAt)));
            return true;
        }, iter: 300, seed: "0N0XIzNsQ0O2", threads: 1);

    [Fact]
    public void A_slot_takes_nothing_that_is_taken_and_gives_every_phase_its_time() =>
        MadeUpFloor.Gen.Sample(made =>
        {
            var found = SlotSearch.Find(new PhasePlanner(made.Floor(), made.Shape, made.Needs, made.Terms), new SlotQuery(Count, Apart));
            foreach (var slot in found.Slots)
            {
                Assert.Equal("", string.Join("; ", Faults(made, slot)));
            }

            return true;
        }, iter: 300, seed: "0N0XIzNsQ0O2", threads: 1);

    [Fact]
    public void What_is_found_can_be_planned_by_hand_alike() =>
        MadeUpFloor.Gen.Sample(made =>
        {
            var floor = made.Floor();
            var planner = new PhasePlanner(floor, made.Shape, made.Needs, made.Terms);
            foreach (var slot in SlotSearch.Find(planner, new SlotQuery(Count, Apart)).Slots)
            {
                var again = planner.Plan(
                    floor.Find(ResourceKind.Bay, slot.Bay.Id)!, floor.Find(ResourceKind.Technician, slot.Technician.Id)!, slot.Plan.WorkStartsAt);
                Assert.Empty(again.Obstacles);
                Assert.Equal(slot.Plan.Takes, again.Plan!.Takes);
            }

            return true;
        }, iter: 150, seed: "0N0XIzNsQ0O2", threads: 1);

    private static IEnumerable<string> Faults(MadeUpFloor made, Slot slot)
    {
        var (plan, shape) = (slot.Plan, made.Shape);
        foreach (var take in plan.Takes)
        {
            var resource = made.Resources.Single(r => r.Resource.Id == take.ResourceId);
            if (resource.Taken.Concat(resource.Absences).Any(t => t.Start < take.Span.End && take.Span.Start < t.End))
            {
                yield return $"{resource.Resource.Name} is not free for {take.Phase}";
            }
        }

        foreach (var one in plan.Takes.GroupBy(t => t.ResourceId).Select(g => g.OrderBy(t => t.Span.Start).ToList()))
        {
            if (one.Zip(one.Skip(1)).Any(pair => pair.First.Span.End > pair.Second.Span.Start))
            {
                yield return "the visit takes a resource twice at once";
            }
        }

        var worked = plan.Takes.Where(t => t.Phase == VisitPhase.Work && t.ResourceId == slot.Technician.Id).Sum(t => t.Span.Duration.TotalMinutes);
        if (worked != shape.WorkMinutes)
        {
            yield return $"{worked} minutes are worked, not {shape.WorkMinutes}";
        }

        if (plan.Phases.Zip(plan.Phases.Skip(1)).Any(p => p.First.Span.End > p.Second.Span.Start))
        {
            yield return "phases overlap";
        }

        if (shape.Soak > Duration.Zero && plan.Phases.Single(p => p.Phase == VisitPhase.ColdSoak).Span.Duration < shape.Soak)
        {
            yield return "the soak is too short";
        }

        var bay = plan.Takes.Where(t => t.ResourceId == slot.Bay.Id && t.Phase >= VisitPhase.Work).OrderBy(t => t.Span.Start).ToList();
        if (bay[0].Span.Start != plan.WorkStartsAt || bay.Zip(bay.Skip(1)).Any(p => p.First.Span.End != p.Second.Span.Start))
        {
            yield return "the bay is left between the work and the end";
        }

        if (plan.ArrivesAt < made.Terms.NotBefore || plan.ReadyAt > made.Terms.ReadyBy || plan.WorkStartsAt < made.Terms.PartsFrom)
        {
            yield return "a wish is not kept";
        }
    }
}
