using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>Why nothing is foretold of a lobe.</summary>
public enum NoForecastReason
{
    /// <summary>Its engine model's drift is not known, and there is no other to borrow from.</summary>
    NoFit,

    /// <summary>No valve of its side was read in any engine of the model.</summary>
    SideNotKnown,

    /// <summary>It was never measured, and too much may have been done to it already.</summary>
    NotMeasured,

    /// <summary>Nobody knows whether it was changed since it was measured.</summary>
    ChangeUnknown,
}

/// <summary>What is known and foretold of one lobe; clearances are true ones, in mm, without the error of a reading.</summary>
/// <param name="Lobe">Which.</param>
/// <param name="Readings">Readings of its present slope; none: the engine model alone tells.</param>
/// <param name="From">What the engine had done where the forecast begins: at the last reading, or where it was set.</param>
/// <param name="PresentMm">Mean of the clearance there, with the shim that is in now.</param>
/// <param name="PresentDeviationMm">Standard deviation of it.</param>
/// <param name="DriftMm">Mean change of clearance per 10,000 km with the shims' part taken out.</param>
/// <param name="DriftDeviationMm">Standard deviation of it.</param>
/// <param name="Earliest">By here it has left its limits with a probability of 10 %; absent where not within reach.</param>
/// <param name="Even">With 50 %.</param>
/// <param name="Latest">With 90 %.</param>
public sealed record LobeForecast(
    LobeKey Lobe,
    int Readings,
    Distance From,
    double PresentMm,
    double PresentDeviationMm,
    double DriftMm,
    double DriftDeviationMm,
    Distance? Earliest,
    Distance? Even,
    Distance? Latest);

/// <summary>One upright of a fan: at a distance, what the true clearance is not below with a given probability, in mm.</summary>
/// <param name="At">What the engine will have done.</param>
/// <param name="Mm">One for each of <see cref="EngineForecast.FanProbabilities"/>.</param>
public sealed record FanPoint(Distance At, IReadOnlyList<double> Mm);

/// <summary>
/// What the valves of one engine will do, from its readings and what is known of its engine model. Valves of one engine share
/// oil and rider; probabilities for the engine count that. Not for several threads at once.
/// </summary>
public sealed class EngineForecast
{
    /// <summary>The quantiles of a fan.</summary>
    public static readonly IReadOnlyList<double> FanProbabilities = [0.05, 0.25, 0.5, 0.75, 0.95];

    /// <summary>How far ahead of the last reading anything is looked for.</summary>
    public static readonly Distance Reach = Distance.FromKilometres(200_000);

    /// <summary>Equally likely slopes that stand for a posterior.</summary>
    private const int SettingSlopes = 16;

    private static readonly double ReachX = (double)(Reach.Metres / LobeHistory.MetresPerX);

    /// <summary>Of having left the limits: early, even, late.</summary>
    private static readonly double[] LeavingProbabilities = [0.1, MoreLikelyThanNot, 0.9];

    private const double MoreLikelyThanNot = 0.5;

    /// <summary>More than two sums over one posterior differ by.</summary>
    private const double SumsDiffer = 1e-4;

    /// <summary>Below it some lobe is outside for certain, whether or not it was read there.</summary>
    private const double LeastInside = 1e-6;

    private readonly DriftEngine engine;
    private readonly ClusterPosterior? posterior;
    private readonly Dictionary<LobeKey, Standing> standings = [];
    private readonly int groups;

    private EngineForecast(DriftEngine engine, DriftFit fit)
    {
        this.engine = engine;
        var paths = DriftPaths.ForPosterior(engine, fit);
        groups = paths.Groups.Count;
        posterior = groups == 0 ? null : IntervalPaths.PosteriorOfCluster(paths.Data, fit.Plausible, 0);
        foreach (var (group, number) in paths.Groups.Select((g, i) => (g, i)).Where(g => g.g.IsPresent))
        {
            var history = engine.Lobes.Single(l => l.Lobe == group.Lobe);
            if (history.CutSinceLastReading != LegCut.ChangeUnknown)
            {
                standings.Add(group.Lobe, Standing.Of(engine, history, group, number));
            }
        }

        WhyNot = engine.Lobes.Select(l => l.Lobe).Where(l => !standings.ContainsKey(l)).ToDictionary(l => l, l => ReasonOf(l, fit));
    }

