using Workshop.Domain.CamTiming;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>Drives of the camshafts and what is stated about timing.</summary>
internal static class CamDriveCheck
{
    private const int FewestTeeth = 8;
    private const int MostTeeth = 150;
    private const int MostMarks = 40;
    private const decimal LargestDeviation = 15;
    private const decimal LargestLiftMm = 20;
    private const decimal LargestExtensionMm = 100;

    /// <summary>Lobe centres of road engines lie well inside these (common practice, no source).</summary>
    private const decimal UsualLowestCentre = 85;
    private const decimal UsualHighestCentre = 135;

    public static void Run(EngineSpecification specification, Findings findings)
    {
        var fasteners = specification.Fasteners.Select(f => f.Code).ToHashSet(StringComparer.Ordinal);
        var banks = specification.Layout.Cylinders.Select(c => c.Bank).ToHashSet(StringComparer.Ordinal);
        var timed = new HashSet<(string, Side)>();
        findings.Codes("camDrives", specification.CamDrives.Select(d => d.Code));
        for (var i = 0; i < specification.CamDrives.Count; i++)
        {
            var (path, drive) = ($"camDrives[{i}]", specification.CamDrives[i]);
            findings.Text($"{path}.name", drive.Name, "what the workshop calls the drive");
            findings.Text($"{path}.alignmentCheck", drive.AlignmentCheck, "how alignment is checked: jig, marks, what lines up with what");
            findings.FaultIf(!banks.Contains(drive.Bank), $"{path}.bank",
                $"{path}.bank is \"{drive.Bank}\": the layout has {string.Join(", ", banks)}.");
            findings.FaultIf(drive.AlignmentMarks is < 1 or > MostMarks, $"{path}.alignmentMarks",
                $"{path}.alignmentMarks is {drive.AlignmentMarks}: 1 to {MostMarks} is allowed; leave it out where only a jig tells.");
            findings.References($"{path}.sprocketBolts", drive.SprocketBolts, fasteners, "fasteners");
            findings.References($"{path}.tensionerFasteners", drive.TensionerFasteners, fasteners, "fasteners");
            findings.FaultIf(drive.RecheckSprocketBolts && drive.SprocketBolts.Count == 0, $"{path}.recheckSprocketBolts",
                $"{path}.recheckSprocketBolts is true, but sprocketBolts is empty: name them.");
            Stages(path, drive, findings);
            Lobes(path, drive, specification, timed, findings);
            Wear(path, drive, findings);
            findings.Provenance($"{path}.provenance", drive.Provenance);
        }

        Cautions(specification, findings);
    }

    private static void Stages(string path, CamDrive drive, Findings findings)
    {
        findings.FaultIf(drive.Stages.Count == 0, $"{path}.stages", $"{path}.stages is empty: a direct drive has one.");
        for (var i = 0; i < drive.Stages.Count; i++)
        {
            var (at, stage) = ($"{path}.stages[{i}]", drive.Stages[i]);
            findings.Text($"{at}.name", stage.Name, "from where to where it goes");
            foreach (var (member, teeth) in new[] { ("drivingTeeth", stage.DrivingTeeth), ("drivenTeeth", stage.DrivenTeeth) })
            {
                findings.FaultIf(teeth is < FewestTeeth or > MostTeeth, $"{at}.{member}",
                    $"{at}.{member} is {teeth}: {FewestTeeth} to {MostTeeth} is allowed.");
            }
        }

        // In whole numbers, so that three thirds are one.
        var driven = drive.Stages.Aggregate(1m, (product, s) => product * s.DrivenTeeth);
        var driving = drive.Stages.Aggregate(1m, (product, s) => product * s.DrivingTeeth);
        findings.FaultIf(drive.Stages.Count > 0 && driving > 0 && driven != CrankAngle.CrankPerCam * driving, $"{path}.stages",
            $"{path}.stages turn the crankshaft {driven / (driving == 0 ? 1 : driving):0.####} times for one turn of the camshaft: 2 is wanted.");
    }

    private static void Lobes(
        string path, CamDrive drive, EngineSpecification specification, HashSet<(string, Side)> timed, Findings findings)
    {
        findings.FaultIf(drive.Lobes.Count == 0, $"{path}.lobes", $"{path}.lobes is empty: say how at least one camshaft is timed.");
        for (var i = 0; i < drive.Lobes.Count; i++)
        {
            var (at, lobe) = ($"{path}.lobes[{i}]", drive.Lobes[i]);
            var shaft = specification.Camshafts.FirstOrDefault(c => c.Code == lobe.Camshaft);
            findings.FaultIf(shaft is null, $"{at}.camshaft", $"{at}.camshaft is \"{lobe.Camshaft}\": camshafts has no such code.");
            findings.FaultIf(shaft is not null && shaft.Valves.All(v => v.Side != lobe.Side), $"{at}.side",
                $"{at}.side is {lobe.Side.Spoken()}: {shaft?.Name} moves no such valve.");
            findings.FaultIf(!timed.Add((lobe.Camshaft, lobe.Side)), $"{at}.camshaft",
                $"{at} times the {lobe.Side.Spoken()} side of \"{lobe.Camshaft}\" for the second time: once.");
            findings.FaultIf(lobe.PermittedDeviation.Degrees is <= 0 or > LargestDeviation, $"{at}.permittedDeviationDegrees",
                $"{at}.permittedDeviationDegrees is {lobe.PermittedDeviation.Degrees}: above 0 and at most {LargestDeviation} crank degrees is allowed.");
            Timing(at, lobe, findings);
        }
    }

