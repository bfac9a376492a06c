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
        var (changes, missing) = StockAllocation.Issue(1, [Shelf(1, 9, 0, 0), Shelf(2, 3, 2, 2)]);

        Assert.Equal(0, missing);
        Assert.Equal(
            [(MovementKind.Issued, Id(2), -1m, -1m), (MovementKind.Released, Id(2), 0m, -1m)],
            changes.Select(c => (c.Kind, c.PlaceId, c.OnHandChange, c.ReservedChange)));
    }

    [Fact]
    public void What_was_used_is_used_though_another_card_had_reserved_it()
    {
        var (changes, missing) = StockAllocation.Issue(1, [Shelf(1, 1, 1, 0)]);

        Assert.Equal(0, missing);
        Assert.Equal((MovementKind.Issued, -1m, 0m), (changes[0].Kind, changes[0].OnHandChange, changes[0].ReservedChange));
    }

    [Fact]
    public void More_than_is_there_is_missing()
    {
        Assert.Equal(2, StockAllocation.Issue(3, [Shelf(1, 1, 1, 1)]).Missing);
        Assert.Equal(3, StockAllocation.Issue(3, []).Missing);
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
            foreach (var changes in new[] { StockAllocation.Reserve(quantity, shelves), StockAllocation.Issue(quantity, shelves).Changes })
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
    public void An_issue_drops_the_whole_reservation_of_the_card() =>
        Gen.Select(Shelves, Gen.Int[0, 12]).Sample((shelves, quantity) =>
        {
            var (changes, missing) = StockAllocation.Issue(quantity, shelves);
            var after = Apply(shelves, changes);

            Assert.Equal(0, after.Sum(s => s.ReservedForCard));
            Assert.Equal(quantity - missing, shelves.Sum(s => s.OnHand) - after.Sum(s => s.OnHand));
            Assert.Equal(Math.Max(0, quantity - shelves.Sum(s => s.OnHand)), missing);
        });

    private static ShelfStock[] Apply(ShelfStock[] shelves, IReadOnlyList<StockChange> changes) =>
        [.. shelves.Select(s =>
        {
            var own = changes.Where(c => c.PlaceId == s.PlaceId).ToList();
            var reserved = own.Sum(c => c.ReservedChange);
            return s with
            {
                OnHand = s.OnHand + own.Sum(c => c.OnHandChange),
                Reserved = s.Reserved + reserved,
                ReservedForCard = s.ReservedForCard + reserved,
            };
        })];

    private static ShelfStock Shelf(int place, decimal onHand, decimal reserved, decimal own) =>
        new(Part, Id(place), onHand, reserved, own);

    private static Guid Id(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]);
}
