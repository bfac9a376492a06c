using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.TorqueSheets;

namespace Workshop.Domain.JobCards;

/// <summary>What a technician does at the engine, in the order of the work.</summary>
public enum BayStep
{
    /// <summary>Cautions, tools on the bench, work begun.</summary>
    Open,

    /// <summary>Every valve as found.</summary>
    Measure,

    /// <summary>Compression or leak-down and spark plugs, where they are asked for.</summary>
    Cylinders,

    /// <summary>Shims chosen and fitted, or screws set.</summary>
    Adjust,

    /// <summary>Caps, cam wheels and tensioner are back and tight; the covers stay off.</summary>
    Refit,

    /// <summary>Two turns by hand, then what was disturbed once more.</summary>
    MeasureAgain,

    /// <summary>What else was opened is tightened, the covers with it.</summary>
    Tighten,

    /// <summary>Everything counted back, covers on, sign-off.</summary>
    Close,
}

/// <summary>How far one step is.</summary>
/// <param name="Left">What is still to be done, in a few words; empty where it is done.</param>
public sealed record BayStepState(BayStep Step, string Left)
{
    /// <summary>The codes of the fasteners that are tightened in it, in no order.</summary>
    public IReadOnlyCollection<string> Fasteners { get; init; } = [];

    public bool Done => Left.Length == 0;
}

/// <summary>
/// Which steps a visit has and how far each is, by the gates of its sign-off: what a gate still asks for is what is left of a
/// step. The first that is not done is where one is.
/// </summary>
public static class BaySteps
{
    private static readonly CautionStage[] OpenStages = [CautionStage.BeforeCovers, CautionStage.AtFluids];
    private static readonly CautionStage[] AdjustStages = [CautionStage.AtAdjustment];
    private static readonly CautionStage[] CloseStages = [CautionStage.BeforeClosing, CautionStage.BeforeStart];

    /// <param name="facts">Of the visit.</param>
    /// <param name="workBegun">Somebody said that the work begins.</param>
    /// <param name="asLeftWaits">What stands before the readings as left.</param>
    public static IReadOnlyList<BayStepState> Of(SignOffFacts facts, bool workBegun, IReadOnlyList<string> asLeftWaits)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(asLeftWaits);
        var checks = facts.UnderWay.Any(i => i.Item.Kind == ServiceItemKind.ValveClearanceCheck);
        var notFound = new EveryValveIsMeasuredAsFound().Against(facts).Count;
        var outside = ClearancesAreLeftWithinLimits.Outside(facts).Count;
        var notLeft = new DisturbedValvesAreMeasuredAsLeft().Against(facts).Count;
        var moved = facts.Disturbed.Count > 0;
        var first = checks && moved ? AsLeftGate.TightBefore(facts.Specification, facts.UnderWay) : new HashSet<string>();
        var fasteners = facts.ToBeTight.ToLookup(l => first.Contains(l.Fastener.Code));
        var steps = new List<BayStepState>
        {
            new(BayStep.Open, First(
                new ArrivalStateIsRecorded().Against(facts).Count > 0 ? "state on arrival to record" : "",
                Unread(facts, OpenStages),
                workBegun ? "" : "work is not begun",
                AskedChecks.Find(facts, VisitCheckKind.PartsCounted) is not null && !EverythingIsCountedBack.IsCountedIn(facts) ? "nothing is counted in" : "")),
        };
        if (checks)
        {
            steps.Add(new(BayStep.Measure, First(
                Unread(facts, CautionsOf(BayStep.Measure)), notFound == 0 ? "" : Count(notFound, "lobe", "lobes", "to measure"))));
        }

        steps.AddRange(Cylinders(facts));
        if (checks)
        {
            steps.Add(new(BayStep.Adjust,
                notFound > 0 ? "after measuring"
                : moved ? Unread(facts, AdjustStages)
                : outside > 0 ? Count(outside, "lobe", "lobes", "outside its limits", "outside their limits") : ""));
        }

        if (checks && moved)
        {
            if (fasteners[true].Any())
            {
                steps.Add(Tightening(BayStep.Refit, fasteners[true]));
            }

            steps.Add(new(BayStep.MeasureAgain, First(
                Unread(facts, CautionsOf(BayStep.MeasureAgain)), asLeftWaits.Count > 0 ? "not open yet" : "", notLeft == 0 ? "" : Count(notLeft, "lobe", "lobes", "to measure"), new AsLeftSetHasASecondPerson().Against(facts).Count == 0 ? "" : "second person to confirm")));
        }

