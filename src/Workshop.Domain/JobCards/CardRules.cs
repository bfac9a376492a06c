using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.JobCards;

/// <summary>What may become of a card before it is signed off.</summary>
public static class CardRules
{
    /// <summary>Nothing when the visit may be cancelled.</summary>
    /// <param name="card">The card.</param>
    /// <param name="workDone">Something was measured, opened, changed or begun: it must be closed and signed off.</param>
    public static Problem? RefuseCancel(JobCard card, bool workDone)
    {
        ArgumentNullException.ThrowIfNull(card);
        return card.State switch
        {
            JobCardState.Booked => null,
            JobCardState.CheckedIn when !workDone => null,
            JobCardState.CheckedIn => Problem.Conflict("work-begun",
                $"Work on job card {card.Number} has begun; close what was opened and sign it off."),
            JobCardState.SignedOff => Problem.Conflict("signed-off", $"Job card {card.Number} is signed off and stays as it is."),
            _ => Problem.Conflict("cancelled", $"Job card {card.Number} is cancelled already."),
        };
    }

    /// <summary>Nothing when the motorcycle may be checked in.</summary>
    public static Problem? RefuseCheckIn(JobCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        return card.State switch
        {
            JobCardState.Booked => null,
            JobCardState.CheckedIn => Problem.Conflict("checked-in", $"The motorcycle of job card {card.Number} is checked in already."),
            JobCardState.SignedOff => Problem.Conflict("signed-off", $"Job card {card.Number} is signed off; book a new visit."),
            _ => Problem.Conflict("cancelled", $"Job card {card.Number} is cancelled; book a new visit."),
        };
    }

    /// <summary>
    /// Nothing when the item may be begun: a likely or possible one of the card, or one of the specification that was found
    /// necessary; an adjustment only beside its check.
    /// </summary>
    /// <param name="number">The card's number.</param>
    /// <param name="specification">That the card pinned.</param>
    /// <param name="onCard">The card's items.</param>
    /// <param name="code">The item to begin.</param>
    public static Problem? RefuseStart(
        int number, EngineSpecification specification, IReadOnlyCollection<JobCardItem> onCard, string code)
    {
        if (VisitItems.Find(specification, code) is not { } item)
        {
            return Problem.Impossible("item-unknown", [VisitItems.Unknown(specification, code, "code")]);
        }

        return onCard.SingleOrDefault(i => i.ServiceItemCode == code) switch
        {
            { Likelihood: Likelihood.Certain } => Problem.Conflict("under-way",
                $"\"{item.Name}\" is a certain item of job card {number}; it is under way without being begun."),
            { StartedAt: not null } => Problem.Conflict("under-way", $"\"{item.Name}\" is begun already on job card {number}."),
            null when VisitItems.LacksItsCheck(specification, code, onCard.Select(i => i.ServiceItemCode).ToHashSet(StringComparer.Ordinal)) =>
                Problem.Impossible("adjustment-without-check", "code",
                    $"code is \"{code}\": it follows from a check; begin {string.Join(" or ", VisitItems.ChecksOf(specification, code).Select(c => $"\"{c}\""))} first."),
            _ => null,
        };
    }

    /// <summary>
    /// When the cold soak ends: so many hours after the engine's last stop. Starting the engine in between begins it again.
    /// </summary>
    public static Instant SoakEndsAt(Instant engineStoppedAt, ColdCondition cold)
    {
        ArgumentNullException.ThrowIfNull(cold);
        return engineStoppedAt + Duration.FromSeconds((long)(cold.SoakHours * NodaConstants.SecondsPerHour));
    }
}
