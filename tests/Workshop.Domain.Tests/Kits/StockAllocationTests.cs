using CsCheck;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Kits;

public class StockAllocationTests
{
    private static readonly Guid Part = Id(1);

    /// <summary>Any shelves, those where more is reserved than lies there among them.</summary>
    private static readonly Gen<ShelfStock[]> Shelves = Gen.Select(Gen.Int[0, 5], Gen.Int[0, 4], Gen.Int[0, 3]).Array[0, 3]
        .Select(all => all.Select((s, i) => Shelf(i + 1, s.Item1, s.Item2 + s.Item3, s.Item3)).ToArray());

    [Fact]
    public void A_reservation_takes_what_is_free_and_no_more()
    {
        var changes = StockAllocation.Reserve(5, [Shelf(1, 3, 1, 0), Shelf(2, 2, 1, 0)]);

        Assert.Equal([(Id(1), 2m), (Id(2), 1m)], changes.Select(c => (c.PlaceId, c.ReservedChange)));
        Assert.All(changes, c => Assert.Equal((MovementKind.Reserved, 0m), (c.Kind, c.OnHandChange)));
    }

    [Fact]
    public void A_reservation_shrinks_to_what_is_wanted()
    {
        var change = Assert.Single(StockAllocation.Reserve(1, [Shelf(1, 3, 3, 3)]));

        Assert.Equal((MovementKind.Released, -2m), (change.Kind, change.ReservedChange));
    }

    [Fact]
    public void Parts_are_issued_from_where_they_are_reserved_and_the_rest_is_released()
    {
        var (changes, missing) = StockAllocation.Settle(1, [Shelf(1, 9, 0, 0), Shelf(2, 3, 2, 2)]);

        Assert.Equal(0, missing);
        Assert.Equal(
            [(MovementKind.Issued, Id(2), -1m, -1m), (MovementKind.Released, Id(2), 0m, -1m)],
            changes.Select(c => (c.Kind, c.PlaceId, c.OnHandChange, c.ReservedChange)));
    }

    [Fact]
    public void What_was_used_is_used_though_another_card_had_reserved_it()
    {
        var (changes, missing) = StockAllocation.Settle(1, [Shelf(1, 1, 1, 0)]);

        Assert.Equal(0, missing);
        Assert.Equal((MovementKind.Issued, -1m, 0m), (changes[0].Kind, changes[0].OnHandChange, changes[0].ReservedChange));
    }

    [Fact]
    public void More_than_is_there_is_missing()
    {
        Assert.Equal(2, StockAllocation.Settle(3, [Shelf(1, 1, 1, 1)]).Missing);
        Assert.Equal(3, StockAllocation.Settle(3, []).Missing);
    }

    [Fact]
    public void A_card_is_short_of_what_others_hold()
    {
        Assert.Equal(0, StockAllocation.ShortOf(2, [Shelf(1, 3, 2, 1)]));
        Assert.Equal(1, StockAllocation.ShortOf(2, [Shelf(1, 3, 2, 0)]));
        Assert.Equal(2, StockAllocation.ShortOf(2, []));
    }

    [Fact]
    public void No_decision_takes_a_balance_below_zero_or_touches_another_cards_reservation() =>
        Gen.Select(Shelves, Gen.Int[0, 12]).Sample((shelves, quantity) =>
        {
            foreach (var changes in new[] { StockAllocation.Reserve(quantity, shelves), StockAllocation.Settle(quantity, shelves).Changes })
            {
                foreach (var shelf in shelves)
                {
                    var own = changes.Where(c => c.PlaceId == shelf.PlaceId).ToList();
                    Assert.True(shelf.OnHand + own.Sum(c => c.OnHandChange) >= 0);
                    Assert.True(shelf.ReservedForCard + own.Sum(c => c.ReservedChange) >= 0);
                }
            }
        });

    [Fact]
    public void A_reservation_reaches_what_is_wanted_or_all_that_is_free_and_then_rests() =>
        Gen.Select(Shelves, Gen.Int[0, 12]).Sample((shelves, wanted) =>
        {
            var after = Apply(shelves, StockAllocation.Reserve(wanted, shelves));
            var held = shelves.Sum(s => s.ReservedForCard);

            Assert.Equal(Math.Min(wanted, held + shelves.Sum(s => s.Free)), after.Sum(s => s.ReservedForCard));
            Assert.Empty(StockAllocation.Reserve(wanted, after));
        });

    [Fact]
    public void A_settlement_drops_the_whole_reservation_of_the_card() =>
        Gen.Select(Shelves, Gen.Int[0, 12]).Sample((shelves, quantity) =>
        {
            var (changes, missing) = StockAllocation.Settle(quantity, shelves);
            var after = Apply(shelves, changes);

            Assert.Equal(0, after.Sum(s => s.ReservedForCard));
            Assert.Equal(quantity - missing, shelves.Sum(s => s.OnHand) - after.Sum(s => s.OnHand));
            Assert.Equal(Math.Max(0, quantity - shelves.Sum(s => s.OnHand)), missing);
        });

