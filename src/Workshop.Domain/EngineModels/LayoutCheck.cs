namespace Workshop.Domain.EngineModels;

/// <summary>Cylinders, firing order, valves, camshafts and measuring positions.</summary>
internal static class LayoutCheck
{
    private const decimal DegreesOfACycle = 720;

    public static void Run(EngineSpecification specification, Findings findings)
    {
        Layout(specification.Layout, findings);
        Valves(specification, findings);
        Camshafts(specification, findings);
        Positions(specification, findings);
    }

    private static void Layout(EngineLayout layout, Findings findings)
    {
        findings.Text("layout.description", layout.Description, "the engine's build in words");
        findings.Text("layout.numberingSeenFrom", layout.NumberingSeenFrom, "where one stands when counting cylinders");
        findings.Text("layout.turningSeenFrom", layout.TurningSeenFrom, "the side from which the turning direction is seen");
        findings.Text("layout.timingMarks", layout.TimingMarks, "what lines up with what");
        findings.FaultIf(layout.Cylinders.Count == 0, "layout.cylinders", $"layout.cylinders is empty: an engine has one at least.");
        for (var i = 0; i < layout.Cylinders.Count; i++)
        {
            findings.FaultIf(layout.Cylinders[i].Number != i + 1, $"layout.cylinders[{i}].number",
                $"layout.cylinders[{i}].number is {layout.Cylinders[i].Number}: cylinders stand in order of number, from 1; {i + 1} is expected.");
            findings.Text($"layout.cylinders[{i}].bank", layout.Cylinders[i].Bank, "the bank that the cylinder belongs to");
        }

        findings.FaultIf(
            !layout.FiringOrder.Order().SequenceEqual(layout.Cylinders.Select(c => c.Number).Order()), "layout.firingOrder",
            $"layout.firingOrder is {string.Join("-", layout.FiringOrder)}: it names each of the {layout.Cylinders.Count} cylinders once.");
        findings.FaultIf(layout.FiringOrder is [not 1, ..], "layout.firingOrder",
            $"layout.firingOrder is {string.Join("-", layout.FiringOrder)}: it begins with cylinder 1, from which crank angles count.");
    }

    private static void Valves(EngineSpecification specification, Findings findings)
    {
        var cylinders = specification.Layout.Cylinders.Select(c => c.Number).ToHashSet();
        var seen = new HashSet<ValveKey>();
        for (var i = 0; i < specification.Valves.Count; i++)
        {
            var (key, lobes) = specification.Valves[i];
            findings.FaultIf(!cylinders.Contains(key.Cylinder), $"valves[{i}].valve",
                $"valves[{i}].valve is {key}: the engine has no cylinder {key.Cylinder}.");
            findings.FaultIf(!seen.Add(key), $"valves[{i}].valve", $"valves[{i}].valve is {key} for the second time: each valve once.");
            findings.FaultIf(lobes is not (1 or 2), $"valves[{i}].lobes",
                $"valves[{i}].lobes is {lobes}: 1, or 2 where the profile is switched.");
            findings.FaultIf(key.Position > 1 && !specification.Valves.Any(v => v.Key == key with { Position = key.Position - 1 }),
                $"valves[{i}].valve", $"valves[{i}].valve is {key}, but there is no {key with { Position = key.Position - 1 }}: positions count from 1.");
        }

        foreach (var cylinder in cylinders)
        {
            foreach (var side in Enum.GetValues<Side>())
            {
                findings.FaultIf(!seen.Any(v => v.Cylinder == cylinder && v.Side == side), "valves",
                    $"valves has none for the {Word(side)} side of cylinder {cylinder}.");
            }
        }
    }

    private static void Camshafts(EngineSpecification specification, Findings findings)
    {
        var valves = specification.Valves.Select(v => v.Key).ToHashSet();
        findings.Codes("camshafts", specification.Camshafts.Select(c => c.Code));
        for (var i = 0; i < specification.Camshafts.Count; i++)
        {
            var camshaft = specification.Camshafts[i];
            findings.Text($"camshafts[{i}].name", camshaft.Name, "what the workshop calls it");
            for (var j = 0; j < camshaft.Valves.Count; j++)
            {
                findings.FaultIf(!valves.Contains(camshaft.Valves[j]), $"camshafts[{i}].valves[{j}]",
                    $"camshafts[{i}].valves[{j}] is {camshaft.Valves[j]}: the engine has no such valve.");
            }
        }

        foreach (var valve in valves.Except(specification.Camshafts.SelectMany(c => c.Valves)).Order())
        {
            findings.Fault("camshafts", $"camshafts has none for valve {valve}: say which camshaft or follower shaft disturbs it.");
        }
    }

    private static void Positions(EngineSpecification specification, Findings findings)
    {
        var lobes = ClearanceCheck.LobesOf(specification).ToHashSet();
        var measured = new HashSet<LobeKey>();
        decimal? before = null;
        for (var i = 0; i < specification.MeasuringPositions.Count; i++)
        {
            var (path, position) = ($"measuringPositions[{i}]", specification.MeasuringPositions[i]);
            findings.Text($"{path}.name", position.Name, "the position in words");
            findings.Text($"{path}.mark", position.Mark, "what the technician sees when the crank is there");
            findings.FaultIf(position.CrankDegrees is < 0 or >= DegreesOfACycle, $"{path}.crankDegrees",
                $"{path}.crankDegrees is {position.CrankDegrees}: 0 to below {DegreesOfACycle} is allowed, from compression dead centre of cylinder 1.");
            findings.FaultIf(position.CrankDegrees <= before, $"{path}.crankDegrees",
                $"{path}.crankDegrees is {position.CrankDegrees}, not after the {before} of the position before: positions stand in running direction.");
            before = position.CrankDegrees;
            for (var j = 0; j < position.Lobes.Count; j++)
            {
                var lobe = position.Lobes[j];
                findings.FaultIf(!lobes.Contains(lobe), $"{path}.lobes[{j}]", $"{path}.lobes[{j}] is {lobe}: the engine has no such lobe.");
                findings.FaultIf(!measured.Add(lobe), $"{path}.lobes[{j}]",
                    $"{path}.lobes[{j}] is {lobe}, which is measured already: each lobe at one position.");
            }
        }

        foreach (var lobe in lobes.Except(measured).Order())
        {
            findings.Fault("measuringPositions", $"measuringPositions has none for {lobe}: each lobe must be measurable once.");
        }
    }

    internal static string Word(Side side) => side == Side.Intake ? "intake" : "exhaust";
}
