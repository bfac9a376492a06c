using System.Text.Json.Serialization;
using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>What the next occurrence is counted from.</summary>
public enum CountingRule
{
    /// <summary>From the odometer and the day at which the item was last done, early or late.</summary>
    FromLastDone,

    /// <summary>
    /// On a fixed grid from new: multiples of the interval, whatever was done when. Months keep the day of the month that they
    /// started from, so that 31 January leads to 28 February and then to 31 March.
    /// </summary>
    OnFixedGrid,
}

/// <summary>Every so far and/or so many months, whichever comes first; the first occurrence may differ.</summary>
public sealed record ServiceInterval
{
    [JsonPropertyName("everyKm")]
    public Distance? Every { get; init; }

    public int? EveryMonths { get; init; }

    [JsonPropertyName("firstKm")]
    public Distance? First { get; init; }

    public int? FirstMonths { get; init; }

    /// <summary>
    /// What the maker states for odometers that count miles, where that is a figure of its own; absent, they count the
    /// kilometres exactly.
    /// </summary>
    public int? EveryMiles { get; init; }

    /// <summary>The same of the first occurrence.</summary>
    public int? FirstMiles { get; init; }

    /// <summary>Done once and for all, at the first occurrence or after <see cref="AfterDate"/>; there are no others.</summary>
    public bool Once { get; init; }

    /// <summary>Not due before this day; alone and once, due on it.</summary>
    public LocalDate? AfterDate { get; init; }

    public CountingRule Counting { get; init; }

    /// <summary>For a motorcycle that is ridden hard; absent where the maker makes no difference.</summary>
    public SevereUse? Severe { get; init; }
}

/// <summary>A shorter interval for severe use: a factor for all figures, or figures of its own.</summary>
public sealed record SevereUse
{
    /// <summary>Above 0 and below 1; months are rounded down, to one at least.</summary>
    public decimal? Factor { get; init; }

    [JsonPropertyName("everyKm")]
    public Distance? Every { get; init; }

    public int? EveryMonths { get; init; }

    [JsonPropertyName("firstKm")]
    public Distance? First { get; init; }

    public int? FirstMonths { get; init; }

    public int? EveryMiles { get; init; }

    public int? FirstMiles { get; init; }
}

/// <summary>Which motorcycles have a service item; what is absent makes no difference.</summary>
public sealed record Applicability
{
    public int? FromModelYear { get; init; }

    /// <summary>The last one that has it.</summary>
    public int? ToModelYear { get; init; }

    /// <summary>Options, by code, all of which must be fitted.</summary>
    public IReadOnlyList<string> WithOptions { get; init; } = [];

    /// <summary>Options, by code, none of which may be fitted.</summary>
    public IReadOnlyList<string> WithoutOptions { get; init; } = [];
}

/// <summary>Something that some motorcycles of the engine model have and others have not: "chain oiler", "quick shifter".</summary>
public sealed record FittedOption(string Code, string Name);

/// <summary>
/// Items that fall due within so far and so many days of each other are done together, and on a fixed grid an item that is done
/// so much early counts for the point ahead.
/// </summary>
/// <param name="Far">Distance, not negative.</param>
/// <param name="Days">Days, not negative.</param>
public sealed record TogetherWithin([property: JsonPropertyName("km")] Distance Far, int Days)
{
    /// <summary>Where neither engine model nor workshop says more: 500 km and 30 days. Common practice, no source.</summary>
    public static TogetherWithin Usual { get; } = new(Distance.FromKilometres(500), 30);
}
