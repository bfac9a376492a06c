using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Drift;

/// <summary>
/// One engine whose true clearances are known, because they are made up: drawn from the drift model of
/// <see cref="DriftParameters"/>, moved by shims and screws, and seen only through feeler blades. For demonstrations and for
/// studies of whether an estimate finds what is there.
/// </summary>
public sealed class ClearanceSimulation
{
    /// <summary>How far from the middle of the permitted range the shims of a new engine lie, in steps of the series.</summary>
    private const int StepsAroundMiddle = 6;

    /// <summary>Standard deviation of a shim's true thickness about its nominal one, in mm.</summary>
    private const double ShimTolerance = 0.003;

    private readonly EngineSpecification specification;
    private readonly DriftParameters parameters;
    private readonly RandomSource random;
    private readonly Dictionary<LobeKey, Truth> lobes = [];
    private readonly Dictionary<ValveKey, ShimThickness> shims = [];

    private ClearanceSimulation(EngineSpecification specification, DriftParameters parameters, RandomSource random) =>
        (this.specification, this.parameters, this.random) = (specification, parameters, random);

    /// <summary>A new engine at 0 km.</summary>
    /// <param name="specification">Its valves, limits and shims.</param>
    /// <param name="parameters">How such engines drift.</param>
    /// <param name="random">Drawn from for this engine alone; the same source gives the same engine.</param>
    public static ClearanceSimulation OfNewEngine(
        EngineSpecification specification, DriftParameters parameters, RandomSource random)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(parameters);
        ArgumentNullException.ThrowIfNull(random);
        var engine = new ClearanceSimulation(specification, parameters, random);
        var shared = random.Normal(0, parameters.BetweenEngines);
        foreach (var lobe in ReadingRules.LobesOf(specification))
        {
            var limits = ReadingRules.LimitsOf(specification, lobe);
            engine.lobes.Add(lobe, new Truth(
                Distance.Zero,
                random.Normal((double)limits.SetTo.Millimetres, parameters.New),
                random.Normal(parameters.SlopeOf(lobe.Valve.Side) + shared, parameters.BetweenValves),
                (double)limits.LeverRatio.Value));
        }

        if (specification.Shims is { } range)
        {
            foreach (var valve in specification.Valves)
            {
                engine.shims.Add(valve.Key, engine.SomeShim(range));
            }
        }

        return engine;
    }

    /// <summary>The true slope in mm per 10,000 km, which no reading shows by itself.</summary>
    public double SlopeOf(LobeKey lobe) => lobes[lobe].Slope;

    /// <summary>The true clearance in mm when the engine has done so much; negative where the valve is held open.</summary>
    public double ClearanceAt(LobeKey lobe, Distance engineDistance)
    {
        var truth = lobes[lobe];
        return truth.Level + (truth.Slope * (double)((engineDistance - truth.From).Metres / LobeHistory.MetresPerX));
    }

    /// <summary>The shim that is in a valve; absent for screw and locknut.</summary>
    public ShimThickness? ShimIn(ValveKey valve) => shims.TryGetValue(valve, out var shim) ? shim : null;

    /// <summary>Another shim: the clearance of each of the valve's lobes falls by lever ratio x added thickness.</summary>
    /// <exception cref="KeyNotFoundException">The valve has no shim.</exception>
    public void Fit(ValveKey valve, ShimThickness shim)
    {
        var added = (double)(shim - shims[valve]);
        shims[valve] = shim;
        foreach (var lobe in LobesOf(valve))
        {
            lobes[lobe] = lobes[lobe] with { Level = lobes[lobe].Level - (lobes[lobe].Ratio * added) };
        }
    }

    /// <summary>The screw is turned to the clearance to aim at, as well as a hand can.</summary>
    public void SetScrew(ValveKey valve, Distance engineDistance)
    {
        foreach (var lobe in LobesOf(valve))
        {
            var aim = (double)ReadingRules.LimitsOf(specification, lobe).SetTo.Millimetres;
            lobes[lobe] = lobes[lobe] with { From = engineDistance, Level = random.Normal(aim, parameters.Adjusted) };
        }
    }

    /// <summary>What somebody reads with a set of blades: the thickest that enters and the thinnest that does not.</summary>
    /// <param name="lobe">The lobe that is measured.</param>
    /// <param name="engineDistance">What the engine has done.</param>
    /// <param name="blades">The set, in any order; at least one.</param>
    public Bracket Measure(LobeKey lobe, Distance engineDistance, IReadOnlyList<Clearance> blades)
    {
        ArgumentNullException.ThrowIfNull(blades);
        ArgumentOutOfRangeException.ThrowIfZero(blades.Count);
        var felt = ClearanceAt(lobe, engineDistance) + random.Normal(0, parameters.Reading);
        Clearance? go = null;
        Clearance? noGo = null;
        foreach (var blade in blades)
        {
            if ((double)blade.Millimetres <= felt)
            {
                go = go is { } thickest && thickest >= blade ? go : blade;
            }
            else
            {
                noGo = noGo is { } thinnest && thinnest <= blade ? noGo : blade;
            }
        }

        var kind = go is null ? BracketKind.NoneEnters : noGo is null ? BracketKind.ThickestIsLoose : BracketKind.GoAndNoGo;
        return Bracket.Of(kind, go, noGo);
    }

    private List<LobeKey> LobesOf(ValveKey valve) => [.. lobes.Keys.Where(l => l.Valve == valve)];

    private ShimThickness SomeShim(ShimRange range)
    {
        var middle = (range.Smallest.Millimetres + range.Largest.Millimetres) / 2;
        var nominal = middle + (range.StepMm * random.WholeNumber(-StepsAroundMiddle, StepsAroundMiddle));
        var thickness = decimal.Round(nominal + (decimal)random.Normal(0, ShimTolerance), ShimThickness.DecimalsMm);
        return ShimThickness.FromMillimetres(
            Math.Clamp(thickness, range.Smallest.Millimetres, range.Largest.Millimetres));
    }

    /// <param name="From">Where x counts from.</param>
    /// <param name="Level">True clearance there with the shim that is in now, in mm.</param>
    /// <param name="Slope">True slope, mm per 10,000 km.</param>
    /// <param name="Ratio">Lever ratio.</param>
    private sealed record Truth(Distance From, double Level, double Slope, double Ratio);
}
