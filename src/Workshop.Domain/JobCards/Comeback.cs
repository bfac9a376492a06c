using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.JobCards;

/// <summary>
/// A visit that comes because of an earlier one, which is signed off and stays as it is. Once per card; only ever added. It is said of
/// the visits, never of who worked on them.
/// </summary>
public sealed class Comeback
{
    /// <summary>The new visit.</summary>
    public required int JobCardNumber { get; init; }

    /// <summary>The earlier one.</summary>
    public required int OfJobCardNumber { get; init; }

    /// <summary>Why it comes back.</summary>
    public required Guid ReasonRemarkId { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }
}

/// <summary>Which visit may come back of which.</summary>
public static class ComebackRules
{
    /// <summary>Nothing where a visit of that motorcycle may be booked as a comeback of the card.</summary>
    /// <param name="of">The earlier card; absent where there is none of that number.</param>
    /// <param name="number">As typed.</param>
    /// <param name="motorcycle">That comes.</param>
    public static Problem? Refuse(JobCard? of, int number, Guid motorcycle)
    {
        const string Field = "comebackOf";
        return of switch
        {
            null => Problem.Impossible("comeback-unknown", Field, $"{Field} is {number}: there is no such job card."),
            _ when of.MotorcycleId != motorcycle => Problem.Impossible("comeback-of-another", Field,
                $"{Field} is {number}: that job card is of another motorcycle; a comeback is of the same one."),
            { State: JobCardState.SignedOff } => null,
            { State: JobCardState.Booked or JobCardState.CheckedIn } => Problem.Conflict("comeback-not-signed",
                $"Job card {number} is not signed off yet: what is wrong is put right on it, not on a new card."),
            _ => Problem.Conflict("comeback-not-done", $"Job card {number} is {of.State.Spoken()}: nothing was done that could come back."),
        };
    }
}
