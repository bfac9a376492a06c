namespace Workshop.Domain.JobCards;

/// <summary>The moment of danger at which a caution is shown; in the order of a visit.</summary>
public enum CautionStage
{
    /// <summary>Before anything is taken off.</summary>
    BeforeCovers,

    /// <summary>Before a fluid is drained, or a line of one is opened.</summary>
    AtFluids,

    /// <summary>Covers are off: before the crankshaft is turned and a blade goes in.</summary>
    BeforeMeasuring,

    /// <summary>Before a camshaft or follower shaft comes out, or a shim or screw is moved.</summary>
    AtAdjustment,

    /// <summary>As camshafts, caps and tensioner go back.</summary>
    OnRefitting,

    /// <summary>Before the readings as left.</summary>
    AsLeft,

    /// <summary>Before the covers are closed.</summary>
    BeforeClosing,

    /// <summary>Before the engine is started, and after the work.</summary>
    BeforeStart,
}

/// <param name="Code">What service items of an engine model name it by.</param>
/// <param name="Title">In a few words, readable at arm's length.</param>
/// <param name="Text">What to do and why, in a sentence or two.</param>
/// <param name="Stage">When it is shown; once at that stage.</param>
public sealed record Caution(string Code, string Title, string Text, CautionStage Stage);

/// <summary>
/// The usual cautions of this work, common practice of the trade. They stand in for nothing: the engine maker's manual,
/// local codes and licensed practice come first, and where a manual says more, that holds.
/// </summary>
public static class Cautions
{
    /// <summary>What stands under every list of cautions.</summary>
    public const string Deference =
        "These are the usual cautions, not all of them. The engine maker's manual, local codes and licensed practice come first.";

