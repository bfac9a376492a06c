using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Intervals;

/// <summary>What an engine model's interval is for one motorcycle.</summary>
public static class IntervalRules
{
    private const int DecimalsOfMetres = 3;

    /// <summary>Whether a motorcycle has a service item at all: by its model year and by what is fitted.</summary>
    /// <param name="item">Of its engine model.</param>
    /// <param name="motorcycle">What it is.</param>
    public static bool AppliesTo(this ServiceItem item, MotorcycleFacts motorcycle)
    {
        ArgumentNullException.ThrowIfNull(item);
        ArgumentNullException.ThrowIfNull(motorcycle);
        return item.OnlyFor is not { } only
            || (!(motorcycle.ModelYear < only.FromModelYear) && !(motorcycle.ModelYear > only.ToModelYear)
                && only.WithOptions.All(motorcycle.Options.Contains) && !only.WithoutOptions.Any(motorcycle.Options.Contains));
    }

    /// <summary>
    /// The figures that count for a motorcycle: those for severe use where it is ridden so, those for miles where its odometer
    /// counts them and the maker states some. Nothing is converted that the maker has not left to be converted, and that
    /// exactly. What comes back has neither <c>Severe</c> nor miles any more.
    /// </summary>
    /// <param name="interval">As the engine model says it.</param>
    /// <param name="motorcycle">What it is.</param>
    public static ServiceInterval For(this ServiceInterval interval, MotorcycleFacts motorcycle)
    {
        ArgumentNullException.ThrowIfNull(interval);
        ArgumentNullException.ThrowIfNull(motorcycle);
        var severe = motorcycle.Use == RidingUse.Severe ? interval.Severe : null;
        var miles = motorcycle.Unit == OdometerUnit.Miles;
        return interval with
        {
            Every = Far(interval.Every, interval.EveryMiles, severe?.Every, severe?.EveryMiles),
            EveryMonths = Time(interval.EveryMonths, severe?.EveryMonths),
            First = Far(interval.First, interval.FirstMiles, severe?.First, severe?.FirstMiles),
            FirstMonths = Time(interval.FirstMonths, severe?.FirstMonths),
            EveryMiles = null,
            FirstMiles = null,
            Severe = null,
        };

        Distance? Far(Distance? usual, int? usualMiles, Distance? own, int? ownMiles) =>
            own is not null || ownMiles is not null ? InUnit(own, ownMiles)
            : InUnit(usual, usualMiles) is not { } far ? null
            : severe?.Factor is { } factor ? Distance.FromMetres(decimal.Round(far.Metres * factor, DecimalsOfMetres, MidpointRounding.ToZero))
            : far;

        Distance? InUnit(Distance? far, int? count) => miles && count is { } stated ? Distance.FromMiles(stated) : far;

        int? Time(int? usual, int? own) =>
            own ?? (usual is { } months && severe?.Factor is { } factor ? Math.Max(1, (int)(months * factor)) : usual);
    }
}
