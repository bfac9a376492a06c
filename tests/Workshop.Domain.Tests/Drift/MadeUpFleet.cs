using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Drift;

/// <summary>
/// Engines whose truth is known, seen through blades at visits. A lobe whose bracket's middle lies outside its limits gets the
/// shim of the series that brings it nearest to set-to (or its screw turned) and is measured again as left; the other valves
/// are carried as not disturbed.
/// </summary>
internal sealed record MadeUpFleet
{
    public static readonly DriftParameters Usual = new(
        IntakeSlope: -0.006, ExhaustSlope: -0.014, BetweenEngines: 0.004, BetweenValves: 0.006, New: 0.015, Adjusted: 0.008, Reading: 0.006);

    public EngineSpecification Specification { get; init; } = SeedFile.Four.Specification;

    public DriftParameters Truth { get; init; } = Usual;

    public int Engines { get; init; } = 30;

    public IReadOnlyList<decimal> VisitsKm { get; init; } = [12_000, 24_000, 36_000, 48_000];

    public decimal StepMm { get; init; } = 0.01m;

    /// <summary>Share of the changes at which the shim that came out was not measured.</summary>
    public double Unmeasured { get; init; }

    /// <summary>Whether valves are set when they are found outside their limits.</summary>
    public bool Adjusts { get; init; } = true;

    /// <summary>Standard deviation of what all readings of a visit have in common, in mm.</summary>
    public double VisitEffect { get; init; }

    /// <summary>What the truth bends by, in mm per (10,000 km)^2.</summary>
    public double Curvature { get; init; }

    public ulong Seed { get; init; } = 1;

    /// <summary>How an engine's rows are written, by its number.</summary>
    public Func<int, EngineRows> RowsOf { get; init; } = number => new EngineRows(number);

    /// <summary>Called after each visit is written, with the engine and the visit's place.</summary>
    public Action<MadeUpEngine, int> AfterVisit { get; init; } = (_, _) => { };

    /// <summary>An in-line four cut down to the four valves of its first cylinder.</summary>
    public static EngineSpecification OneCylinder { get; } = SeedFile.Four.Specification with
    {
        Valves = [.. SeedFile.Four.Specification.Valves.Where(v => v.Key.Cylinder == 1)],
    };

    public IReadOnlyList<MadeUpEngine> Make() =>
        [.. Enumerable.Range(1, Engines).Select(number => MadeUpEngine.Of(this, number))];

    public IReadOnlyList<DriftEngine> Rows() => [.. Make().Select(e => e.Rows.Engine(Specification))];
}

/// <summary>One of them, its truth and its rows.</summary>
internal sealed class MadeUpEngine
{
    private readonly MadeUpFleet fleet;
    private readonly RandomSource random;

    private MadeUpEngine(MadeUpFleet fleet, int number)
    {
        this.fleet = fleet;
        Number = number;
        random = new RandomSource((fleet.Seed * 100_000) + (ulong)number);
        Truth = ClearanceSimulation.OfNewEngine(fleet.Specification, fleet.Truth, random);
        Rows = fleet.RowsOf(number);
    }

    public int Number { get; }

    public ClearanceSimulation Truth { get; }

    public EngineRows Rows { get; }

    public static MadeUpEngine Of(MadeUpFleet fleet, int number)
    {
        var engine = new MadeUpEngine(fleet, number);
        for (var visit = 0; visit < fleet.VisitsKm.Count; visit++)
        {
            engine.Visit(fleet.VisitsKm[visit]);
            fleet.AfterVisit(engine, visit);
        }

        return engine;
    }

    /// <summary>What somebody reads of a lobe, beside its truth moved by so much.</summary>
    public Bracket Felt(LobeKey lobe, decimal km, double moved = 0)
    {
        var x = (double)km / 10_000;
        var felt = Truth.ClearanceAt(lobe, Distance.FromKilometres(km)) + (fleet.Curvature * x * x) + moved
            + random.Normal(0, fleet.Truth.Reading);
        return Through(felt, fleet.StepMm);
    }

    /// <summary>Blades from 0.03 to 0.50 mm.</summary>
    public static Bracket Through(double felt, decimal step)
    {
        var go = Math.Floor((decimal)Math.Clamp(felt, -1, 1) / step) * step;
        return go < 0.03m ? EngineRows.Of(null, Math.Ceiling(0.03m / step) * step)
            : go > 0.50m ? EngineRows.Of(0.50m, null)
            : EngineRows.Of(go, go + step);
    }

    public void Visit(decimal km)
    {
        Rows.At(km);
        var effect = random.Normal(0, fleet.VisitEffect);
        foreach (var valve in fleet.Specification.Valves)
        {
            var lobes = Enumerable.Range(1, valve.Lobes).Select(l => new LobeKey(valve.Key, l)).ToList();
            var found = lobes.Select(lobe => (Lobe: lobe, Bracket: Felt(lobe, km, effect))).ToList();
            foreach (var (lobe, bracket) in found)
            {
                Rows.Read(lobe, Stage.AsFound, bracket);
            }

            var outside = found.Where(f => IsOutside(f.Lobe, f.Bracket)).ToList();
            if (fleet.Adjusts && outside.Count > 0 && Set(outside[0].Lobe, outside[0].Bracket, km))
            {
                foreach (var lobe in lobes)
                {
                    Rows.Read(lobe, Stage.AsLeft, Felt(lobe, km, effect));
                }
            }
            else
            {
                Rows.Happened(valve.Key, ValveEventKind.NotDisturbed);
                foreach (var (lobe, bracket) in found)
                {
                    Rows.Read(lobe, Stage.AsLeft, bracket, notRemeasured: true);
                }
            }
        }
    }

    private bool IsOutside(LobeKey lobe, Bracket bracket)
    {
        var limits = ReadingRules.LimitsOf(fleet.Specification, lobe);
        return Middle(bracket) < limits.Lower.Millimetres || Middle(bracket) > limits.Upper.Millimetres;
    }

    private static decimal Middle(Bracket bracket) => bracket.MiddleMm ?? (bracket.Go ?? bracket.NoGo)!.Value.Millimetres;

    /// <summary>False where no permitted shim is another than the one that is in.</summary>
    private bool Set(LobeKey lobe, Bracket bracket, decimal km)
    {
        if (fleet.Specification.Shims is not { } range)
        {
            Truth.SetScrew(lobe.Valve, Distance.FromKilometres(km));
            Rows.Happened(lobe.Valve, ValveEventKind.ScrewTurned);
            return true;
        }

        var limits = ReadingRules.LimitsOf(fleet.Specification, lobe);
        var now = Truth.ShimIn(lobe.Valve)!.Value.Millimetres;
        var wanted = now + ((Middle(bracket) - limits.SetTo.Millimetres) / limits.LeverRatio.Value);
        var steps = Math.Round((wanted - range.Smallest.Millimetres) / range.StepMm);
        var next = Math.Clamp(
            range.Smallest.Millimetres + (steps * range.StepMm), range.Smallest.Millimetres, range.Largest.Millimetres);
        if (next == now)
        {
            return false;
        }

        Rows.Shim(lobe.Valve, Stage.AsFound, random.Chance(fleet.Unmeasured) ? null : now).Shim(lobe.Valve, Stage.AsLeft, next);
        Truth.Fit(lobe.Valve, ShimThickness.FromMillimetres(next));
        return true;
    }
}