    /// <summary>Lobes of which nothing can be said, with the reason.</summary>
    public IReadOnlyDictionary<LobeKey, NoForecastReason> WhyNot { get; }

    /// <summary>Works out what is known of an engine.</summary>
    /// <param name="engine">Its readings.</param>
    /// <param name="fit">What is known of its engine model.</param>
    public static EngineForecast Of(DriftEngine engine, DriftFit fit)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(fit);
        return new EngineForecast(engine, fit);
    }

    /// <summary>What is foretold of a lobe; nothing where <see cref="WhyNot"/> has it.</summary>
    public LobeForecast? Find(LobeKey lobe)
    {
        if (!standings.TryGetValue(lobe, out var standing))
        {
            return null;
        }

        var known = posterior!.Groups[standing.Group];
        var leaves = known.LeavingDistances(standing.FromX, standing.LowerMm, standing.UpperMm, LeavingProbabilities, ReachX);
        return new LobeForecast(
            lobe,
            standing.Readings,
            standing.Leg.DistanceAt(standing.FromX),
            known.MeanAt(standing.FromX) - standing.PartMm,
            known.DeviationAt(standing.FromX),
            known.SlopeMean,
            known.SlopeDeviation,
            At(leaves[0]),
            At(leaves[1]),
            At(leaves[2]));

        Distance? At(double? x) => x is { } there ? standing.Leg.DistanceAt(there) : null;
    }

    /// <summary>The probability that a lobe has left its limits when the engine has done so much; nothing where nothing is foretold.</summary>
    public double? OutsideBy(LobeKey lobe, Distance at) => standings.TryGetValue(lobe, out var standing)
        ? posterior!.Groups[standing.Group].LeftBy(
            standing.FromX, Math.Max(standing.FromX, standing.Leg.XAt(at)), standing.LowerMm, standing.UpperMm)
        : null;

    /// <summary>
    /// The probability that any lobe has left its limits when the engine has done so much, those of which nothing is foretold
    /// left out; nothing where that is all of them.
    /// </summary>
    /// <param name="at">What the engine will have done.</param>
    /// <param name="side">Of this side alone; of both where absent.</param>
    public double? AnyOutsideBy(Distance at, Side? side = null)
    {
        var asked = standings.Where(s => side is null || s.Key.Valve.Side == side).Select(s => s.Value).ToList();
        if (asked.Count == 0)
        {
            return null;
        }

        var outlooks = new Outlook?[groups];
        foreach (var standing in asked)
        {
            outlooks[standing.Group] = new Outlook(
                standing.FromX, Math.Max(standing.FromX, standing.Leg.XAt(at)), standing.LowerMm, standing.UpperMm);
        }

        return posterior!.AnyLeftBy(outlooks);
    }

    /// <summary>
    /// The distance at which the probability that any lobe has left its limits passes a threshold, to a kilometre;
    /// nothing where it does not within reach of the last reading, or nothing is foretold.
    /// </summary>
    /// <remarks>
    /// Where the last readings let every lobe be inside its limits, the probability is that of leaving them from there on, each lobe
    /// from its own last reading: whoever checked it found it inside. Where one was read outside, it passes where that was read. It
    /// never passes later than one of the lobes is more likely than not outside (or as likely as the threshold, where that asks for
    /// more) by all that was read: an engine cannot be better than its worst valve.
    /// </remarks>
    /// <param name="threshold">Between 0 and 1.</param>
    public Distance? AnyPasses(double threshold)
    {
        if (standings.Count == 0)
        {
            return null;
        }

        var readOutside = standings.Values.Where(s => s.ReadOutside).Select(s => (Distance?)s.From).Min();
        return FirstLobeBy(Math.Max(threshold, MoreLikelyThanNot), readOutside ?? AnyPassesFromWithin(threshold));
    }

    private Distance? AnyPassesFromWithin(double threshold)
    {
        var (first, last) = (standings.Values.Min(s => s.From), standings.Values.Max(s => s.From));
        var inside = 1 - AnyOutsideBy(first)!.Value;
        if (inside < LeastInside)
        {
            return last;
        }

        var found = LeavingDistance.First(
            at => 1 - ((1 - AnyOutsideBy(Distance.FromMetres((decimal)at))!.Value) / inside),
            (double)first.Metres,
            threshold,
            (double)(Reach + last - first).Metres,
            precision: 1000);
        if (found is not { } metres)
        {
            return null;
        }

        var whole = Distance.FromKilometres(decimal.Floor((decimal)metres / Distance.MetresPerKilometre));
        return whole > first ? whole : first;
    }

    /// <summary>Where the first lobe has left its limits with a probability, if that is before a distance; else that distance.</summary>
    private Distance? FirstLobeBy(double probability, Distance? before)
    {
        foreach (var (lobe, standing) in standings)
        {
            if (before is { } at && OutsideBy(lobe, at) < probability - SumsDiffer)
            {
                continue;
            }

            var leaves = Leaves(standing, probability);
            before = leaves is { } there && !(before <= there) ? there : before;
        }

        return before;
    }

    /// <summary>By the same steps as <see cref="Find"/>, so that what both say of one probability is the same to the metre.</summary>
    private Distance? Leaves(Standing standing, double probability)
    {
        double[] steps = [.. LeavingProbabilities.Where(p => p < probability), probability];
        return posterior!.Groups[standing.Group].LeavingDistances(standing.FromX, standing.LowerMm, standing.UpperMm, steps, ReachX)[^1] is { } x
            ? standing.Leg.DistanceAt(x)
            : null;
    }

    /// <summary>The fan of a lobe's true clearance with the shim that is in now; empty where nothing is foretold.</summary>
    /// <param name="lobe">Which.</param>
    /// <param name="places">What the engine will have done, or had, along the present leg.</param>
    public IReadOnlyList<FanPoint> Fan(LobeKey lobe, IEnumerable<Distance> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        if (!standings.TryGetValue(lobe, out var standing))
        {
            return [];
        }

        var known = posterior!.Groups[standing.Group];
        return [.. places.Select(at => new FanPoint(
            at, [.. known.ValueQuantiles(standing.Leg.XAt(at), FanProbabilities).Select(y => y - standing.PartMm)]))];
    }

    /// <summary>Mean and standard deviation of a lobe's true clearance, with the shim that is in now; nothing where nothing is foretold.</summary>
    public (double MeanMm, double DeviationMm)? ClearanceAt(LobeKey lobe, Distance at) => standings.TryGetValue(lobe, out var standing)
        ? (posterior!.Groups[standing.Group].MeanAt(standing.Leg.XAt(at)) - standing.PartMm,
            posterior.Groups[standing.Group].DeviationAt(standing.Leg.XAt(at)))
        : null;

    /// <summary>What becomes of a lobe that is set anew; nothing where nothing is foretold.</summary>
    public SettingOutlook? SettingOf(LobeKey lobe) => standings.TryGetValue(lobe, out var standing)
        ? new SettingOutlook(engine.LimitsOf(lobe), [.. Enumerable.Range(0, SettingSlopes)
            .Select(i => posterior!.Groups[standing.Group].SlopeQuantile((i + 0.5) / SettingSlopes))])
        : null;

    /// <summary>What the engine had done where the present leg of a lobe begins; nothing where nothing is foretold.</summary>
    public Distance? OriginOf(LobeKey lobe) => standings.TryGetValue(lobe, out var standing) ? standing.Leg.Origin : null;

    private NoForecastReason ReasonOf(LobeKey lobe, DriftFit fit) =>
        !fit.Knows(lobe.Valve.Side) ? NoForecastReason.SideNotKnown
        : engine.Lobes.Single(l => l.Lobe == lobe).CutSinceLastReading == LegCut.ChangeUnknown ? NoForecastReason.ChangeUnknown
        : NoForecastReason.NotMeasured;

    /// <summary>Where a lobe stands, in terms of its present leg.</summary>
    private sealed record Standing(int Group, ModelLeg Leg, double FromX, double PartMm, double LowerMm, double UpperMm, int Readings, bool ReadOutside)
    {
        /// <summary>What the engine had done where the forecast of it begins.</summary>
        public Distance From => Leg.DistanceAt(FromX);

        public static Standing Of(DriftEngine engine, LobeHistory history, DriftGroup group, int number)
        {
            var leg = group.Legs[^1];
            var limits = engine.LimitsOf(history.Lobe);
            var part = (double)(history.ShimPartNowMm - leg.PartMm);
            return new Standing(
                number,
                leg,
                leg.Readings.Count == 0 ? 0 : leg.Readings[^1].X,
                part,
                (double)limits.Lower.Millimetres + part,
                (double)limits.Upper.Millimetres + part,
                group.Legs.Sum(l => l.Readings.Count),
                LeftOutside.LastRead(history, limits) is not null);
        }
    }
}
