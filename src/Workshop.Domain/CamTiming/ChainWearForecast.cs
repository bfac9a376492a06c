using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.CamTiming;

/// <summary>On what a forecast of wear rests.</summary>
public enum WearBasis
{
    /// <summary>The chain's own readings alone.</summary>
    OwnReadings,

    /// <summary>Its own readings, and how the chains of its engine model wear.</summary>
    EngineModel,
}

/// <summary>What is known and foretold of a chain's wear: true values, without the error of a reading.</summary>
/// <param name="Basis">On what it rests.</param>
/// <param name="Readings">Of this chain.</param>
/// <param name="From">What the engine had done at the last reading.</param>
/// <param name="Present">Mean of the true value there, in mm or crank degrees.</param>
/// <param name="PresentDeviation">Standard deviation of it.</param>
/// <param name="Slope">Mean growth in 10,000 km.</param>
/// <param name="SlopeDeviation">Standard deviation of it.</param>
/// <param name="BeyondNow">The probability that the limit was passed by then.</param>
/// <param name="Earliest">By here the limit is reached with a probability of 10 %; absent where not within reach.</param>
/// <param name="Even">With 50 %.</param>
/// <param name="Latest">With 90 %.</param>
/// <param name="Fan">The 5, 50 and 95 % quantiles from the present leg's origin on.</param>
public sealed record ChainForecast(
    WearBasis Basis, int Readings, Distance From, double Present, double PresentDeviation, double Slope, double SlopeDeviation,
    double BeyondNow, Distance? Earliest, Distance? Even, Distance? Latest, IReadOnlyList<WearFanPoint> Fan);

/// <summary>One upright of a fan: at a distance, the 5, 50 and 95 % quantiles of the true value.</summary>
public sealed record WearFanPoint(Distance At, double Low, double Middle, double High);

/// <summary>
/// How chains wear with distance: straight lines through bracketed readings, by the same model as clearances
/// (<see cref="IntervalPaths"/>), a level for each leg and a slope for each chain.
/// </summary>
public static class ChainWear
{
    /// <summary>Fewer readings than this leave a line without uncertainty (our own choice).</summary>
    public const int FewestReadings = 3;

    /// <summary>With fewer chains than this that were read at two distances, the engine model tells nothing of others (our own choice).</summary>
    public const int FewestChains = 5;

    /// <summary>How far ahead of the last reading anything is looked for.</summary>
    public static readonly Distance Reach = Distance.FromKilometres(200_000);

    private const double MetresPerX = 10_000_000;
    private const int FanSteps = 12;
    private static readonly double[] Fan = [0.05, 0.5, 0.95];

    /// <summary>Fits all chains of an engine model's drive together; nothing where too few were read, or they tell no line.</summary>
    /// <param name="lives">Of all engines of the model.</param>
    /// <param name="measure">By what wear is told.</param>
    /// <param name="cancellation">Ends the search early.</param>
    public static Computed<ChainWearFit> Fit(IReadOnlyList<ChainLife> lives, WearMeasure measure, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(lives);
        var telling = lives.Count(l => l.Distances >= 2);
        if (telling < FewestChains)
        {
            return new NotComputable(NotComputableReason.TooFewPoints,
                $"{telling} {(telling == 1 ? "chain was" : "chains were")} read at two distances or more: {FewestChains} are needed before one engine tells of another.");
        }

        var builder = new PathDataBuilder();
        foreach (var life in lives.Where(l => l.Readings.Any()))
        {
            builder.Cluster();
            Add(builder, life);
        }

        var data = builder.Build();
        return IntervalPaths.Fit(data, new PathOptions { Priors = [ReadingError.Prior(measure)] }, cancellation)
            .Then<ChainWearFit>(fit => ChainWearFit.Of(fit, telling, fit.Readings));
    }

    /// <summary>What is foretold of one chain, or why nothing is.</summary>
    /// <param name="life">The present chain.</param>
    /// <param name="measure">By what wear is told.</param>
    /// <param name="limit">In mm or crank degrees, above 0.</param>
    /// <param name="model">How the chains of its engine model wear, where that is known.</param>
    public static Computed<ChainForecast> Forecast(ChainLife life, WearMeasure measure, double limit, ChainWearFit? model = null)
    {
        ArgumentNullException.ThrowIfNull(life);
        var readings = life.Readings.Count();
        if (life.Legs[^1].Readings.Count == 0)
        {
            return new NotComputable(NotComputableReason.TooFewPoints, readings == 0
                ? "The chain was not read yet."
                : "The chain was not read since tensioner or guide were renewed.");
        }

        var distances = life.Distances;
        if (model is null && (readings < FewestReadings || distances < 2))
        {
            return new NotComputable(
                distances < 2 && readings >= FewestReadings ? NotComputableReason.NoSpreadInX : NotComputableReason.TooFewPoints,
                $"{readings} {(readings == 1 ? "reading" : "readings")} at {distances} {(distances == 1 ? "distance" : "distances")} of one level: {FewestReadings} readings at two distances or more are needed before a line and its uncertainty can be told.");
        }

        var builder = new PathDataBuilder();
        builder.Cluster();
        Add(builder, life);
        var data = builder.Build();
        var plausible = model?.Plausible ?? OwnReadings.Plausible(data, life, limit, measure);
        return Read(life, IntervalPaths.Posterior(data, plausible, 0), limit, model is null ? WearBasis.OwnReadings : WearBasis.EngineModel);
    }

    private static ChainForecast Read(ChainLife life, GroupPosterior known, double limit, WearBasis basis)
    {
        var leg = life.Legs[^1];
        var last = leg.Readings[^1];
        var from = XAt(leg, last.At);
        var leaves = known.LeavingDistances(from, double.NegativeInfinity, limit, [0.1, 0.5, 0.9], (double)Reach.Metres / MetresPerX);
        var until = leaves[2] ?? leaves[1] ?? from + Math.Max(from, 2);
        return new ChainForecast(
            basis, life.Readings.Count(), last.At, known.MeanAt(from), known.DeviationAt(from), known.SlopeMean, known.SlopeDeviation,
            known.LeftBy(from, from, double.NegativeInfinity, limit), At(leaves[0]), At(leaves[1]), At(leaves[2]),
            [.. Enumerable.Range(0, FanSteps + 1).Select(i => until * i / FanSteps).Select(x =>
            {
                var at = known.ValueQuantiles(x, Fan);
                return new WearFanPoint(DistanceAt(leg, x), at[0], at[1], at[2]);
            })]);

        Distance? At(double? x) => x is { } there ? DistanceAt(leg, there) : null;
    }

    private static void Add(PathDataBuilder builder, ChainLife life)
    {
        builder.Group();
        foreach (var leg in life.Legs)
        {
            builder.Leg(leg.Refitted ? ChainWearFit.Refitted : ChainWearFit.New);
            foreach (var reading in leg.Readings)
            {
                builder.Reading(XAt(leg, reading.At), reading.Lower, reading.Upper);
            }
        }
    }

    private static double XAt(WearLeg leg, Distance at) => (double)(at - leg.Origin).Metres / MetresPerX;

    private static Distance DistanceAt(WearLeg leg, double x) => leg.Origin + Distance.FromMetres(decimal.Round((decimal)(x * MetresPerX)));
}