        var covers = Tightening(BayStep.Tighten, fasteners[false]);
        steps.Add(moved && checks && notLeft > 0 && !covers.Done ? covers with { Left = "after measuring as left" } : covers);
        steps.Add(new(BayStep.Close, First(Unread(facts, CloseStages), AfterWork(facts), facts.State == JobCardState.SignedOff ? "" : "not signed off")));
        return steps;
    }

    private static BayStepState Tightening(BayStep step, IEnumerable<TorqueLine> lines)
    {
        var all = lines.ToList();
        var loose = all.Count(l => !l.IsTightened);
        return new BayStepState(step, loose == 0 ? "" : Count(loose, "fastener", "fasteners", "to tighten"))
        {
            Fasteners = [.. all.Select(l => l.Fastener.Code)],
        };
    }

    /// <summary>A step where something of the cylinders is asked for, or wanted without being a gate; done where no gate asks any more.</summary>
    private static IEnumerable<BayStepState> Cylinders(SignOffFacts facts)
    {
        var (compression, plugs) = (new CompressionIsMeasured().Against(facts).Count, new PlugsAreChecked().Against(facts).Count);
        return AskedChecks.Of(facts).Any(c => c.Kind is VisitCheckKind.Compression or VisitCheckKind.Plugs)
            || CompressionAsked.Because(facts.Specification, facts.Readings, facts.Arrival).Count > 0
            ? [new(BayStep.Cylinders, First(
                compression == 0 ? "" : Count(compression, "cylinder", "cylinders", "to test"), plugs == 0 ? "" : Count(plugs, "plug", "plugs", "to check")))]
            : [];
    }

    /// <summary>The step's cautions, shown at its moment of danger.</summary>
    public static IReadOnlyList<CautionStage> CautionsOf(BayStep step) => step switch
    {
        BayStep.Open => OpenStages,
        BayStep.Measure => [CautionStage.BeforeMeasuring],
        BayStep.Cylinders => [],
        BayStep.Adjust => AdjustStages,
        BayStep.Refit or BayStep.Tighten => [CautionStage.OnRefitting],
        BayStep.MeasureAgain => [CautionStage.AsLeft],
        BayStep.Close => CloseStages,
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, null),
    };

    /// <summary>What is done in it, in a few words.</summary>
    public static string Spoken(this BayStep step) => step switch
    {
        BayStep.Open => "Open it",
        BayStep.Measure => "Measure as found",
        BayStep.Cylinders => "Compression and plugs",
        BayStep.Adjust => "Adjust",
        BayStep.Refit => "Refit and tighten",
        BayStep.MeasureAgain => "Measure as left",
        BayStep.Tighten => "Tighten",
        BayStep.Close => "Close and sign",
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, null),
    };

    private static string Unread(SignOffFacts facts, IReadOnlyList<CautionStage> stages)
    {
        var unread = Cautions.InOrder(facts.UnderWay.SelectMany(i => i.Item.Cautions))
            .Count(c => stages.Contains(c.Stage) && !facts.Acknowledged.Contains(c.Code));
        return unread == 0 ? "" : Count(unread, "caution", "cautions", "to read");
    }

    /// <summary>What is asked for after the work and not done: "leak check, test ride".</summary>
    private static string AfterWork(SignOffFacts facts)
    {
        if (facts.State == JobCardState.SignedOff)
        {
            return "";
        }

        (ISignOffRule Rule, string Name)[] rules =
        [
            (new CylindersAreBalanced(), "balance"), (new NothingLeaks(), "leak check"), (new TestRideIsSaid(), "test ride"), (new RechecksAreDone(), "re-checks"),
            (new ReminderIsSaid(), "service reminder"), (new EverythingIsCountedBack(), "count back"),
        ];
        var left = rules.Where(r => r.Rule.Against(facts).Count > 0).Select(r => r.Name).ToList();
        return left.Count == 0 ? "" : $"{string.Join(", ", left)} to do";
    }

    private static string First(params string[] left) => left.FirstOrDefault(l => l.Length > 0) ?? "";

    private static string Count(int count, string one, string many, string what, string? whatOfMany = null) =>
        count == 1 ? $"1 {one} {what}" : $"{count} {many} {whatOfMany ?? what}";
}
