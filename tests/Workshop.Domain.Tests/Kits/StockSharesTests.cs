using CsCheck;
using NodaTime;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Kits;

public class StockSharesTests
{
    private static readonly LocalDate Monday = new(2026, 3, 2);

    [Fact]
    public void Whoever_begins_first_gets_what_is_free_and_the_next_waits_for_the_delivery()
    {
        var shares = StockShares.Of([Keeps(1)], [Comes(5, 1), Comes(8, 3)], [Wants(2, 2, 2), Wants(1, 1, 1)]);

        Assert.Equal([(1, 0m, 0m, null), (2, 2m, 2m, (LocalDate?)Monday.PlusDays(8))], shares.Select(s => (s.Need.JobCardNumber, s.NotHere, s.ShortOnDay, s.EnoughFrom)));
    }

    [Fact]
    public void What_comes_in_time_is_not_here_yet_and_still_not_short_on_the_day()
    {
        var only = Assert.Single(StockShares.Of([], [Comes(3, 2)], [Wants(1, 4, 2)]));

        Assert.Equal((2m, 0m, 0m), (only.NotHere, only.ShortOnDay, only.NotOnOrder));
    }

    [Fact]
    public void What_lies_ready_for_one_visit_delays_no_other_unless_it_is_reserved_for_it()
    {
        var open = StockShares.Of([Keeps(1)], [], [Wants(1, 1, 0, ready: 1), Wants(2, 2, 1)]);
        var reserved = StockShares.Of([new LotThere(null, 1, 0, 0)], [], [Wants(1, 1, 0, ready: 1, held: 1), Wants(2, 2, 1)]);

        Assert.Equal([(0m, 1m), (0m, 0m)], open.Select(s => (s.NotHere, s.ReadyNotHere)));
        Assert.Equal([(0m, 0m), (1m, 0m)], reserved.Select(s => (s.NotHere, s.ReadyNotHere)));
    }

    [Fact]
    public void What_expires_before_the_day_is_for_an_earlier_visit_only()
    {
        var shares = StockShares.Of([new LotThere(Monday.PlusDays(3), 2, 2, 0), Keeps(1)], [], [Wants(1, 3, 1), Wants(2, 4, 2)]);

        Assert.Equal([0m, 1m], shares.Select(s => s.ShortOnDay));
        Assert.Equal(new LotQuantity(Monday.PlusDays(3), 1), Assert.Single(shares[0].FromStores));
        Assert.Equal(new LotQuantity(null, 1), Assert.Single(shares[1].FromStores));
    }

    [Fact]
    public void What_expires_before_the_visit_is_said()
    {
        LotQuantity[] there = [new(Monday, 4), new(Monday.PlusDays(1), 1), new(Monday.PlusDays(5), 2), new(null, 5)];

        Assert.Equal(
            "12 there, of which 4 (to be used by 2026-03-02) and 1 (to be used by 2026-03-03) expire before the visit", LotWords.Ends(PartUnit.Piece, there, Monday.PlusDays(5)));
        Assert.Null(LotWords.Ends(PartUnit.Piece, there, Monday));
    }

    [Fact]
    public void Where_others_took_what_is_reserved_the_visit_that_begins_last_does_without() => Assert.Equal(
        [0m, 1m],
        StockShares.Of([new LotThere(null, 1, 0, 1)], [], [Wants(7, 4, 1, held: 1), Wants(9, 2, 1, held: 1)]).Select(s => s.NotHere));

    [Fact]
    public void What_is_promised_to_a_visit_never_rests_on_a_lot_that_has_expired_on_its_day() => Cases.Sample((lots, coming, needs) =>
        Assert.All(StockShares.Of(lots, coming, needs), share =>
        {
            Assert.All(share.FromStores, lot => Assert.True(lot.ExpiresOn is not { } last || last >= share.Need.On));
            Assert.Equal(share.Need.Needed + share.Need.HaveReady, share.FromStores.Sum(l => l.Quantity) + share.NotHere + share.ReadyNotHere);
            Assert.True(share.NotOnOrder <= share.ShortOnDay && share.ShortOnDay <= share.NotHere);
        }));

    [Fact]
    public void Nothing_is_shared_out_twice() => Cases.Sample((lots, coming, needs) =>
    {
        var shares = StockShares.Of(lots, coming, needs);
        Assert.All(lots, lot => Assert.True(shares.SelectMany(s => s.FromStores).Where(l => l.ExpiresOn == lot.ExpiresOn).Sum(l => l.Quantity) <= lot.OnHand));
        Assert.True(shares.Sum(s => s.NotHere - s.NotOnOrder) <= coming.Sum(c => c.Quantity));
    });

    [Fact]
    public void Nobody_goes_without_what_nobody_took_and_lasts_until_its_day() => Cases.Sample((lots, coming, needs) =>
    {
        BookedNeed[] unreserved = [.. needs.Select(n => n with { Held = [] })];
        LotThere[] free = [.. lots.Select(l => l with { Free = l.OnHand, Gone = 0 })];
        var shares = StockShares.Of(free, coming, unreserved);
        Assert.All(free.Where(lot => shares.SelectMany(s => s.FromStores).Where(l => l.ExpiresOn == lot.ExpiresOn).Sum(l => l.Quantity) < lot.OnHand), lot =>
            Assert.All(shares.Where(s => lot.LastsUntil(s.Need.On)), s => Assert.Equal(0, s.NotHere + s.ReadyNotHere)));
    });

    /// <summary>Lots that end, lots that keep, some of it reserved, some of that gone; deliveries; visits.</summary>
    private static Gen<(LotThere[] Lots, Coming[] Coming, BookedNeed[] Needs)> Cases =>
        Gen.Select(
            Gen.Int[0, 9].Array[3],
            Gen.Select(Gen.Int[0, 9], Gen.Int[1, 4]).Select((day, q) => Comes(day, q)).Array[0, 4],
            Gen.Select(Gen.Int[0, 9], Gen.Int[0, 4], Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[0, 2]).Array[0, 6])
        .Select((onHand, coming, visits) =>
        {
            LocalDate?[] ends = [Monday.PlusDays(2), Monday.PlusDays(6), null];
            var needs = visits.Select((v, i) => Wants(i + 1, v.Item1, v.Item2, v.Item3) with
            {
                Held = v.Item4 == 0 ? [] : [new LotQuantity(ends[(i + v.Item5) % 3], v.Item4)],
            }).ToArray();
            var lots = ends.Select((end, i) =>
            {
                var reserved = needs.SelectMany(n => n.Held).Where(h => h.ExpiresOn == end).Sum(h => h.Quantity);
                return new LotThere(end, onHand[i], Math.Max(0, onHand[i] - reserved), Math.Max(0, reserved - onHand[i]));
            }).ToArray();
            return (lots, coming, needs);
        });

    private static LotThere Keeps(decimal quantity) => new(null, quantity, quantity, 0);

    private static Coming Comes(int day, decimal quantity) => new(Monday.PlusDays(day), quantity, Monday.PlusDays(day - 1));

    private static BookedNeed Wants(int card, int day, decimal needed, decimal ready = 0, decimal held = 0) => new(
        card, Instant.FromUtc(2026, 3, 2, 8, 0) + Duration.FromDays(day), Monday.PlusDays(day), needed, ready, held > 0 ? [new LotQuantity(null, held)] : []);
}
