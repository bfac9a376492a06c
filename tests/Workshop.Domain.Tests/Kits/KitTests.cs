using Workshop.Domain.EngineModels;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using static Workshop.Domain.Tests.Kits.MadeUpEngines;

namespace Workshop.Domain.Tests.Kits;

public class KitTests
{
    private static readonly Joint Cover = new("cover", "Head cover", ["bolt"],
        [new Seal("gasket", 1, SealPolicy.InspectAndReuse), new Seal("well-ring", 2, SealPolicy.ReplaceIfDamaged)],
        new Sealant("sealant", 4, 60));

    private static readonly Fastener Bolt = Fastener("bolt", 6, new Seal("washer", 6, SealPolicy.ReplaceAlways)) with { Name = "Head cover bolt" };
    private static readonly Fastener Plug = Fastener("plug", 1, new Seal("ring", 1, SealPolicy.ReplaceAlways)) with { Name = "Oil drain plug" };
    private static readonly Fastener CapBolt = Fastener("cap-bolt", 8, new Seal("cap-bolt", 8, SealPolicy.InspectAndReuse)) with
    {
        Name = "Cap bolt", UseOnce = true, ThreadCompound = "assembly lubricant",
    };

    private static readonly ServiceItem Oil = Item("oil", fasteners: ["plug"], parts: [new ItemPart("oil", 3200), new ItemPart("magnet", 1, HaveReady: true)]) with { Name = "Engine oil" };
    private static readonly ServiceItem Check = Item("check", joints: ["cover"]) with { Name = "Valve clearance check" };
    private static readonly ServiceItem Adjust = Item("adjust", joints: ["cover"], fasteners: ["cap-bolt"], parts: [new ItemPart("paste", 1)]) with { Name = "Valve clearance adjustment" };

    private static readonly EngineSpecification Engine = MadeUpEngines.Engine([Oil, Check, Adjust], [Cover], [Bolt, Plug, CapBolt]);

    [Fact]
    public void A_drain_plug_opened_needs_its_ring_and_says_why()
    {
        var kit = Kit.Of(Engine, [Oil], []);

        Assert.Equal(["magnet", "oil", "ring"], kit.Lines.Select(l => l.PartCode));
        var ring = kit.Lines.Single(l => l.PartCode == "ring");
        Assert.Equal((1, 0), (ring.Needed, ring.HaveReady));
        Assert.Equal("one on the oil drain plug", Assert.Single(ring.Reasons).InWords());
        Assert.Equal("3200 ml for engine oil", Assert.Single(kit.Lines.Single(l => l.PartCode == "oil").Reasons).InWords(PartUnit.Millilitre));
        var magnet = kit.Lines.Single(l => l.PartCode == "magnet");
        Assert.Equal((0, 1), (magnet.Needed, magnet.HaveReady));
        Assert.Equal("one for engine oil, if wanted", Assert.Single(magnet.Reasons).InWords());
    }

    [Fact]
    public void A_joint_brings_its_seals_by_policy_its_sealant_and_all_its_fasteners()
    {
        var kit = Kit.Of(Engine, [Check], []);

        Assert.Equal(
            ["gasket 0+1", "sealant 4+0", "washer 6+0", "well-ring 0+2"],
            kit.Lines.Select(l => $"{l.PartCode} {l.Needed}+{l.HaveReady}"));
        Assert.Equal("one at the head cover, if the old one does not pass its inspection", Words(kit, "gasket"));
        Assert.Equal("2 at the head cover, if the old one is damaged", Words(kit, "well-ring"));
        Assert.Equal("6 on the head cover bolt (6 of them)", Words(kit, "washer"));
    }

    [Fact]
    public void A_joint_opened_by_two_items_is_counted_once()
    {
        var one = Kit.Of(Engine, [Check], []);
        var both = Kit.Of(Engine, [Check, Adjust], []);

        Assert.Equal(one.Lines.Single(l => l.PartCode == "washer").Needed, both.Lines.Single(l => l.PartCode == "washer").Needed);
        Assert.Equal(one.Lines.Single(l => l.PartCode == "gasket").HaveReady, both.Lines.Single(l => l.PartCode == "gasket").HaveReady);
    }

