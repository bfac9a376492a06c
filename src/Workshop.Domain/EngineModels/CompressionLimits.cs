using System.Text.Json.Serialization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>How warm an engine is when its compression is measured.</summary>
public enum EngineWarmth
{
    /// <summary>As after a ride.</summary>
    Warm,

    /// <summary>As for the valves.</summary>
    Cold,
}

/// <summary>What the engine maker states about compression and leakage of a cylinder.</summary>
/// <param name="Least">The least that a cylinder reaches, throttle open, above the air's pressure.</param>
/// <param name="Warmth">How warm the engine is for these figures.</param>
public sealed record CompressionLimits(
    [property: JsonPropertyName("leastKpa")] Pressure Least,
    EngineWarmth Warmth,
    Provenance Provenance)
{
    /// <summary>How far the weakest cylinder may stay behind the best; absent where nothing is stated.</summary>
    [JsonPropertyName("largestDifferenceKpa")]
    public Pressure? LargestDifference { get; init; }

    /// <summary>The most that may leak of the test pressure, in per cent; absent where nothing is stated.</summary>
    public decimal? LargestLeakDownPercent { get; init; }

    /// <summary>The pressure of the leak-down test that this figure holds at; absent where nothing is stated.</summary>
    [JsonPropertyName("leakDownKpa")]
    public Pressure? LeakDownAt { get; init; }

    /// <summary>The least is stated for compression that was measured so.</summary>
    public bool HoldsFor(EngineWarmth warmth, bool throttleOpen) => warmth == Warmth && throttleOpen;

    /// <summary>The largest leakage is stated for a test at this pressure, or for any.</summary>
    public bool HoldsAt(Pressure test) => LeakDownAt is not { } stated || stated == test;
}

/// <summary>The engine's spark plugs and the gap between their electrodes.</summary>
/// <param name="PerCylinder">1, or 2 where each cylinder has two.</param>
/// <param name="PartCode">The stores' code of the plug that the maker names.</param>
/// <param name="GapSmallestMm">Smallest gap allowed.</param>
/// <param name="GapLargestMm">Largest gap allowed.</param>
public sealed record SparkPlugs(int PerCylinder, string PartCode, decimal GapSmallestMm, decimal GapLargestMm, Provenance Provenance);