    public static readonly IReadOnlyList<Caution> All =
    [
        new("eye-protection", "Eye protection on",
            "Clips, springs and blown-out grit fly without warning. Wear it until the last cover is closed.",
            CautionStage.BeforeCovers),
        new("machine-secured", "Machine secured",
            "It will be pushed, pulled and turned over by hand. Hold it upright so that it cannot roll or fall, and check the stand before each side is worked on.",
            CautionStage.BeforeCovers),
        new("battery-isolated", "Battery isolated",
            "Disconnect it in the order that the maker's manual gives, and keep the lead from springing back: nothing may crank or spark while hands are inside.",
            CautionStage.BeforeCovers),
        new("fuel-depressurised", "Fuel depressurised, nothing that ignites",
            "Take the pressure off the line as the maker's manual says, catch what runs out, cap both ends, and keep flame, sparks and hot lamps away.",
            CautionStage.BeforeCovers),
        new("coolant-cold", "Coolant cap only when cold",
            "A hot system throws scalding coolant. Open the cap when the radiator can be held by hand, with a cloth and in two steps.",
            CautionStage.BeforeCovers),
        new("counted-out", "Count what goes in",
            "Note the number of blades, rags, tools and magnets on the bench before the covers come off: the same number must lie there before they close.",
            CautionStage.BeforeCovers),
        new("hot-oil", "Hot oil",
            "Oil and drain plug burn. Wear gloves, open the last turns by hand at arm's length, and let a very hot engine stand first.",
            CautionStage.AtFluids),
        new("oil-drained", "Tag it: no oil, do not start",
            "The moment the oil runs out, hang the tag on the handlebar. It comes off only when oil is in and the level is checked.",
            CautionStage.AtFluids),
        new("used-oil", "Used oil by local rules",
            "Collect oil, filter and rags and hand them in as local rules ask. Keep used oil off the skin.",
            CautionStage.AtFluids),
        new("coolant-caught", "Coolant is poison",
            "Catch every drop: it is sweet to animals and slippery on the floor. Hand it in as local rules ask.",
            CautionStage.AtFluids),
        new("brake-fluid", "Brake fluid",
            "It strips paint and takes up water: cover what it could reach, use a sealed bottle of the grade on the cap, never what was drained. The lever must be firm before the machine moves.",
            CautionStage.AtFluids),
        new("plug-wells-clean", "Blow out the wells before the plugs",
            "Grit beside a plug falls into the cylinder as it comes out. Blow the wells clean, eyes covered, then unscrew.",
            CautionStage.BeforeMeasuring),
        new("tunnel-covered", "Cover the chain tunnel",
            "Whatever drops into it is found in the sump, if at all. Lay clean cloth over tunnel and openings, and count the cloth.",
            CautionStage.BeforeMeasuring),
        new("starter-off", "Never by the starter",
            "With covers off the engine is turned by hand only, plugs out, in running direction. Overshot: go round again, never back, unless the maker's manual says so.",
            CautionStage.BeforeMeasuring),
        new("tensioner-first", "Tensioner out first, under control",
            "It holds a spring under load. Back it off as the maker's manual says and keep a hand on it until the spring is at rest; only then loosen a camshaft.",
            CautionStage.AtAdjustment),
        new("cam-chain-taut", "Keep the chain taut",
            "With a camshaft out, a slack chain jumps teeth at the crankshaft and bunches in the tunnel. Tie it up, and do not turn the crankshaft.",
            CautionStage.AtAdjustment),
        new("own-places", "Everything to its own place",
            "Caps, buckets and followers have run in where they sat. Lay them out in order as they come off. Only shims may change places.",
            CautionStage.AtAdjustment),
        new("bucket-hold-down", "Shim over bucket: notch, lobe, edge",
            "Turn the notch to where the shim can be lifted before pressing down. Let no lobe come round towards the holder, and keep the hold-down on the bucket's rim, off the shim.",
            CautionStage.AtAdjustment),
        new("no-ground-shims", "No grinding, no stacking",
            "A shim is hard only at its surface. Never grind one or stack two; a need beyond the permitted thickness means that valve, seat or retainer must be inspected.",
            CautionStage.AtAdjustment),
        new("jig-free", "The jig enters freely",
            "An alignment jig shows a position, it does not force one. Never hammer it in, and never hold against it while tightening unless the maker's manual says so.",
            CautionStage.OnRefitting),
        new("caps-evenly", "Caps down evenly",
            "Each cap to its own place and way round, then all of them down a little at a time in the maker's sequence. Pulled down crooked, a camshaft or cap breaks.",
            CautionStage.OnRefitting),
        new("tensioner-released", "Tensioner back at rest, then released",
            "Set it back to its rest before it goes in, or it overloads the chain. When it is tight, confirm that it has let go and that the chain's slack is gone.",
            CautionStage.OnRefitting),
        new("turn-by-hand", "Two full turns by hand",
            "In running direction, slowly. Resistance that is not compression: stop, a valve may be on a piston. Every mark must be right again before anything is measured.",
            CautionStage.AsLeft),
        new("counted-in", "Count everything back",
            "Parts, blades, rags, tools and magnets: the number from before. One short, and the cover stays off.",
            CautionStage.BeforeClosing),
        new("turning-tool-off", "Turning tool off",
            "Left on the crankshaft, it becomes a flail. Take it off and refit the plug or cover before the battery goes back on.",
            CautionStage.BeforeStart),
        new("exhaust-extraction", "Exhaust extraction on",
            "An engine that runs indoors runs into the extraction, doors open. Carbon monoxide has no smell.",
            CautionStage.BeforeStart),
        new("oil-in", "Oil in, level checked, tag off",
            "An engine started without oil is lost within seconds. Fill it, check the level as the maker's manual says, look at the drain plug and filter; only then take the tag off.",
            CautionStage.BeforeStart),
        new("test-ride", "Test ride: brakes first",
            "Only with the licence for it, helmet and clothing. Try both brakes, throttle return and lights before leaving the yard; nothing may drip or hang loose.",
            CautionStage.BeforeStart),
        new("test-ride-fresh", "Fresh tyres, pads, brakes",
            "Pump lever and pedal until they are hard before it rolls. New tyres slip and new pads brake poorly at first: upright, gently, no hard braking.",
            CautionStage.BeforeStart),
        new("test-ride-road", "Insured, allowed, licensed",
            "On the road only with a plate, insurance that covers test rides, the owner's leave and a rider who holds the licence; local rules come first. Else it stays in the yard.",
            CautionStage.BeforeStart),
    ];

    private static readonly Dictionary<string, Caution> ByCode = All.ToDictionary(c => c.Code, StringComparer.Ordinal);

    public static bool Exists(string code) => ByCode.ContainsKey(code);

    /// <exception cref="KeyNotFoundException">No caution has this code; specifications are checked before they are kept.</exception>
    public static Caution Of(string code) => ByCode[code];

    /// <summary>The cautions of several items: each once, in the order in which a visit meets them.</summary>
    public static IReadOnlyList<Caution> InOrder(IEnumerable<string> codes)
    {
        ArgumentNullException.ThrowIfNull(codes);
        var wanted = codes.ToHashSet(StringComparer.Ordinal);
        return [.. All.Where(c => wanted.Contains(c.Code)).OrderBy(c => c.Stage)];
    }
}