    [Fact]
    public void What_expires_first_is_reserved_picked_and_used_first_and_what_has_expired_never()
    {
        ShelfStock[] shelves = [Lot(1, 5, 20), Lot(2, 5, 10), Lot(3, 5, 1) with { Expired = true }, Shelf(4, 5, 0, 0)];

        Assert.Equal([Id(2), Id(1)], StockAllocation.Reserve(8, shelves).Select(c => c.PlaceId));
        Assert.Equal([Id(2), Id(1)], StockAllocation.Pick(8, shelves).Changes.Select(c => c.PlaceId));
        Assert.Equal([Id(2), Id(1), Id(4)], StockAllocation.Settle(13, shelves).Changes.Select(c => c.PlaceId));
        Assert.Equal(1, StockAllocation.Pick(16, shelves).Missing);
        Assert.Equal(1, StockAllocation.Settle(16, shelves).Missing);
        Assert.Equal(1, StockAllocation.ShortOf(16, shelves));
    }

    [Fact]
    public void A_reservation_leaves_a_lot_that_has_expired_since()
    {
        var changes = StockAllocation.Reserve(2, [Shelf(1, 2, 2, 2) with { Expired = true }, Shelf(2, 2, 0, 0)]);

        Assert.Equal([(MovementKind.Released, Id(1), -2m), (MovementKind.Reserved, Id(2), 2m)], changes.Select(c => (c.Kind, c.PlaceId, c.ReservedChange)));
    }

    [Fact]
    public void A_pick_takes_what_is_reserved_for_the_card_then_what_is_free_and_nothing_of_others()
    {
        var (changes, missing) = StockAllocation.Pick(4, [Shelf(1, 3, 2, 0), Shelf(2, 2, 2, 2)]);

        Assert.Equal(1, missing);
        Assert.Equal([(Id(2), -2m, -2m), (Id(1), -1m, 0m)], changes.Select(c => (c.PlaceId, c.OnHandChange, c.ReservedChange)));
    }

    [Fact]
    public void What_was_not_used_goes_back_to_where_it_came_from_and_the_longest_lasting_first()
    {
        ShelfStock[] shelves = [Lot(1, 0, 10) with { IssuedToCard = 2 }, Lot(2, 0, 20) with { IssuedToCard = 2 }];

        Assert.Equal(
            [(MovementKind.Returned, Id(2), 2m), (MovementKind.Returned, Id(1), 1m)],
            StockAllocation.Settle(1, shelves).Changes.Select(c => (c.Kind, c.PlaceId, c.OnHandChange)));
    }

    [Fact]
    public void A_card_that_is_settled_has_taken_what_was_used_and_holds_nothing() =>
        Gen.Select(Shelves, Gen.Int[0, 12], Gen.Int[0, 12], Gen.Int[0, 12]).Sample((shelves, reserved, picked, used) =>
        {
            var before = Apply(shelves, StockAllocation.Reserve(reserved, shelves));
            var bench = Apply(before, StockAllocation.Pick(picked, before).Changes);
            var (changes, missing) = StockAllocation.Settle(used, bench);
            var after = Apply(bench, changes);

            Assert.Equal(used - missing, after.Sum(s => s.IssuedToCard));
            Assert.Equal(0, after.Sum(s => s.ReservedForCard));
            Assert.Equal(shelves.Sum(s => s.OnHand), after.Sum(s => s.OnHand + s.IssuedToCard));
            Assert.All(after, s => Assert.True(s is { OnHand: >= 0, IssuedToCard: >= 0, Reserved: >= 0 }));
        });

    [Fact]
    public void A_pick_never_takes_what_others_have_reserved() =>
        Gen.Select(Shelves, Gen.Int[0, 12]).Sample((shelves, quantity) =>
        {
            var (changes, missing) = StockAllocation.Pick(quantity, shelves);
            var after = Apply(shelves, changes);

            Assert.Equal(quantity - missing, shelves.Sum(s => s.OnHand) - after.Sum(s => s.OnHand));
            foreach (var (was, now) in shelves.Zip(after))
            {
                var others = was.Reserved - was.ReservedForCard;
                Assert.Equal(others, now.Reserved - now.ReservedForCard);
                Assert.True(now.OnHand >= Math.Min(others, was.OnHand - Math.Min(was.ReservedForCard, was.OnHand)));
            }
        });

    private static ShelfStock[] Apply(ShelfStock[] shelves, IReadOnlyList<StockChange> changes) => [.. StockAllocation.After(shelves, changes)];

    private static ShelfStock Lot(int place, decimal onHand, int lastDay) =>
        Shelf(place, onHand, 0, 0) with { LotId = Id(100 + place), ExpiresOn = new NodaTime.LocalDate(2026, 5, lastDay) };

    private static ShelfStock Shelf(int place, decimal onHand, decimal reserved, decimal own) =>
        new(Part, Id(place), onHand, reserved, own);

    private static Guid Id(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]);
}
