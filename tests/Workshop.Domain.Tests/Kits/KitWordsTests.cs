using Workshop.Domain.EngineModels;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using static Workshop.Domain.Tests.Kits.MadeUpEngines;

namespace Workshop.Domain.Tests.Kits;

public class KitWordsTests
{
    private static readonly Fastener Level = Fastener("level", 1, new Seal("ring", 1, SealPolicy.ReplaceAlways)) with { Name = "Level plug" };
    private static readonly Fastener Drain = Fastener("drain", 1, new Seal("ring", 1, SealPolicy.ReplaceAlways)) with { Name = "Oil drain plug" };
    private static readonly Joint Clutch = new("clutch", "Clutch cover", ["bolt"], [new Seal("ring", 2, SealPolicy.ReplaceIfDamaged)]);

    [Fact]
    public void One_sentence_joins_the_places_of_a_part()
    {
        var item = Item("oil", fasteners: ["level", "drain"]);

        Assert.Equal("two sealing rings 14 x 18: level plug and oil drain plug", Sentence("ring", [item], [], Ring));
    }

    [Fact]
    public void What_lies_ready_follows_what_is_needed_with_its_case()
    {
        var item = Item("all", joints: ["clutch"], fasteners: ["level"]);

        Assert.Equal(
            "one sealing ring 14 x 18: level plug; two more ready: clutch cover, if the old one is damaged", Sentence("ring", [item], [], Ring));
        Assert.Equal(
            "two sealing rings 14 x 18 ready: clutch cover, if item adjust is begun",
            Sentence("ring", [], [Item("adjust", joints: ["clutch"])], Ring));
    }

    [Fact]
    public void Places_that_take_different_numbers_say_how_many()
    {
        var joint = Clutch with { Seals = [new Seal("ring", 2, SealPolicy.ReplaceAlways)] };
        var item = Item("all", joints: ["clutch"], fasteners: ["level"]);

        Assert.Equal(
            "three sealing rings 14 x 18: clutch cover (2) and level plug (1)",
            Kit.Of(Engine([item], [joint], [Level]), [item], [], new Dictionary<string, Part> { ["ring"] = Ring }).Lines[0].Sentence);
    }

    [Fact]
    public void Fluids_go_by_volume_and_grade_plugs_by_their_number_and_unknown_parts_by_their_code()
    {
        var oil = New("oil", "Engine oil", PartKind.Fluid, PartUnit.Millilitre);
        oil.Designation = "10W-40";
        var plug = New("plug", "Spark plug", PartKind.SparkPlug);
        plug.Designation = "INV-10-9";
        var oRing = New("o-ring", "O-ring", PartKind.ORing);
        (oRing.InnerDiameterMm, oRing.SectionMm) = (24.99m, 3.53m);

        Assert.Equal("3,200 ml of engine oil 10W-40", KitWords.HowMuch(3200, oil, "oil"));
        Assert.Equal("four spark plugs INV-10-9", KitWords.HowMuch(4, plug, "plug"));
        Assert.Equal("14 O-rings 24.99 x 3.53", KitWords.HowMuch(14, oRing, "o-ring"));
        Assert.Equal("one head cover gasket", KitWords.HowMuch(1, New("gasket", "Head cover gasket", PartKind.Gasket), "gasket"));
        Assert.Equal("two ring-nobody-keeps", KitWords.HowMuch(2, null, "ring-nobody-keeps"));
    }

    [Theory]
    [InlineData(1600, 1000, "2 bottles of 1,000 ml for 1,600 ml, 400 ml left over")]
    [InlineData(3000, 1000, "3 bottles of 1,000 ml for 3,000 ml")]
    [InlineData(1, 1000, "1 bottle of 1,000 ml for 1 ml, 999 ml left over")]
    public void A_fluid_comes_in_whole_bottles_and_says_what_is_left_over(int wanted, int each, string said)
    {
        var oil = New("oil", "Engine oil 10W-40", PartKind.Fluid, PartUnit.Millilitre);
        oil.PackQuantity = each;

        Assert.Equal(said, Packages.Of(wanted, oil)!.InWords(oil));
    }

    [Fact]
    public void What_comes_singly_has_no_packages()
    {
        Assert.Null(Packages.Of(3, Ring));
        Assert.Null(Packages.Of(3, null));
    }

    private static Part Ring
    {
        get
        {
            var ring = New("ring", "Sealing ring 14 x 18 x 1.5", PartKind.SealingRing);
            (ring.InnerDiameterMm, ring.OuterDiameterMm, ring.SectionMm) = (14, 18, 1.5m);
            return ring;
        }
    }

    private static Part New(string code, string name, PartKind kind, PartUnit unit = PartUnit.Piece) =>
        new() { Id = Guid.Empty, Code = code, Name = name, Kind = kind, Unit = unit };

    private static string Sentence(string code, ServiceItem[] underWay, ServiceItem[] held, Part part) => Kit.Of(
        Engine([.. underWay, .. held], [Clutch], [Level, Drain, Fastener("bolt")]), underWay, held, new Dictionary<string, Part> { [code] = part })
        .Lines.Single(l => l.PartCode == code).Sentence;
}
