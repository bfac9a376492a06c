using CsCheck;
using NodaTime;
using Workshop.Domain.Kits;

namespace Workshop.Domain.Tests.Kits;

public class ShortagesTests
{
    private static readonly LocalDate Monday = new(2026, 3, 2);

    [Fact]
    public void Whoever_starts_first_gets_what_is_free_and_the_next_waits_for_the_delivery()
    {
        var awaited = Shortages.Of([Wanted(2, day: 2, 2), Wanted(1, day: 1, 1)], free: 1, [Coming(5, 1), Coming(8, 3)], null);

        var only = Assert.Single(awaited);
        Assert.Equal((2, 2m, Monday.PlusDays(8)), (only.Card, only.NeededShort, only.ComesOn!.Value));
    }

    [Fact]
    public void What_no_delivery_brings_comes_when_it_is_ordered_today_or_nobody_knows_when()
    {
        Assert.Equal(Monday.PlusDays(4), Assert.Single(Shortages.Of([Wanted(1, 1, 2)], 0, [Coming(2, 1)], Monday.PlusDays(4))).ComesOn);
        Assert.Null(Assert.Single(Shortages.Of([Wanted(1, 1, 2)], 0, [Coming(2, 1)], null)).ComesOn);
    }

    [Fact]
    public void What_only_lies_ready_is_named_and_delays_nothing()
    {
        var only = Assert.Single(Shortages.Of([Wanted(1, 1, 0, ready: 2)], 1, [], null));

        Assert.Equal((0m, 1m, (LocalDate?)null), (only.NeededShort, only.ReadyShort, only.ComesOn));
    }

    [Fact]
    public void What_is_free_is_shared_out_whole_and_once() =>
        Gen.Select(Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4], Gen.Int[0, 9]).Array[0, 5], Gen.Int[0, 12], Gen.Select(Gen.Int[0, 9], Gen.Int[1, 4]).Array[0, 4])
            .Sample((visits, free, deliveries) =>
            {
                var wanted = visits.Select((v, i) => Wanted(i, v.Item3, v.Item1, v.Item2)).ToList();
                var coming = deliveries.Select(d => Coming(d.Item1, d.Item2)).ToList();
                var awaited = Shortages.Of(wanted, free, coming, null);

                Assert.Equal(
                    Math.Max(0, wanted.Sum(w => w.NeededShort + w.ReadyShort) - free), awaited.Sum(a => a.NeededShort + a.ReadyShort));
                if (awaited.Sum(a => a.NeededShort + a.ReadyShort) <= coming.Sum(c => c.Quantity))
                {
                    Assert.All(awaited, a => Assert.Equal(a.NeededShort > 0, a.ComesOn is not null));
                }

                // More on the shelf delays nobody longer.
                var richer = Shortages.Of(wanted, free + 1, coming, null).ToDictionary(a => a.Card);
                Assert.All(awaited, a => Assert.True(!richer.TryGetValue(a.Card, out var b) || b.NeededShort <= a.NeededShort));
            });

    private static PartWanted Wanted(int card, int day, decimal needed, decimal ready = 0) =>
        new(card, Instant.FromUtc(2026, 3, 2, 8, 0) + Duration.FromDays(day), needed, ready);

    private static PartComing Coming(int inDays, decimal quantity) => new(Monday.PlusDays(inDays), quantity);
}
