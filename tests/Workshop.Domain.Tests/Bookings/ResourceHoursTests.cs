using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

public class ResourceHoursTests
{
    private static readonly Instant Midnight = Instant.FromUtc(2026, 3, 2, 0, 0);
    private static readonly Resource Bay = Of(1, ResourceKind.Bay);
    private static readonly Resource First = Of(2, ResourceKind.Technician);
    private static readonly Resource Second = Of(3, ResourceKind.Technician);
    private static readonly Interval Day = Hours(0, 24);

    [Fact]
    public void A_bay_that_is_kept_overnight_is_held_beside_its_hours()
    {
        var use = Use(Bay, [Hours(8, 17)], [new HeldBy(1, Bay.Id, VisitPhase.Work, Hours(15, 24))], []);

        Assert.Equal((9.0, 2.0, 7.0, 7.0), (use.Available.TotalHours, use.Held.TotalHours, use.HeldBeside.TotalHours, use.Idle.TotalHours));
        Assert.Equal(2 / 9.0, use.HeldShare);
    }

    [Fact]
    public void What_was_sold_counts_for_whoever_had_most_of_the_work()
    {
        HeldBy[] held =
        [
            new(1, First.Id, VisitPhase.Work, Hours(8, 9)), new(1, Second.Id, VisitPhase.Work, Hours(9, 12)),
            new(1, First.Id, VisitPhase.TestRide, Hours(12, 16)), new(2, First.Id, VisitPhase.Work, Hours(16, 17)),
        ];

        var uses = ResourceHours.Of(Day, [(First, [Hours(8, 17)]), (Second, [Hours(8, 17)])], held, new Dictionary<int, int> { [1] = 150, [2] = 30 });

        Assert.Equal([30.0, 150.0], uses.Select(u => u.Sold.TotalMinutes));
        Assert.Equal([6.0, 3.0], uses.Select(u => u.Held.TotalHours));
        Assert.Equal(30 / 360.0, uses[0].SoldPerHeld);
    }

    [Fact]
    public void Only_the_period_is_counted_and_nothing_is_no_share()
    {
        var use = Use(First, [], [new HeldBy(1, First.Id, VisitPhase.Work, Hours(-4, 2))], []);

        Assert.Equal((0.0, 0.0, 2.0), (use.Available.TotalHours, use.Held.TotalHours, use.HeldBeside.TotalHours));
        Assert.Null(use.HeldShare);
        Assert.Equal(0, use.SoldPerHeld);
    }

    [Fact]
    public void The_load_is_what_is_taken_on_average_and_Erlang_is_asked_about_it()
    {
        HeldBy[] held =
        [
            new(1, Bay.Id, VisitPhase.Work, Hours(8, 10)), new(1, Bay.Id, VisitPhase.SealantCure, Hours(10, 11)),
            new(2, First.Id, VisitPhase.Work, Hours(9, 15)),
        ];

        var needed = BaysNeeded.Of(held, [Hours(8, 17)], bays: 2);

        Assert.Equal((9.0, 2, 1.0, 4.5, 2), (needed.OpenHours, needed.Holdings, needed.Load, needed.MeanHours, needed.MostAtOnce));
        Assert.Equal([2 / 9.0, 5 / 9.0, 2 / 9.0], needed.Counts.Take(3).Select(c => c.Share), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(1, needed.Counts.Sum(c => c.Share), 1e-12);
        // c = 2, a = 1: 1/3 waits, Lq = 1/3 (table of Erlang's formulas); two visits in nine hours, so each waits 1.5 h.
        Assert.Equal((1 / 3.0, 1.5), (needed.Counts[2].Waits, needed.Counts[2].MeanWaitHours!.Value), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9);
        Assert.Null(needed.Counts[1].MeanWaitHours);
        Assert.Equal(3, needed.EnoughBays);
    }

    [Fact]
    public void Nothing_taken_needs_no_bay() => Assert.Equal(
        (0, 0.0, (int?)null), BaysNeeded.Of([], [Hours(8, 17)], 2) is var none ? (none.MostAtOnce, none.Load, none.EnoughBays) : default);

    private static ResourceUse Use(Resource resource, Interval[] there, HeldBy[] held, Dictionary<int, int> sold) =>
        ResourceHours.Of(Day, [(resource, there)], held, sold).Single();

    private static Interval Hours(int from, int until) => new(Midnight + Duration.FromHours(from), Midnight + Duration.FromHours(until));

    private static Resource Of(int id, ResourceKind kind) => new() { Id = new Guid(id, 0, 0, new byte[8]), Kind = kind, Name = $"{kind} {id}" };
}
