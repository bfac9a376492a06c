using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Records;

/// <summary>
/// What people wrote, beside a record: by a name, so that one column holds it and an erasure empties it. Sentences that stand on
/// every record are here as well.
/// </summary>
public static class RecordWords
{
    /// <summary>What the person who signed wrote for the owner.</summary>
    public const string Remark = "remark";

    /// <summary>Under every forecast.</summary>
    public const string ForecastCaution = "An estimate, no promise; it replaces no check that the maker prescribes.";

    /// <summary>At the foot of every sheet.</summary>
    public const string Foot =
        "A record of what was found and done on that day. The engine maker's manual, local codes and licensed practice come first; where this paper differs, it is wrong.";

    /// <summary>Why an item was not done.</summary>
    public static string NotDone(string code) => $"not-done:{code}";

    /// <summary>What was said with the answer to a finding.</summary>
    public static string AnswerTo(Guid finding) => $"answer:{finding}";

    /// <summary>What stands below a photo.</summary>
    public static string Caption(Guid photo) => $"caption:{photo}";

    /// <summary>"At 36,000 km or on 2027-03-02, whichever comes first."</summary>
    /// <param name="at">By the motorcycle's distance, where the interval has one.</param>
    /// <param name="on">By the calendar, where the interval has months.</param>
    /// <param name="unit">Of the odometer.</param>
    /// <param name="byForecast">The distance is that of the valves' drift, which comes before the interval's.</param>
    /// <param name="includedIn">The bigger item that it is done with.</param>
    /// <param name="expectedOn">When that is expected, where riding decides.</param>
    public static string Due(Distance? at, LocalDate? on, OdometerUnit unit, bool byForecast, string? includedIn, LocalDate? expectedOn)
    {
        var point = (at, on) switch
        {
            ({ } distance, { } day) => $"At {DueWords.InUnit(distance, unit)} or on {Day(day)}, whichever comes first",
            ({ } distance, null) => $"At {DueWords.InUnit(distance, unit)}",
            (null, { } day) => $"On {Day(day)}",
            _ => "When it is needed",
        };
        var expected = expectedOn is { } when && at is not null ? $"; by what was ridden so far about {Day(when)}" : "";
        var drift = byForecast ? "; the drift of its valves wants it before the interval does" : "";
        return $"{point}{expected}{drift}{(includedIn is null ? "" : $"; done with {includedIn}")}.";
    }

    /// <summary>"2027-03-02".</summary>
    public static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", null);
}
