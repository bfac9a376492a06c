using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Estimates;

/// <summary>When an estimate may be made and answered.</summary>
public static class AnswerRules
{
    /// <summary>Nothing while the visit is to come or under way.</summary>
    public static Problem? RefuseChange(JobCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        return card.State switch
        {
            JobCardState.Booked or JobCardState.CheckedIn => null,
            JobCardState.SignedOff => Problem.Conflict("signed-off", $"Job card {card.Number} is signed off and stays as it is; later work goes on a new card."),
            JobCardState.NoShow => Problem.Conflict("no-show", $"The motorcycle of job card {card.Number} did not come."),
            _ => Problem.Conflict("cancelled", $"Job card {card.Number} is cancelled."),
        };
    }

    /// <summary>Nothing where whoever answers saw every answer that stands.</summary>
    /// <param name="seen">How many were seen.</param>
    /// <param name="standing">Those of the matter, newest first.</param>
    /// <param name="time">The workshop's.</param>
    public static Problem? RefuseUnseen(int seen, IReadOnlyList<EstimateAnswer> standing, WorkshopTime time)
    {
        ArgumentNullException.ThrowIfNull(standing);
        ArgumentNullException.ThrowIfNull(time);
        return standing.Count == seen ? null : Problem.Conflict("answered-meanwhile", standing.Count == 0
            ? $"answersSeen is {seen}, but nobody has answered yet."
            : $"answersSeen is {seen}, but {standing.Count} stand: \"{standing[0].Decision.Spoken()}\" was recorded at {time.Say(standing[0].RecordedAt)}. Send yours again only if the owner said so after that.");
    }

    /// <summary>Nothing where the owner may have said so: to the newest estimate of the matter, while it held.</summary>
    /// <param name="estimate">That was answered.</param>
    /// <param name="newestVersion">Of the visit, or of the same finding.</param>
    /// <param name="decision">What was said.</param>
    /// <param name="saidAt">When.</param>
    /// <param name="time">The workshop's.</param>
    public static Problem? Refuse(Estimate estimate, int newestVersion, EstimateDecision decision, Instant saidAt, WorkshopTime time)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        ArgumentNullException.ThrowIfNull(time);
        if (estimate.Version != newestVersion)
        {
            return Problem.Conflict("estimate-replaced",
                $"Estimate {estimate.Version} of job card {estimate.JobCardNumber} was replaced by estimate {newestVersion}; that is the one to answer.");
        }

        var day = time.DayOf(saidAt);
        if (decision == EstimateDecision.Agreed && estimate.ValidUntil is { } until && day > until)
        {
            return Problem.Conflict("estimate-expired",
                $"Estimate {estimate.Version} held until {until:uuuu-MM-dd}, and the owner agreed on {day:uuuu-MM-dd}; make a new one.");
        }

        return saidAt < estimate.MadeAt
            ? Problem.Impossible("said-before", "saidAt", $"saidAt is {time.Say(saidAt)}: the estimate was made at {time.Say(estimate.MadeAt)}; a later time is allowed.")
            : null;
    }
}
