using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Records;

/// <summary>When an item is due next.</summary>
/// <param name="At">By the motorcycle's distance, where the interval has one.</param>
/// <param name="On">By the calendar, where the interval has months.</param>
/// <param name="ExpectedOn">When that is expected by what is ridden; absent where the calendar alone decides.</param>
/// <param name="ByForecast">The distance is that of the valves' drift, which comes before the interval's.</param>
/// <param name="IncludedIn">The bigger item that it is done with.</param>
public sealed record DueAhead(Distance? At, LocalDate? On, LocalDate? ExpectedOn = null, bool ByForecast = false, string? IncludedIn = null)
{
    /// <summary>Of the check of the valves: those that the visit left outside their limits, by name.</summary>
    public IReadOnlyList<string> LeftOutside { get; init; } = [];
}

/// <summary>
/// What people wrote, beside a record: by a name, so that one column holds it and an erasure empties it. Sentences that stand on
/// every record are here as well.
/// </summary>
public static class RecordWords
{
    /// <summary>What the person who signed wrote for the owner.</summary>
    public const string Remark = "remark";

    /// <summary>What the owner said when bringing it.</summary>
    public const string OwnersWords = "owners-words";

    /// <summary>What was seen of it then, as far as nobody said it piece by piece.</summary>
    public const string SeenOnArrival = "seen-on-arrival";

    /// <summary>Under every forecast.</summary>
    public const string ForecastCaution = "An estimate, no promise; it replaces no check that the maker prescribes.";

    /// <summary>At the foot of every sheet.</summary>
    public const string Foot =
        "A record of what was found and done on that day. The engine maker's manual, local codes and licensed practice come first; where this paper differs, it is wrong.";

    /// <summary>Why an item was not done.</summary>
    public static string NotDone(string code) => $"not-done:{code}";

    /// <summary>What was said beside a check, a note or a look.</summary>
    public static string Said(Guid remark) => $"said:{remark}";

    /// <summary>What was said with the answer to a finding.</summary>
    public static string AnswerTo(Guid finding) => $"answer:{finding}";

    /// <summary>What stands below a photo.</summary>
    public static string Caption(Guid photo) => $"caption:{photo}";

    /// <summary>
    /// "At 36,000 km or on 2027-03-02, whichever comes first." What is passed was not done at the visit, and the workshop advises to have it
    /// done soon. A check of valves that comes up at once because one of them was left outside, or has probably left its limits, is not
    /// overdue: it was done; said is what stands outside, and what the workshop advises.
    /// </summary>
    /// <param name="next">When it is due.</param>
    /// <param name="now">What the motorcycle has done.</param>
    /// <param name="today">The day of the record.</param>
    /// <param name="unit">Of the odometer.</param>
    public static string Due(DueAhead next, Distance now, LocalDate today, OdometerUnit unit)
    {
        ArgumentNullException.ThrowIfNull(next);
        var (byDistance, byDay) = (next.At is { } at ? DueWords.InUnit(at, unit) : null, next.On is { } on ? Day(on) : null);
        var with = next.IncludedIn is null ? "" : $"; done with {next.IncludedIn}";
        var isPassed = next.At < now || next.On < today;
        var point = (byDistance, byDay) switch
        {
            ({ } distance, { } day) => $"At {distance} or on {day}, whichever comes first",
            ({ } distance, null) => $"At {distance}",
            (null, { } day) => $"On {day}",
            _ => "When it is needed",
        };
        if (next.ByForecast && next.At <= now)
        {
            return OutsideNow(next.LeftOutside, next.On >= today ? $"on {byDay}" : null);
        }

        if (next.LeftOutside.Count > 0)
        {
            return OutsideNow(next.LeftOutside, isPassed ? null : $"{char.ToLowerInvariant(point[0])}{point[1..]}");
        }

        if (isPassed)
        {
            return $"It was due {(next.At < now ? $"at {byDistance}" : $"on {byDay}")} and is still to be done{(next.IncludedIn is null ? "" : $", with {next.IncludedIn}")}; the workshop advises to have it done soon.";
        }

        var expected = next.ExpectedOn is { } when && when != next.On ? $"; by what was ridden so far about {Day(when)}" : "";
        return $"{point}{expected}{(next.ByForecast ? "; the drift of its valves wants it before the interval does" : "")}{with}.";
    }

    private static string OutsideNow(IReadOnlyList<string> left, string? again)
    {
        var (what, advice) = left.Count switch
        {
            0 => ("By its drift a valve may have left its limits by now", "have the valves checked again"),
            1 => ($"Left outside its limits at this visit: {left[0]}", "have that valve set"),
            _ => ($"Left outside their limits at this visit: {string.Join("; ", left)}", "have those valves set"),
        };
        return $"{what}. The workshop advises to {advice} soon{(again is null ? "" : $"; the next check by the interval is due {again}")}. {ForecastCaution}";
    }

    /// <summary>"2027-03-02".</summary>
    public static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", null);
}
