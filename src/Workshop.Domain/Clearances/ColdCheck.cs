using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Clearances;

/// <summary>
/// Limits hold for a cold engine: aluminium and steel grow apart as they warm. A reading outside the engine model's cold
/// range is refused, or kept with a reason as "not cold" and left out of fits.
/// </summary>
public static class ColdCheck
{
    /// <summary>Whether the head is inside the cold range; both ends belong to it.</summary>
    public static bool IsCold(Temperature head, ColdCondition cold)
    {
        ArgumentNullException.ThrowIfNull(cold);
        return head >= cold.Lowest && head <= cold.Highest;
    }

    /// <summary>Nothing where the readings may be kept; else the fault that names the value and the range.</summary>
    /// <param name="field">The temperature's field, as the caller wrote it.</param>
    /// <param name="head">Temperature of the cylinder head.</param>
    /// <param name="cold">The engine model's cold range.</param>
    /// <param name="keptWhyNotCold">The reason to keep readings of a head outside the range; blank is none.</param>
    public static FieldFault? FaultOf(string field, Temperature head, ColdCondition cold, string? keptWhyNotCold)
    {
        ArgumentNullException.ThrowIfNull(cold);
        if (IsCold(head, cold) || !string.IsNullOrWhiteSpace(keptWhyNotCold))
        {
            return null;
        }

        var remedy = head > cold.Highest ? "Let it stand until it is cold" : "Let it warm up in the workshop";
        return new FieldFault(field,
            $"{field} is {head}: the engine is {(head > cold.Highest ? "too warm" : "too cold")}. "
            + $"{cold.Lowest.Celsius:0.#} to {cold.Highest} is allowed, by {cold.Method}. {ThermalGrowth.Words(head)} {remedy}, "
            + "or give a reason to keep the readings as not cold.");
    }
}
