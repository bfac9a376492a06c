using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Drift;

/// <summary>Why nothing is foretold.</summary>
public enum NoForecastReason
{
    /// <summary>No reading enters.</summary>
    NotMeasured,

    /// <summary>Set or changed since the last reading, by an amount that is not known.</summary>
    NotMeasuredSinceChange,

    /// <summary>No reading since the last change of level has both ends closed, so that it has no middle.</summary>
    OpenEnded,

    /// <summary>One reading has no slope.</summary>
    OneReading,

    /// <summary>Readings at one distance only, or one on each level, have no slope.</summary>
    OneDistance,

    /// <summary>As many readings as a slope and the levels need: a slope, but nothing that tells how far to trust it.</summary>
    NoUncertainty,

    /// <summary>The slope may be zero, or of the other sign.</summary>
    SlopeNotDistinguishable,

    /// <summary>The line reaches no limit within the distance that is looked ahead.</summary>
    NotWithinReach,
}

/// <summary>Which limit a clearance drifts towards.</summary>
public enum LimitEnd
{
    Lower,
    Upper,
}

/// <summary>Where the line reaches a limit.</summary>
/// <param name="End">Which limit.</param>
/// <param name="LimitMm">Its clearance.</param>
/// <param name="At">
/// What the engine will have done when the line reaches it; before the last reading where the line lies outside but the
/// readings leave it open. Where it is outside for certain, the last reading.
/// </param>
/// <param name="Earliest">The early end of the 95 % interval, no earlier than the last reading while <paramref name="At"/> lies ahead.</param>
/// <param name="Latest">The late end of the 95 % interval.</param>
/// <param name="Passed">It was outside at the last reading: by its bracket, or by the whole interval of the line.</param>
public sealed record LimitReached(
    LimitEnd End, decimal LimitMm, Distance At, Distance Earliest, Distance Latest, bool Passed);

/// <summary>
/// The straight-line estimate of one lobe: least squares through the middles of the brackets of the last slope section, one
/// slope, one level for each leg. An estimate, no promise; it replaces no check that the maker prescribes.
/// </summary>
public sealed record StraightLineDrift
{
    /// <summary>Two-sided confidence of every limit stated.</summary>
    public const double Confidence = 0.95;

    /// <summary>How far ahead of the last reading a limit is looked for.</summary>
    public static readonly Distance Reach = Distance.FromKilometres(200_000);

    /// <summary>Readings that entered.</summary>
    public required int Readings { get; init; }

    /// <summary>Readings of the section that could not enter because an end is open.</summary>
    public int OpenEnded { get; init; }

    /// <summary>What the engine had done at the last reading, where the present clearance is stated.</summary>
    public Distance? LastReadingAt { get; init; }

    /// <summary>Clearance at the last reading, with the shim that is in now, in mm.</summary>
    public double? PresentMm { get; init; }

    /// <summary>The same with its uncertainty, where that can be told.</summary>
    public IntervalEstimate? Present { get; init; }

    /// <summary>Change of clearance in mm per 10,000 km with the shims' part taken out.</summary>
    public double? DriftMm { get; init; }

    /// <summary>The same with its standard error, where that can be told.</summary>
    public Coefficient? Drift { get; init; }

    /// <summary>The lines behind it, grouped by the number of the leg in <see cref="LobeHistory.Legs"/>; x counts from each leg's own start.</summary>
    public ParallelLines? Lines { get; init; }

    /// <summary>Where the line reaches a limit; absent where nothing is foretold.</summary>
    public LimitReached? Reaches { get; init; }

    /// <summary>Why nothing is foretold; absent where something is.</summary>
    public NoForecastReason? Reason { get; init; }

    /// <summary>The reason in a sentence with its figures.</summary>
    public string? ReasonSentence { get; init; }

    /// <summary>Estimates, or says why not.</summary>
    /// <param name="history">The lobe's legs.</param>
    /// <param name="limits">The limits of its side and lobe.</param>
    public static StraightLineDrift Estimate(LobeHistory history, ClearanceLimits limits)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(limits);
        return new StraightLineEstimator(history, limits).Estimate();
    }
}
