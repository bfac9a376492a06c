using NodaTime;

namespace Workshop.Domain.JobCards;

/// <summary>How long was worked on a job, by its clock.</summary>
public static class WorkClock
{
    /// <summary>The time worked so far by all together; a clock that runs counts until now. What two do at once counts twice.</summary>
    public static Duration Worked(IEnumerable<WorkSpell> spells, Instant now)
    {
        ArgumentNullException.ThrowIfNull(spells);
        return spells.Aggregate(Duration.Zero, (sum, s) => sum + ((s.EndedAt ?? Instant.Max(now, s.StartedAt)) - s.StartedAt));
    }

    /// <summary>"on a break", "waits for parts": why a clock stands, in a few words.</summary>
    public static string Spoken(this PauseReason reason) => reason switch
    {
        PauseReason.Break => "break",
        PauseReason.Parts => "parts are missing",
        PauseReason.Question => "a question is open",
        PauseReason.EngineStands => "engine has to stand",
        PauseReason.OtherJob => "another job",
        PauseReason.EndOfDay => "end of the day",
        PauseReason.Finished => "finished",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
    };
}
