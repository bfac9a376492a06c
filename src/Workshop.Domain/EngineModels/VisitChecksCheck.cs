namespace Workshop.Domain.EngineModels;

/// <summary>What is asked for on a visit before and after the work: each kind once, with its own figures and no others.</summary>
internal static class VisitChecksCheck
{
    public const int SlowestRpm = 500;
    public const int FastestRpm = 6000;
    public const int MostRpmApart = 500;
    public const decimal LargestToleranceKpa = 50;

    public static void Run(EngineSpecification specification, Findings findings)
    {
        var items = specification.ServiceItems.Select(i => i.Code).ToHashSet(StringComparer.Ordinal);
        var seen = new HashSet<VisitCheckKind>();
        for (var i = 0; i < specification.VisitChecks.Count; i++)
        {
            var (path, check) = ($"visitChecks[{i}]", specification.VisitChecks[i]);
            findings.FaultIf(!seen.Add(check.Kind), $"{path}.kind", $"{path}.kind is {check.Kind.Spoken()} for the second time: each kind once.");
            findings.References($"{path}.afterItems", check.AfterItems, items, "serviceItems");
            findings.FaultIf(check.Asked == WhenAsked.AfterItems && check.AfterItems.Count == 0, $"{path}.afterItems",
                $"{path}.afterItems is empty: name the service items after which it is asked for, or ask for it always.");
            findings.FaultIf(check.Asked != WhenAsked.AfterItems && check.AfterItems.Count > 0, $"{path}.afterItems",
                $"{path}.afterItems names service items, but it is asked for {check.SpokenWhen(specification)}: leave one of them out.");
            if (check.Note is not null)
            {
                findings.Text($"{path}.note", check.Note, "what the maker says of it, or nothing");
            }

            Balance(path, check, specification, findings);
            Leaks(path, check, findings);
            Recheck(path, check, specification, findings);
            findings.FaultIf(check.Kind == VisitCheckKind.TestRide && specification.AfterWork?.TestRideMinutes == 0, $"{path}.kind",
                $"{path}.kind is {check.Kind.Spoken()}, but afterWork.testRideMinutes is 0: leave one of them out.");
        }
    }

    private static void Balance(string path, CheckOnVisit check, EngineSpecification specification, Findings findings)
    {
        var cylinders = specification.Layout.Cylinders;
        findings.FaultIf(check.Kind == VisitCheckKind.Balance && cylinders.Count < 2, $"{path}.kind",
            $"{path}.kind is {check.Kind.Spoken()}: an engine of one cylinder has nothing to balance.");
        if (check.Balance is not { } figures)
        {
            return;
        }

        Only(VisitCheckKind.Balance, $"{path}.balance", check, findings);
        findings.FaultIf(figures.SpeedRpm is < SlowestRpm or > FastestRpm, $"{path}.balance.speedRpm",
            $"{path}.balance.speedRpm is {figures.SpeedRpm}: {SlowestRpm} to {FastestRpm} is allowed.");
        findings.FaultIf(figures.SpeedToleranceRpm is < 0 or > MostRpmApart, $"{path}.balance.speedToleranceRpm",
            $"{path}.balance.speedToleranceRpm is {figures.SpeedToleranceRpm}: 0 to {MostRpmApart} is allowed.");
        findings.FaultIf(figures.Tolerance.Kilopascals is <= 0 or > LargestToleranceKpa, $"{path}.balance.toleranceKpa",
            $"{path}.balance.toleranceKpa is {figures.Tolerance.Kilopascals}: above 0 and at most {LargestToleranceKpa} is allowed.");
        findings.FaultIf(figures.ReferenceCylinder is { } number && cylinders.All(c => c.Number != number), $"{path}.balance.referenceCylinder",
            $"{path}.balance.referenceCylinder is {figures.ReferenceCylinder}: the layout has no such cylinder.");
    }

    private static void Leaks(string path, CheckOnVisit check, Findings findings)
    {
        if (check.Places.Count > 0)
        {
            Only(VisitCheckKind.LeakCheck, $"{path}.places", check, findings);
        }

        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < check.Places.Count; i++)
        {
            findings.Text($"{path}.places[{i}]", check.Places[i], "a place to look at");
            findings.FaultIf(check.Places[i].Length > Findings.LongestCode, $"{path}.places[{i}]",
                $"{path}.places[{i}] has {check.Places[i].Length} characters: at most {Findings.LongestCode} are allowed.");
            findings.FaultIf(!seen.Add(check.Places[i]), $"{path}.places[{i}]", $"{path}.places[{i}] is \"{check.Places[i]}\" for the second time: name it once.");
        }
    }

    private static void Recheck(string path, CheckOnVisit check, EngineSpecification specification, Findings findings)
    {
        findings.References($"{path}.fastenersAgain", check.FastenersAgain,
            specification.Fasteners.Select(f => f.Code).ToHashSet(StringComparer.Ordinal), "fasteners");
        if (check.OilAfterRun)
        {
            Only(VisitCheckKind.Recheck, $"{path}.oilAfterRun", check, findings);
        }

        if (check.FastenersAgain.Count > 0)
        {
            Only(VisitCheckKind.Recheck, $"{path}.fastenersAgain", check, findings);
        }

        findings.FaultIf(check is { Kind: VisitCheckKind.Recheck, OilAfterRun: false, FastenersAgain.Count: 0 }, $"{path}.kind",
            $"{path}.kind is {check.Kind.Spoken()}, and neither the oil level nor a fastener is named: a re-check of the cooled engine stands in afterWork.recheck.");
    }

    private static void Only(VisitCheckKind kind, string path, CheckOnVisit check, Findings findings) =>
        findings.FaultIf(check.Kind != kind, path, $"{path} is given, but the kind is {check.Kind.Spoken()}: only {kind.Spoken()} has it.");
}