    private static void Timing(string at, LobeTiming lobe, Findings findings)
    {
        foreach (var (member, angle) in new[] { ("lobeCentreDegrees", lobe.LobeCentre), ("opensDegrees", lobe.Opens), ("closesDegrees", lobe.Closes) })
        {
            findings.FaultIf(angle is { Degrees: < CrankAngle.SmallestDegrees or > CrankAngle.LargestDegrees }, $"{at}.{member}",
                $"{at}.{member} is {angle?.Degrees}: {CrankAngle.SmallestDegrees} to {CrankAngle.LargestDegrees} crank degrees is allowed.");
        }

        findings.FaultIf(lobe.Opens is null != lobe.Closes is null, $"{at}.closesDegrees",
            $"{at} states when it opens or when it closes, not both: both at one lift are wanted, or neither.");
        findings.FaultIf(lobe.LobeCentre is null && lobe.Opens is null, $"{at}.lobeCentreDegrees",
            $"{at} states no timing: give the lobe centre, or opening and closing at one lift.");
        findings.FaultIf(lobe.Opens is not null && lobe.AtLiftMm is null, $"{at}.atLiftMm", $"{at}.atLiftMm is missing: say at which lift opening and closing are stated.");
        findings.FaultIf(lobe.Opens is not null && lobe.MeasuredAt is null, $"{at}.measuredAt", $"{at}.measuredAt is missing: say where that lift is measured.");
        findings.FaultIf(lobe.AtLiftMm is < 0 or > LargestLiftMm, $"{at}.atLiftMm", $"{at}.atLiftMm is {lobe.AtLiftMm}: 0 to {LargestLiftMm} mm is allowed.");
        if (lobe.LobeCentre is { Degrees: < UsualLowestCentre or > UsualHighestCentre } centre)
        {
            findings.Confirm($"{at}.lobeCentreDegrees",
                $"{at}.lobeCentreDegrees is {centre.Degrees}: {UsualLowestCentre} to {UsualHighestCentre} crank degrees is usual.");
        }

        if (lobe.LobeCentre is { } stated && CamEvents.Of(lobe) is { } events
            && (events.LobeCentre(lobe.Side) - stated).Abs() > lobe.PermittedDeviation)
        {
            findings.Confirm($"{at}.lobeCentreDegrees",
                $"{at}.lobeCentreDegrees is {stated.Degrees}, but the middle between opening and closing is {events.LobeCentre(lobe.Side).Degrees:0.##}: that is a lobe with unlike flanks.");
        }
    }

    private static void Wear(string path, CamDrive drive, Findings findings)
    {
        var stretches = drive.Stages.Any(s => s.Kind is DriveKind.Chain or DriveKind.Belt);
        findings.FaultIf(drive.Tensioner is not null && !stretches && drive.Stages.Count > 0, $"{path}.tensioner", $"{path}.tensioner is stated, but no stage is a chain or belt.");
        if (drive.Tensioner is { } tensioner)
        {
            findings.FaultIf(tensioner.LimitMm is <= 0 or > LargestExtensionMm, $"{path}.tensioner.limitMm",
                $"{path}.tensioner.limitMm is {tensioner.LimitMm}: above 0 and at most {LargestExtensionMm} mm is allowed.");
            findings.FaultIf(tensioner.NewMm < 0 || tensioner.NewMm >= tensioner.LimitMm, $"{path}.tensioner.newMm",
                $"{path}.tensioner.newMm is {tensioner.NewMm}: 0 to below the limit of {tensioner.LimitMm} mm is allowed.");
            findings.FaultIf(tensioner.StepMm <= 0 || tensioner.StepMm > tensioner.LimitMm, $"{path}.tensioner.stepMm",
                $"{path}.tensioner.stepMm is {tensioner.StepMm}: above 0 and at most the limit of {tensioner.LimitMm} mm is allowed; leave it out where it moves freely.");
            findings.FaultIf(tensioner.StopMm < tensioner.LimitMm, $"{path}.tensioner.stopMm",
                $"{path}.tensioner.stopMm is {tensioner.StopMm}: the limit of {tensioner.LimitMm} mm could never be read; not below it is allowed.");
        }

        findings.FaultIf(drive.Chain is { Links: < 2 or > 300 }, $"{path}.chain.links", $"{path}.chain.links is {drive.Chain?.Links}: 2 to 300 is allowed.");
        findings.FaultIf(drive.Chain is { LimitMm: <= 0 or > 3000 }, $"{path}.chain.limitMm", $"{path}.chain.limitMm is {drive.Chain?.LimitMm}: above 0 and at most 3000 mm is allowed.");
    }

    /// <summary>Whoever opens sprocket bolts or tensioner is told the cautions of it: a slack chain jumps, a tensioner springs.</summary>
    private static void Cautions(EngineSpecification specification, Findings findings)
    {
        for (var i = 0; i < specification.ServiceItems.Count; i++)
        {
            var item = specification.ServiceItems[i];
            var opened = Opened.By(specification, [item]).Fasteners.Select(f => f.Code).ToHashSet(StringComparer.Ordinal);
            foreach (var code in DriveCautions.Of(specification.CamDrives, opened).Where(c => !item.Cautions.Contains(c)))
            {
                findings.Fault($"serviceItems[{i}].cautions",
                    $"serviceItems[{i}].cautions lacks \"{code}\": {item.Name} opens what holds a camshaft's drive.");
            }
        }
    }
}
