using NodaTime;
using Workshop.Domain.Stores;
using Xunit;

namespace Workshop.Domain.Tests.Stores;

public class ScanLineTests
{
    private const int ShelfLife = 12;

    private static readonly Part Ring = PartOf("ring-14x18", PartKind.SealingRing);
    private static readonly Part Shim = PartOf("shim-9", PartKind.Shim);
    private static readonly ScannedThing OfRing = new ScannedThing.OfPart(Ring, 50);
    private static readonly ScannedThing Nothing = new ScannedThing.Unknown();

    [Fact]
    public void Place_part_and_quantity_make_a_line()
    {
        var line = After(new ScanLine(), null, ("P001", new ScannedThing.OfPlace("P001")), ("40063", OfRing), ("7", Nothing));

        Assert.Equal(ScanStep.Ready, line.Next(null));
        Assert.Equal(("P001", "ring-14x18", 7m), (line.PlaceCode, line.PartCode, line.Quantity));
    }

    [Fact]
    public void The_same_package_once_more_is_one_more_package_and_an_empty_scan_takes_what_is_proposed()
    {
        var line = After(new ScanLine("P001"), null, ("40063", OfRing), ("40063", OfRing), ("40063", OfRing), ("", Nothing));

        Assert.Equal((150m, true), (line.Quantity, line.QuantitySaid));
    }

    [Fact]
    public void A_part_that_does_not_keep_for_ever_asks_for_lot_and_last_day()
    {
        var line = After(new ScanLine("P001"), ShelfLife, ("x", OfRing), ("2", Nothing), ("L 9/4", Nothing), ("2027-05-31", Nothing));

        Assert.Equal((ScanStep.Ready, "L 9/4", new LocalDate(2027, 5, 31)), (line.Next(ShelfLife), line.LotCode, line.ExpiresOn));
        Assert.Equal(ScanStep.Expiry, After(new ScanLine("P001"), ShelfLife, ("x", OfRing), ("2", Nothing), ("L9", Nothing)).Next(ShelfLife));
    }

    [Fact]
    public void Another_place_may_be_scanned_until_a_part_is()
    {
        var line = After(new ScanLine(), null, ("P001", new ScannedThing.OfPlace("P001")), ("P002", new ScannedThing.OfPlace("P002")));

        Assert.Equal(("P002", ScanStep.Part), (line.PlaceCode, line.Next(null)));
    }

    [Fact]
    public void What_does_not_suit_the_step_is_refused_and_leaves_the_line_as_it_is()
    {
        Assert.Contains("scan a place first", new ScanLine().Read("40063", OfRing, null).Problem!.Sentence, StringComparison.Ordinal);
        Assert.Contains("by its measured thickness", new ScanLine("P").Read("s", new ScannedThing.OfPart(Shim, 1), null).Problem!.Sentence, StringComparison.Ordinal);
        Assert.Contains("no part, package or place has it", new ScanLine("P").Read("s", Nothing, null).Problem!.Sentence, StringComparison.Ordinal);
        Assert.Contains("is open", new ScanLine("P", "ring").Read("abc", Nothing, null).Problem!.Sentence, StringComparison.Ordinal);
        Assert.Contains("scan is empty", new ScanLine("P", "ring", 1, true).Read("", Nothing, ShelfLife).Problem!.Sentence, StringComparison.Ordinal);
        Assert.Contains("last day", new ScanLine("P", "ring", 1, true, "L").Read("soon", Nothing, ShelfLife).Problem!.Sentence, StringComparison.Ordinal);
        Assert.All(["0", "0,0", "12345678"], q => Assert.True(new ScanLine("P", "ring", 1).Read(q, Nothing, null).IsRefused));
    }

    /// <summary>A number on a package has at least eight figures: EAN-8, the shortest of ISO/IEC 15420 (from memory).</summary>
    [Theory]
    [InlineData("7", true)]
    [InlineData("2500,5", true)]
    [InlineData("1234567", true)]
    [InlineData("96385074", false)]
    [InlineData("4006381333931", false)]
    [InlineData("1.2.3", false)]
    [InlineData("-1", false)]
    [InlineData("P7", false)]
    public void A_quantity_is_told_from_a_code(string text, bool quantity)
    {
        Assert.Equal(quantity, StockCodes.LooksLikeQuantity(text));
        Assert.Equal(!quantity, StockCodes.IsScanCode(text));
    }

    [Theory]
    [InlineData("ring-14x18", true)]
    [InlineData("P001", true)]
    [InlineData("4711", false)]
    [InlineData("new", false)]
    [InlineData("a b", false)]
    [InlineData("a/b", false)]
    [InlineData("", false)]
    public void A_code_is_what_a_label_and_an_address_can_bear(string text, bool allowed) => Assert.Equal(allowed, StockCodes.IsCode(text));

    private static ScanLine After(ScanLine line, int? keepsFor, params (string Text, ScannedThing Thing)[] scans) =>
        scans.Aggregate(line, (at, scan) => at.Read(scan.Text, scan.Thing, keepsFor).Value);

    private static Part PartOf(string code, PartKind kind) => new()
    {
        Id = Guid.CreateVersion7(), Code = code, Name = code, Kind = kind, Unit = PartUnit.Piece,
    };
}
