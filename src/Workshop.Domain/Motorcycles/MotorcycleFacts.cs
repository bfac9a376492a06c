using Workshop.Domain.Measures;

namespace Workshop.Domain.Motorcycles;

/// <summary>How a motorcycle is ridden, where its maker shortens intervals for it.</summary>
public enum RidingUse
{
    Normal,

    /// <summary>Short trips, dust, heat, tracks: what the maker's document calls severe.</summary>
    Severe,
}

/// <summary>What a service item may ask of a motorcycle before it applies.</summary>
/// <param name="Unit">Of the odometer that it has now.</param>
/// <param name="Options">Codes of what is fitted.</param>
public sealed record MotorcycleFacts(int ModelYear, OdometerUnit Unit, RidingUse Use, IReadOnlyList<string> Options);