    [Fact]
    public void A_use_once_fastener_is_needed_whatever_its_parts_policy_says()
    {
        var kit = Kit.Of(Engine, [Adjust], []);

        Assert.Equal(8, kit.Lines.Single(l => l.PartCode == "cap-bolt").Needed);
    }

    [Fact]
    public void An_adjustment_held_ready_adds_only_what_it_would_open_beside_the_check()
    {
        var kit = Kit.Of(Engine, [Check], [Adjust]);

        Assert.Equal(
            ["cap-bolt 0+8", "gasket 0+1", "paste 0+1", "sealant 4+0", "washer 6+0", "well-ring 0+2"],
            kit.Lines.Select(l => $"{l.PartCode} {l.Needed}+{l.HaveReady}"));
        Assert.Equal("8 on the cap bolt (8 of them), if valve clearance adjustment is begun", Words(kit, "cap-bolt"));
        Assert.Equal("one for valve clearance adjustment, if it is begun", Words(kit, "paste"));
    }

    [Fact]
    public void An_item_both_under_way_and_held_is_under_way()
    {
        Assert.Equal(Text(Kit.Of(Engine, [Adjust], [])), Text(Kit.Of(Engine, [Adjust], [Adjust])));
    }

    [Fact]
    public void What_goes_on_threads_is_named_with_its_fasteners()
    {
        var compound = Assert.Single(Kit.Of(Engine, [Adjust], []).Compounds);

        Assert.Equal("assembly lubricant", compound.Name);
        Assert.Equal(["Cap bolt"], compound.Fasteners);
        Assert.Empty(Kit.Of(Engine, [Check], [Adjust]).Compounds);
    }

    [Fact]
    public void A_fastener_named_by_itself_does_not_open_its_joint()
    {
        var item = Item("retighten", fasteners: ["bolt"]);

        var kit = Kit.Of(MadeUpEngines.Engine([item], [Cover], [Bolt]), [item], []);

        Assert.Equal("washer", Assert.Single(kit.Lines).PartCode);
    }

    [Fact]
    public void Nothing_booked_is_an_empty_kit() => Assert.Empty(Kit.Of(Engine, [], []).Lines);

    [Fact]
    public void A_crush_ring_is_never_fitted_twice_unless_the_maker_says_so()
    {
        var parts = new Dictionary<string, Part> { ["gasket"] = FittedOnce(Part("gasket")), ["well-ring"] = Part("well-ring") };
        var maker = Cover with { Seals = [Cover.Seals[0] with { ReuseAllowedBy = "service manual, chapter 4" }, Cover.Seals[1]] };

        var replaced = Kit.Of(Engine, [Check], [], parts).Lines.Single(l => l.PartCode == "gasket");
        var reused = Kit.Of(MadeUpEngines.Engine([Check], [maker], [Bolt]), [Check], [], parts).Lines.Single(l => l.PartCode == "gasket");

        Assert.Equal((1, 0), (replaced.Needed, replaced.HaveReady));
        Assert.Equal("one at the head cover, as it is fitted once and the maker does not allow it again", Assert.Single(replaced.Reasons).InWords());
        Assert.Equal((0, 1), (reused.Needed, reused.HaveReady));
        Assert.Equal(["gasket", "well-ring"], OpenedSeals.Of(MadeUpEngines.Engine([Check], [maker], [Bolt]), [Check], parts).Select(s => s.PartCode));
        Assert.Equal(["well-ring"], OpenedSeals.Of(Engine, [Check], parts).Select(s => s.PartCode));
    }

    internal static Part Part(string code) => new()
    {
        Id = new Guid(code.Sum(c => c), 0, 0, new byte[8]), Code = code, Name = $"Part {code}", Kind = PartKind.General, Unit = PartUnit.Piece,
    };

    internal static Part FittedOnce(Part part)
    {
        part.FittedOnce = true;
        return part;
    }

    private static string Words(Kit kit, string part) =>
        Assert.Single(kit.Lines.Single(l => l.PartCode == part).Reasons).InWords();

    internal static string Text(Kit kit) => string.Join("\n", kit.Lines.Select(l =>
        $"{l.PartCode} {l.Needed}+{l.HaveReady}: {string.Join("; ", l.Reasons.Select(r => r.InWords()))}"));
}
