using System.Text.Json.Nodes;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>A part of the specification that is edited at a time; a list whose entries have codes is edited entry by entry.</summary>
/// <param name="Word">In addresses: <c>service-items</c>.</param>
/// <param name="Members">Those of the document that it covers.</param>
/// <param name="What">What stands in it, in a few words.</param>
/// <param name="EntryName">What one entry is called; absent where the section is edited whole.</param>
internal sealed record SpecificationSection(
    string Word, string Title, IReadOnlyList<string> Members, string What, string? EntryName = null)
{
    public static readonly IReadOnlyList<SpecificationSection> All =
    [
        new("source", "Source of the whole", ["provenance"], "the document that holds where nothing else is named"),
        new("layout", "Layout", ["layout"], "cylinders, firing order, running direction, timing marks"),
        new("valves", "Valves", ["valveTrain", "valves"], "valve train, valves, lobes"),
        new("camshafts", "Camshafts", ["camshafts"], "which valves a shaft disturbs when it comes out"),
        new("cam-drives", "Drives and timing of the camshafts", ["camDrives"], "chain, belt or gears, teeth, lobe centres, tensioner limit", "drive"),
        new("measuring-positions", "Measuring positions", ["measuringPositions"], "crank positions in running direction, and what is measured there"),
        new("limits", "Limits", ["limits"], "smallest and largest clearance, set-to, lever ratio"),
        new("shims", "Shims", ["shims"], "which are permitted"),
        new("cold", "Cold condition", ["cold"], "soak and temperature for a reading"),
        new("cylinders", "Cylinders and plugs", ["compression", "sparkPlugs"], "least compression, largest leakage, gap of the plugs"),
        new("after-work", "After the work", ["afterWork"], "warm run, test ride, recheck"),
        new("visit-checks", "Checks of a visit", ["visitChecks"], "what is asked for before and after the work"),
        new("service-items", "Service items", ["serviceItems"], "intervals, labour, parts, skills, cautions", "service item"),
        new("together", "Together", ["together", "options"], "which items fall together, and what some of the motorcycles have"),
        new("accesses", "Accesses", ["accesses"], "what has to be out of the way", "access"),
        new("joints", "Joints", ["joints"], "what fasteners hold together: seals, sealant", "joint"),
        new("fasteners", "Fasteners", ["fasteners"], "torque, stages, angle, treatment, tool", "fastener"),
    ];

    /// <summary>The member that holds the entries.</summary>
    public string List => Members[0];

    public bool HasEntries => EntryName is not null;

    public static SpecificationSection? Find(string? word) => All.FirstOrDefault(s => s.Word == word);

    /// <summary>The section that covers a member of the document; one that none names is none's to edit.</summary>
    public static SpecificationSection? Covering(string member) => All.FirstOrDefault(s => s.Members.Contains(member));

    /// <summary>The entries of the section in a document, in its order.</summary>
    public IEnumerable<JsonObject> Entries(JsonNode document) => document[List]?.AsArray().OfType<JsonObject>() ?? [];

    public JsonObject? Entry(JsonNode document, string code) => Entries(document).FirstOrDefault(e => DocumentKeys.Of(e) == code);

    /// <summary>The place of an entry in the document as faults name it: <c>fasteners[2]</c>; where a new one will stand.</summary>
    public string PathOf(JsonNode document, string code) =>
        $"{List}[{Entries(document).TakeWhile(e => DocumentKeys.Of(e) != code).Count()}]";
}

internal static class EntryExtensions
{
    /// <summary>An entry as the document has it: its code is no field of its form.</summary>
    public static JsonNode WithCode(this JsonNode entry, string code)
    {
        entry["code"] = code;
        return entry;
    }
}
