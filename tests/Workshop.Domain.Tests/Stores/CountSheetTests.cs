using CsCheck;
using NodaTime;
using Workshop.Domain.Stores;
using Xunit;

namespace Workshop.Domain.Tests.Stores;

public class CountSheetTests
{
    private static readonly Guid Count = Guid.CreateVersion7();
    private static readonly Part Ring = new() { Id = Guid.CreateVersion7(), Code = "ring", Name = "Ring", Kind = PartKind.SealingRing, Unit = PartUnit.Piece };

    [Fact]
    public void The_last_line_of_a_part_and_lot_holds()
    {
        var lot = Guid.CreateVersion7();

        var standing = CountSheet.Standing([Line(1, 4, 5), Line(3, 5, 5), Line(2, 3, 5), Line(4, 1, 1, lot: lot)]);

        Assert.Equal([3, 4], standing.Select(l => l.Number).Order());
    }

    [Fact]
    public void A_difference_needs_its_reason_and_a_count_needs_a_line()
    {
        Assert.Equal("nothing-counted", CountSheet.Refuse([])!.Code);
        Assert.Equal("Ring: 5 by the books, 4 counted, and nobody said why.", CountSheet.Refuse([Now(Line(1, 4, 5), 5)])!.Sentence);
        Assert.Null(CountSheet.Refuse([Now(Line(1, 5, 5), 5), Now(Line(2, 4, 5, CountDifferenceReason.Unknown), 5)]));
    }

    [Fact]
    public void What_moved_since_the_counting_is_not_undone() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[0, 20], Gen.Int[-20, 20]).Sample((counted, expected, since) =>
        {
            var part = Now(Line(1, counted, expected, CountDifferenceReason.Unknown), expected + Math.Max(since, -expected));

            // Had the books been right as it was counted, the same movements would have led to the same.
            Assert.Equal(counted + Math.Max(since, -expected), part.After);
            Assert.Equal(part.After < 0, CountSheet.Refuse([part]) is not null);
        });

    [Fact]
    public void What_is_reserved_beyond_what_will_be_there_is_told()
    {
        Assert.Equal(2, Now(Line(1, 3, 5, CountDifferenceReason.Unknown), 5, reserved: 5).ReservedTooMuch);
        Assert.Equal(0, Now(Line(1, 3, 5, CountDifferenceReason.Unknown), 5, reserved: 3).ReservedTooMuch);
    }

    private static CountedPart Now(StockCountLine line, decimal onHand, decimal reserved = 0) => new(line, Ring, null, onHand, reserved);

    private static StockCountLine Line(int number, decimal counted, decimal expected, CountDifferenceReason? reason = null, Guid? lot = null) => new()
    {
        Id = Guid.CreateVersion7(), CountId = Count, Number = number, PartId = Ring.Id, LotId = lot, Counted = counted, Expected = expected, Reason = reason,
        CountedBy = Guid.CreateVersion7(), CountedAt = Instant.FromUnixTimeSeconds(0),
    };
}
