using System.Text.RegularExpressions;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>What a code may name.</summary>
internal enum ChoiceOf
{
    Valves,
    Lobes,
    Accesses,
    Joints,
    Fasteners,
    ServiceItems,
    Adjustments,
    Cautions,
    Options,
    Camshafts,
    Banks,
}

/// <param name="Hint">Unit or form.</param>
/// <param name="IsLong">A text of several lines.</param>
internal sealed record FieldLabel(string Text, string? Hint = null, ChoiceOf? Choices = null, bool IsLong = false);

/// <summary>The words of the forms, per record in the order in which its fields stand.</summary>
internal static partial class FieldLabels
{
    /// <summary>Who checked what, and when, is never typed.</summary>
    public static readonly IReadOnlySet<(Type, string)> AreSetByTheService = new HashSet<(Type, string)>
    {
        (typeof(Provenance), "checkedBy"), (typeof(Provenance), "checkedOn"),
    };

    private const string Code = "small letters, digits, hyphens";
    private const string OnePerLine = "one a line";
    private const string DayForm = "a day such as 2026-03-02";

    private static readonly Dictionary<Type, (string Name, FieldLabel Label)[]> ByRecord = new()
    {
        [typeof(EngineSpecification)] =
        [
            ("provenance", new("Source")), ("layout", new("Layout")), ("valveTrain", new("Valve train")), ("valves", new("Valves")),
            ("camshafts", new("Camshafts and follower shafts")), ("camDrives", new("Drives of the camshafts, and their timing")), ("measuringPositions", new("Measuring positions, in running direction")),
            ("limits", new("Limits")), ("shims", new("Shims", "all empty for screw and locknut")), ("cold", new("Cold condition")),
            ("compression", new("Compression and leakage", "all empty where nothing is stated")), ("sparkPlugs", new("Spark plugs", "all empty where nothing is stated")),
            ("afterWork", new("After the work", "all empty where the workshop's usual holds")), ("visitChecks", new("Checks of a visit, before and after the work")), ("serviceItems", new("Service items")),
            ("accesses", new("Accesses")), ("joints", new("Joints")), ("fasteners", new("Fasteners")),
            ("together", new("Items fall together within", "both empty where the workshop's own setting holds")), ("options", new("Options that some have")),
        ],
        [typeof(TogetherWithin)] = [("km", new("Distance", "km")), ("days", new("Days"))],
        [typeof(FittedOption)] = [("code", new("Code", Code)), ("name", new("Name"))],
        [typeof(Provenance)] = [("source", new("Document")), ("edition", new("Edition", "with page or sheet"))],
        [typeof(EngineLayout)] =
        [
            ("description", new("Build, in words")), ("cylinders", new("Cylinders, in order of number")),
            ("numberingSeenFrom", new("Counted as seen from")), ("firingOrder", new("Firing order", $"cylinder numbers, {OnePerLine}, from 1")),
            ("turning", new("Running direction")), ("turningSeenFrom", new("Seen from")), ("timingMarks", new("Timing marks", IsLong: true)),
        ],
        [typeof(Cylinder)] = [("number", new("Number")), ("bank", new("Bank"))],
        [typeof(Valve)] = [("valve", new("Valve", ValveKey.Form)), ("lobes", new("Lobes", "2 where the profile is switched"))],
        [typeof(Camshaft)] = [("code", new("Code", Code)), ("name", new("Name")), ("valves", new("Disturbs", Choices: ChoiceOf.Valves))],
        [typeof(CamDrive)] =
        [
            ("code", new("Code", Code)), ("name", new("Name")), ("bank", new("Bank", "as the layout names it", Choices: ChoiceOf.Banks)),
            ("stages", new("Stages, from the crankshaft on", "one where the drive is direct")), ("lobes", new("How its camshafts are timed")),
            ("alignmentCheck", new("Alignment check", "jig, marks, what lines up with what", IsLong: true)),
            ("alignmentMarks", new("Marks that must be right at once", "empty where only a jig tells")),
            ("jigIsCounterHold", new("The maker allows holding against the jig while tightening")),
            ("sprocketBolts", new("Held to the camshafts by", Choices: ChoiceOf.Fasteners)),
            ("recheckSprocketBolts", new("Their torque is checked once more after the tensioner was fitted")),
            ("tensionerFasteners", new("The tensioner is held by", Choices: ChoiceOf.Fasteners)),
            ("tensioner", new("Tensioner", "all empty where there is none")), ("chain", new("Length of a worn chain", "both empty where none is stated")),
            ("provenance", new("Source")),
        ],
        [typeof(DriveStage)] =
        [
            ("name", new("From where to where")), ("kind", new("By")), ("drivingTeeth", new("Teeth nearer to the crankshaft")),
            ("drivenTeeth", new("Teeth nearer to the camshaft")),
        ],
        [typeof(LobeTiming)] =
        [
            ("camshaft", new("Camshaft", Choices: ChoiceOf.Camshafts)), ("side", new("Side")),
            ("lobeCentreDegrees", new("Lobe centre", "crank degrees: intake after, exhaust before top dead centre")),
            ("permittedDeviationDegrees", new("May be off by", "crank degrees")),
            ("opensDegrees", new("Opens", "crank degrees: intake before top, exhaust before bottom; negative on the other side")),
            ("closesDegrees", new("Closes", "crank degrees: intake after bottom, exhaust after top; negative on the other side")),
            ("atLiftMm", new("At a lift of", "mm")), ("measuredAt", new("Lift is measured")),
        ],
        [typeof(ChainTensioner)] =
        [
            ("limitMm", new("Renew the chain at an extension of", "mm")), ("newMm", new("Extension with a new chain", "mm")),
            ("stepMm", new("From notch to notch", "mm; empty where it moves freely")), ("stopMm", new("As far as it goes", "mm")),
        ],
        [typeof(ChainLength)] = [("links", new("Links")), ("limitMm", new("Worn at a length of", "mm, pulled straight"))],
        [typeof(MeasuringPosition)] =
        [
            ("name", new("Position, in words")), ("crankDegrees", new("Crank angle", "degrees from compression dead centre of cylinder 1")),
            ("mark", new("What is seen there")), ("lobes", new("Measured there", Choices: ChoiceOf.Lobes)),
        ],
        [typeof(ClearanceLimits)] =
        [
            ("side", new("Side")), ("lobe", new("Lobe")), ("lowerMm", new("Smallest", "mm")), ("setToMm", new("Set to", "mm")),
            ("upperMm", new("Largest", "mm")), ("leverRatio", new("Lever ratio", "mm of clearance per mm of shim")), ("provenance", new("Source")),
        ],
        [typeof(ShimRange)] =
        [
            ("partCode", new("The stores' code")), ("form", new("Form", "what it is and where it sits")), ("diameterMm", new("Diameter", "mm")),
            ("smallestMm", new("Thinnest permitted", "mm")), ("largestMm", new("Thickest permitted", "mm")), ("stepMm", new("Step", "mm")),
            ("provenance", new("Source")),
        ],
        [typeof(ColdCondition)] =
        [
            ("soakHours", new("Soak from the last stop", "hours")), ("lowestC", new("Lowest at the head", "°C")),
            ("highestC", new("Highest at the head", "°C")), ("method", new("How it is taken")), ("provenance", new("Source")),
        ],
        [typeof(CompressionLimits)] =
        [
            ("leastKpa", new("Least compression", "kPa above the air, throttle open; 1 bar is 100 kPa")), ("warmth", new("Engine")),
            ("largestDifferenceKpa", new("Weakest behind the best by up to", "kPa")), ("largestLeakDownPercent", new("Largest leakage", "per cent of the test pressure")),
            ("leakDownKpa", new("At a test pressure of", "kPa")), ("provenance", new("Source")),
        ],
        [typeof(SparkPlugs)] =
        [
            ("perCylinder", new("Plugs a cylinder")), ("partCode", new("The stores' code of the plug")), ("gapSmallestMm", new("Smallest gap", "mm")),
            ("gapLargestMm", new("Largest gap", "mm")), ("provenance", new("Source")),
        ],
        [typeof(AfterWork)] =
        [
            ("warmRunMinutes", new("Warm run", "minutes; 0 for none")), ("testRideMinutes", new("Test ride", "minutes; 0 for none")),
            ("recheck", new("Recheck")),
        ],
        [typeof(Recheck)] =
        [
            ("afterItems", new("After", Choices: ChoiceOf.ServiceItems)), ("coolHours", new("Cools first", "hours")), ("minutes", new("Takes", "minutes")),
        ],
        [typeof(CheckOnVisit)] =
        [
            ("kind", new("Check", "each once")), ("asked", new("Asked for")), ("afterItems", new("After", "only where it is asked for after items", Choices: ChoiceOf.ServiceItems)),
            ("note", new("What the maker says of it", IsLong: true)), ("balance", new("Balance", "all empty where no figures are stated")),
            ("places", new("Leak check: look at", $"{OnePerLine}, beside what the visit opens")), ("oilAfterRun", new("Re-check: oil level after the run")),
            ("fastenersAgain", new("Re-check: torque once more of", Choices: ChoiceOf.Fasteners)),
        ],
        [typeof(BalanceFigures)] =
        [
            ("speedRpm", new("Engine speed", "rpm")), ("speedToleranceRpm", new("More or less", "rpm")), ("toleranceKpa", new("May differ by", "kPa")),
            ("hotFromC", new("Hot from", "°C of coolant or oil")), ("referenceCylinder", new("Set to cylinder", "number of the one without a screw; else empty")),
        ],
        [typeof(ServiceItem)] =
        [
            ("code", new("Code", Code)), ("name", new("Name")), ("kind", new("Kind")), ("interval", new("Interval", "all empty where it is done when needed")),
            ("onlyFor", new("Only for", "all empty where every motorcycle has it")),
            ("includes", new("Contains", "routine items that are done with it", Choices: ChoiceOf.ServiceItems)),
            ("labourMinutes", new("Labour", "minutes beside opening and closing")),
            ("adjustmentItem", new("May lead to", Choices: ChoiceOf.Adjustments)), ("accesses", new("Accesses", Choices: ChoiceOf.Accesses)),
            ("joints", new("Opens joints", Choices: ChoiceOf.Joints)), ("fasteners", new("Opens fasteners of no joint", Choices: ChoiceOf.Fasteners)),
            ("parts", new("Parts")), ("skills", new("Skills", OnePerLine)), ("grade", new("Lowest grade who may do it alone")),
            ("specialTools", new("Special tools", OnePerLine)), ("bayCapabilities", new("The bay must have", OnePerLine)),
            ("drainsWarm", new("Begun warm, on arrival: a drain before a cold soak")), ("cautions", new("Cautions", Choices: ChoiceOf.Cautions)),
            ("provenance", new("Source")),
        ],
        [typeof(ServiceInterval)] =
        [
            ("everyKm", new("Every", "km")), ("everyMonths", new("Every", "months")), ("firstKm", new("The first at", "km, where it differs")),
            ("firstMonths", new("The first at", "months, where it differs")),
            ("everyMiles", new("Every", "miles, where the maker states them for odometers in miles")),
            ("firstMiles", new("The first at", "miles, likewise")), ("once", new("Once and for all: at the first, or after the date")),
            ("afterDate", new("Not due before", DayForm)), ("counting", new("Counts")), ("severe", new("Ridden hard", "all empty where it makes no difference")),
        ],
        [typeof(SevereUse)] =
        [
            ("factor", new("Shortened to", "a part such as 0.5; or figures of its own")), ("everyKm", new("Every", "km")),
            ("everyMonths", new("Every", "months")), ("firstKm", new("The first at", "km")), ("firstMonths", new("The first at", "months")),
            ("everyMiles", new("Every", "miles")), ("firstMiles", new("The first at", "miles")),
        ],
        [typeof(Applicability)] =
        [
            ("fromModelYear", new("From model year")), ("toModelYear", new("To model year")),
            ("withOptions", new("With", Choices: ChoiceOf.Options)), ("withoutOptions", new("Without", Choices: ChoiceOf.Options)),
        ],
        [typeof(ItemPart)] =
        [
            ("partCode", new("The stores' code")), ("quantity", new("Quantity", "in the part's own unit")),
            ("haveReady", new("Have ready: taken only when needed")),
        ],
        [typeof(Access)] =
        [
            ("code", new("Code", Code)), ("name", new("Name")), ("minutes", new("Opening and closing", "minutes")),
            ("joints", new("Opens joints", Choices: ChoiceOf.Joints)), ("fasteners", new("Opens fasteners of no joint", Choices: ChoiceOf.Fasteners)),
        ],
        [typeof(Joint)] =
        [
            ("code", new("Code", Code)), ("name", new("Name")), ("fasteners", new("Held by", Choices: ChoiceOf.Fasteners)), ("seals", new("Seals")),
            ("sealant", new("Sealant", "all empty where there is none")),
        ],
        [typeof(Sealant)] = [("partCode", new("The stores' code")), ("quantity", new("Quantity")), ("cureMinutes", new("Cures in", "minutes"))],
        [typeof(Seal)] =
        [
            ("partCode", new("The stores' code")), ("quantity", new("Quantity", "for all together")), ("policy", new("When the joint is opened")),
            ("reuseAllowedBy", new("The maker allows it again in", "document and page; only of what is otherwise fitted once")),
        ],
        [typeof(ReceivingThread)] =
        [
            ("material", new("Material")), ("engagementMm", new("Threads engage over", "mm")), ("shearStrengthMpa", new("Shear strength of the material", "MPa")),
        ],
        [typeof(FastenerPattern)] =
        [
            ("seenFrom", new("Seen from", "with what lies where: above, front wheel to the left")), ("places", new("Places in the order of tightening")),
        ],
        [typeof(PatternPlace)] =
        [
            ("across", new("From the left", "in any unit; proportions count")), ("up", new("From below")), ("mark", new("Marked", "as cast beside it")),
        ],
        [typeof(Fastener)] =
        [
            ("code", new("Code", Code)), ("name", new("Name")), ("count", new("How many alike")), ("thread", new("Thread", "such as M6x1")),
            ("stagesNm", new("Stages before the final torque", $"N.m, {OnePerLine}")), ("torqueNm", new("Final torque", "N.m")),
            ("torqueLowestNm", new("Allowed from", "N.m, where the maker states a range")), ("torqueHighestNm", new("Allowed to", "N.m")),
            ("angleDegrees", new("Then further by", "degrees")), ("angleToleranceDegrees", new("More or less", "degrees at the angle stage")),
            ("sequence", new("Sequence")), ("pattern", new("Sequence drawing", "all empty where there is none")),
            ("spaceOverMm", new("Free over the head", "mm, where no socket goes on")), ("treatment", new("The thread is")),
            ("threadCompound", new("Compound", "where the thread is locked")), ("propertyClass", new("Property class", "by ISO 898-1, such as 8.8; empty where not known")),
            ("form", new("It is")), ("into", new("Turned into", "all empty where not known")), ("tool", new("Tool")),
            ("useOnce", new("Used once: its new part stands among the seals")), ("seals", new("Seals")), ("note", new("Note", IsLong: true)),
            ("provenance", new("Source")),
        ],
    };

    /// <summary>Records whose members all have words.</summary>
    public static IEnumerable<Type> Records => ByRecord.Keys;

    public static bool Has(Type record, string name) => ByRecord.GetValueOrDefault(record)?.Any(l => l.Name == name) == true;

    /// <summary>The words of a member; its name, spelled out, where it has none yet.</summary>
    public static FieldLabel Find(Type record, string name) =>
        ByRecord.GetValueOrDefault(record)?.FirstOrDefault(l => l.Name == name).Label ?? new FieldLabel(Spelled(name));

    public static int PlaceOf(Type record, string name)
    {
        var place = Array.FindIndex(ByRecord.GetValueOrDefault(record) ?? [], l => l.Name == name);
        return place < 0 ? int.MaxValue : place;
    }

    private static string Spelled(string name)
    {
        var words = Humps().Replace(name, m => $" {m.Value.ToLowerInvariant()}");
        return char.ToUpperInvariant(words[0]) + words[1..];
    }

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Humps();
}
