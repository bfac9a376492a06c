using Workshop.Domain.Arrivals;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.Ignition;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Records;

/// <summary>Something that was looked at before or after the work.</summary>
/// <param name="What">"Leaks", "Test ride".</param>
/// <param name="Sentence">How it was.</param>
/// <param name="RemarkId">What was said beside it stands in the words, see <see cref="RecordWords.Said"/>; absent where nothing was.</param>
public sealed record RecordedCheck(string What, string Sentence, Guid? RemarkId = null);

/// <summary>Compression and leakage of one cylinder, as it was found and as it was left.</summary>
/// <param name="Found">"1180 kPa (11.8 bar, 171 psi)"; absent where it was not measured at that stage.</param>
/// <param name="Sentence">What the figures say.</param>
public sealed record RecordedCylinder(int Cylinder, CylinderVerdict Verdict, string? Found, string? Left, string Sentence);

/// <summary>One spark plug.</summary>
/// <param name="Sentence">"Worn electrode, gap 1.05 mm; renewed, gap 0.80 mm."</param>
public sealed record RecordedPlug(string Name, PlugCondition Condition, decimal? GapFoundMm, decimal GapLeftMm, bool Renewed, string Sentence);

/// <summary>What was seen before the work and looked at after it, for the owner's record.</summary>
public static class RecordedChecks
{
    /// <summary>How it came: what counts of what was seen and complained of, by kind.</summary>
    public static IReadOnlyList<RecordedCheck> Arrival(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. ArrivalRules.Standing(facts.Arrival).OrderBy(n => n.Kind).Select(n => new RecordedCheck(
            Capital(n.Kind.Spoken()),
            $"{Capital(ArrivalWords.Say(n.Subject, n.State, null))}{(n.Stage == ArrivalStage.DuringWork ? $" ({n.Stage.Spoken()})" : "")}", n.WordsRemarkId))];
    }

    /// <summary>Every cylinder that was measured, in order of number.</summary>
    public static IReadOnlyList<RecordedCylinder> Cylinders(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.CylinderTests.Count == 0)
        {
            return [];
        }

        var found = CylinderFindings.Of(facts.Specification, facts.CylinderTests, Stage.AsFound, AskedChecks.TightValves(facts.Specification, facts.Readings));
        var left = CylinderFindings.Of(facts.Specification, facts.CylinderTests, Stage.AsLeft, []);
        return [.. found.Zip(left).Where(c => c.First.IsMeasured || c.Second.IsMeasured).Select(c =>
        {
            var last = c.Second.IsMeasured ? c.Second : c.First;
            return new RecordedCylinder(last.Cylinder, last.Verdict, Measured(c.First), Measured(c.Second), Say(c.First, c.Second));
        })];
    }

    private static string Say(CylinderFinding found, CylinderFinding left)
    {
        var (first, second) = (string.Join(" ", found.Sentences), string.Join(" ", left.Sentences));
        return !left.IsMeasured ? first : !found.IsMeasured ? second : $"As found: {first} As left: {second}";
    }

    /// <summary>Every plug that was looked at, in order.</summary>
    public static IReadOnlyList<RecordedPlug> Plugs(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. PlugRules.PlugsOf(facts.Specification).Select(key => PlugRules.Standing(facts.PlugChecks, key)).OfType<PlugCheck>().Select(check =>
        {
            var found = check.GapFoundMm is { } gap ? FormattableString.Invariant($", gap {gap:0.00} mm") : "";
            var left = FormattableString.Invariant($"{(check.Renewed ? "renewed" : "put back")}, gap {check.GapLeftMm:0.00} mm");
            return new RecordedPlug(
                check.Key.SpokenIn(facts.Specification), check.Condition, check.GapFoundMm, check.GapLeftMm, check.Renewed,
                $"{Capital(check.Condition.Spoken())}{found}; {left}.");
        })];
    }

    /// <summary>What was looked at after the work, in the order in which it is done; the attempt that counts of each.</summary>
    /// <param name="facts">Of the visit.</param>
    /// <param name="nameOf">The name of a rider.</param>
    public static IReadOnlyList<RecordedCheck> AfterWork(SignOffFacts facts, Func<Guid, string> nameOf)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(nameOf);
        var checks = new List<RecordedCheck>();
        if (AsLeftSet.Of(facts.Readings) is { Count: > 0 } set && set.Confirmed(facts.AsLeftWitnesses) is not null)
        {
            checks.Add(new("Readings as left", "Looked at and confirmed by a second person"));
        }

        foreach (var drive in OpenedDrive.Of(facts.Specification.CamDrives, facts.ToBeTight).Where(d => d.Recheck(facts.CamRechecks) is not null))
        {
            checks.Add(new(drive.Drive.Name, "Checked once more when all was closed, with two turns by hand"));
        }

        var figures = facts.Specification.VisitChecks.FirstOrDefault(c => c.Kind == VisitCheckKind.Balance)?.Balance;
        foreach (var stage in Enum.GetValues<Stage>())
        {
            if (Attempts.Last(facts.Finished.Balances.Where(b => b.Stage == stage)) is { } run)
            {
                checks.Add(new($"Cylinders balanced, {stage.Spoken()}", FormattableString.Invariant($"At {run.SpeedRpm} rpm {BalanceJudgement.Of(figures, run.Vacuums).Sentence}")));
            }
        }

        checks.AddRange(Leaks(facts));
        if (Attempts.Last(facts.Finished.Rides) is { } ride)
        {
            checks.Add(new("Test ride", ride.WhyNot is { } why ? $"Not ridden: {why.Spoken()}" : Ridden(ride, nameOf), ride.WordsRemarkId));
        }

        checks.AddRange(Rechecks.Of(facts).Where(r => r.Last is not null).Select(r => new RecordedCheck(
            $"Once more: {r.Name}", r.Last!.InOrder ? "In order" : "Not in order", r.Last.WordsRemarkId)));
        if (Attempts.Last(facts.Finished.Reminders) is { } reminder)
        {
            checks.Add(new("Service reminder", Capital(reminder.Outcome.Spoken()), reminder.WordsRemarkId));
        }

        var counted = facts.Finished.Taps.Count == 0 ? [] : BayCount.Of(facts).Where(t => t.WentIn > 0 || t.CameBack > 0).ToArray();
        if (counted.Length > 0)
        {
            var apart = counted.Where(t => t.Difference != 0).Select(t => t.Thing.Name).ToArray();
            checks.Add(new("Parts and tools counted", apart.Length == 0 ? "All that went to the engine came back" : $"Explained where the count differs: {string.Join(", ", apart)}"));
        }

        return checks;
    }

    private static IEnumerable<RecordedCheck> Leaks(SignOffFacts facts)
    {
        var seen = LeakPlaces.StatesOf(facts).Where(p => p.Last is not null).ToArray();
        var dry = seen.Where(p => p.Last!.State == LeakState.Dry).ToArray();
        var wet = seen.Where(p => p.Last!.State != LeakState.Dry)
            .Select(p => new RecordedCheck("Leak check", $"{p.Place.Name}: {p.Last!.State.Spoken()}", p.Last.WordsRemarkId));
        return dry.Length == 0
            ? wet
            : wet.Prepend(new RecordedCheck(
                "Leak check", FormattableString.Invariant($"Dry after {dry.Max(p => p.Last!.RunMinutes)} min of running: {string.Join("; ", dry.Select(p => p.Place.Name))}")));
    }

    private static string Ridden(TestRide ride, Func<Guid, string> nameOf)
    {
        var by = ride.RiderId is { } rider ? $", ridden by {nameOf(rider)}" : "";
        return ride.Distance is { } far ? FormattableString.Invariant($"{far.Kilometres:0.#} km{by}") : $"Ridden{by}";
    }

    private static string? Measured(CylinderFinding finding)
    {
        var said = new[] { finding.Dry?.Spoken(), finding.Wet is { } wet ? $"with oil {wet.Spoken()}" : null, finding.LeakDown is { } leak ? $"loses {leak.Spoken()}" : null }.OfType<string>().ToArray();
        return said.Length == 0 ? null : string.Join("; ", said);
    }

    private static string Capital(string words) => words.Length == 0 ? words : $"{char.ToUpperInvariant(words[0])}{words[1..]}";
}
