using CsCheck;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;
using Workshop.Domain.Tests.Kits;
using Workshop.Domain.TorqueSheets;
using static Workshop.Domain.Tests.Kits.MadeUpEngines;

namespace Workshop.Domain.Tests.TorqueSheets;

public class TorqueSheetTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 8, 0);

    private static readonly ServiceItem Check = Item("check", accesses: ["tank-off", "cover-off"]);
    private static readonly ServiceItem Adjust = Item("adjust", accesses: ["tank-off", "cover-off"], joints: ["tensioner", "caps"]);
    private static readonly ServiceItem Oil = Item("oil", fasteners: ["plug"]);

    private static readonly EngineSpecification Engine = MadeUpEngines.Engine(
        [Check, Adjust, Oil],
        [
            new Joint("tank", "Tank", ["tank-bolt"], []),
            new Joint("cover", "Head cover", ["cover-bolt"], []),
            new Joint("tensioner", "Chain tensioner", ["tensioner-bolt"], []),
            new Joint("caps", "Camshaft caps", ["cap-bolt"], []),
        ],
        [Fastener("tank-bolt"), Fastener("cover-bolt"), Fastener("tensioner-bolt"), Fastener("cap-bolt"), Fastener("plug")],
        [new Access("tank-off", "Tank off", 10, ["tank"], []), new Access("cover-off", "Cover off", 20, ["cover"], [])]);

    [Fact]
    public void Fasteners_stand_in_the_order_of_closing_the_outermost_last()
    {
        var sheet = Sheet([Check, Adjust, Oil]);

        Assert.Equal(["cap-bolt", "tensioner-bolt", "cover-bolt", "tank-bolt", "plug"], sheet.Lines.Select(l => l.Fastener.Code));
        Assert.Equal(["Camshaft caps", "Chain tensioner", "Head cover", "Tank", null], sheet.Sections.Select(s => s.Joint?.Name));
    }

    [Fact]
    public void An_adjustment_adds_to_the_sheet_only_when_it_is_begun()
    {
        Assert.Equal(["cover-bolt", "tank-bolt"], Sheet([Check]).Lines.Select(l => l.Fastener.Code));
        Assert.Equal(["cap-bolt", "tensioner-bolt", "cover-bolt", "tank-bolt"], Sheet([Check, Adjust]).Lines.Select(l => l.Fastener.Code));
    }

    [Fact]
    public void The_steps_of_a_fastener_end_with_its_final_torque()
    {
        var line = new TorqueLine(
            Fastener("f") with { Stages = [Torque.FromNewtonMetres(4), Torque.FromNewtonMetres(7)] },
            new FastenerState(TickState.NotTightened, null));

        Assert.Equal([4m, 7m, 10m], line.Steps.Select(s => s.NewtonMetres));
    }

    [Fact]
    public void The_tick_that_nobody_superseded_counts_even_at_the_same_instant()
    {
        var first = Tick("plug", true, 0);
        var back = Tick("plug", false, 0, first);
        var again = Tick("plug", true, 0, back);

        Assert.Equal(TickState.NotTightened, State("plug", []));
        Assert.Equal(TickState.Tightened, State("plug", [first]));
        Assert.Equal(TickState.TakenBack, State("plug", [back, first]));
        Assert.Equal(TickState.Tightened, State("plug", [again, first, back]));
        Assert.Equal(TickState.NotTightened, State("plug", [Tick("other", true, 0)]));
    }

    [Fact]
    public void A_tick_from_before_an_item_that_opens_the_fastener_was_begun_no_longer_counts()
    {
        var tick = Tick("cover-bolt", true, 30);
        var sheet = TorqueSheet.Of(Engine, [new(Check), new(Adjust, Start + Duration.FromMinutes(60))], [tick, Tick("plug", true, 30)]);
        var begunBefore = TorqueSheet.Of(Engine, [new(Check), new(Adjust, Start)], [tick]);

        Assert.Equal(TickState.OpenedAgain, sheet.Lines.Single(l => l.Fastener.Code == "cover-bolt").Tick.State);
        Assert.Equal(TickState.Tightened, begunBefore.Lines.Single(l => l.Fastener.Code == "cover-bolt").Tick.State);
    }

    [Fact]
    public void Every_opened_fastener_stands_on_the_sheet_once_in_whatever_order_items_come() =>
        Gen.Select(MadeUpEngines.Any, Gen.Bool.Array[4]).Sample((engine, booked) =>
        {
            var items = engine.ServiceItems.Where((_, i) => booked[i]).Select(i => new ItemUnderWay(i)).ToList();
            var sheet = TorqueSheet.Of(engine, items, []);
            var turned = TorqueSheet.Of(engine, Enumerable.Reverse(items), []);

            var codes = sheet.Lines.Select(l => l.Fastener.Code).ToList();
            Assert.Equal(codes.Count, codes.Distinct().Count());
            Assert.Equal(Opened.By(engine, items.Select(i => i.Item)).Fasteners.Select(f => f.Code).Order(), codes.Order());
            Assert.Equal(codes, turned.Lines.Select(l => l.Fastener.Code));
        });

    private static TorqueSheet Sheet(ServiceItem[] items) => TorqueSheet.Of(Engine, items.Select(i => new ItemUnderWay(i)), []);

    private static TickState State(string code, FastenerTick[] ticks) => FastenerState.Of(code, ticks, null).State;

    private static FastenerTick Tick(string code, bool tightened, int minute, FastenerTick? supersedes = null) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, FastenerCode = code, Tightened = tightened, SupersedesId = supersedes?.Id,
        TickedBy = Guid.Empty, TickedAt = Start + Duration.FromMinutes(minute),
    };
}
