using CsCheck;
using NodaTime;
using Workshop.Domain.Stores;
using Xunit;

namespace Workshop.Domain.Tests.Stores;

public class GivingWayTests
{
    private static readonly Gen<List<HeldForCard>> Cards =
        Gen.Select(Gen.Int[0, 5], Gen.Int[1, 9]).List[0, 8].Select(cards => cards
            .Select((c, index) => new HeldForCard(1000 + index, Instant.FromUnixTimeSeconds(c.Item1 * 3600), c.Item2)).ToList());

    [Fact]
    public void Whoever_comes_last_gives_way_first()
    {
        var early = new HeldForCard(7, Instant.FromUnixTimeSeconds(1), 2);
        var late = new HeldForCard(3, Instant.FromUnixTimeSeconds(2), 2);

        Assert.Equal([late with { Quantity = 2 }, early with { Quantity = 1 }], GivingWay.Take(3, [early, late]));
        Assert.Empty(GivingWay.Take(0, [early]));
    }

    [Fact]
    public void As_much_is_taken_as_is_asked_for_or_held_and_from_nobody_more_than_he_has() =>
        Gen.Select(Cards, Gen.Int[0, 60]).Sample((cards, quantity) =>
        {
            var taken = GivingWay.Take(quantity, cards);

            Assert.Equal(Math.Min(quantity, cards.Sum(c => c.Quantity)), taken.Sum(t => t.Quantity));
            Assert.All(taken, t => Assert.InRange(t.Quantity, 1, cards.Single(c => c.CardNumber == t.CardNumber).Quantity));

            // Nobody gives way while somebody who comes later keeps something.
            var kept = cards.Where(c => taken.Where(t => t.CardNumber == c.CardNumber).Sum(t => t.Quantity) < c.Quantity).ToList();
            Assert.True(taken.Count == 0 || kept.Count == 0 || kept.Max(k => k.StartsAt) <= taken.Min(t => t.StartsAt));
        });
}
