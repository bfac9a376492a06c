using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Bookings;

/// <summary>How an adjustment is offered beside its check, before anybody has measured.</summary>
public static class AdjustmentOutlook
{
    /// <summary>
    /// Likely when the early end of any lobe's forecast leaves its limits before the check after this one; else possible,
    /// also where there is no forecast.
    /// </summary>
    /// <param name="check">The check; its interval says when the one after this falls due.</param>
    /// <param name="forecasts">Of the lobes of this engine.</param>
    /// <param name="engineDistance">What the engine has done, as far as is known.</param>
    public static Likelihood Of(ServiceItem check, IEnumerable<ClearanceForecast> forecasts, Distance engineDistance)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (check.Interval?.Every is not { } every)
        {
            return Likelihood.Possible;
        }

        var nextCheckAt = engineDistance + every;
        return forecasts.Any(f => f.LeavesLimitsEarliestAt is { } leaves && leaves < nextCheckAt)
            ? Likelihood.Likely
            : Likelihood.Possible;
    }
}
