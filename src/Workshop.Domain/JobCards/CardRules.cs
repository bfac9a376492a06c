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
            JobCardState.NoShow => Problem.Conflict("no-show", $"The motorcycle of job card {card.Number} did not come; there is nothing to cancel."),
            _ => Problem.Conflict("cancelled", $"Job card {card.Number} is cancelled already."),
        };
    }

    /// <summary>Nothing when the visit may be moved, shortened or lengthened as a whole.</summary>
    /// <param name="card">The card.</param>
    /// <param name="workBegun">Then it stays where it is, and what is left of it is planned as it goes.</param>
    public static Problem? RefuseMove(JobCard card, bool workBegun)
    {
        ArgumentNullException.ThrowIfNull(card);
        return card.State switch
        {
            JobCardState.Booked => null,
            JobCardState.CheckedIn when !workBegun => null,
            JobCardState.CheckedIn => Problem.Conflict("work-begun", $"Work on job card {card.Number} has begun; it stays in its bay."),
            JobCardState.SignedOff => Problem.Conflict("signed-off", $"Job card {card.Number} is signed off and stays as it is."),
            JobCardState.NoShow => Problem.Conflict("no-show", $"The motorcycle of job card {card.Number} did not come; book a new visit."),
            _ => Problem.Conflict("cancelled", $"Job card {card.Number} is cancelled; book a new visit."),
        };
    }

    /// <summary>Nothing when it may be said that the motorcycle did not come: it is booked, and should have been here.</summary>
    public static Problem? RefuseNoShow(JobCard card, Instant now, WorkshopTime time)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(time);
        return card.State switch
        {
            JobCardState.Booked when now >= card.StartsAt => null,
            JobCardState.Booked => Problem.Conflict("not-due",
                $"The motorcycle of job card {card.Number} is to come at {time.Say(card.StartsAt)}; until then it can only be cancelled."),
            JobCardState.CheckedIn => Problem.Conflict("checked-in", $"The motorcycle of job card {card.Number} is here."),
            JobCardState.SignedOff => Problem.Conflict("signed-off", $"Job card {card.Number} is signed off and stays as it is."),
            JobCardState.NoShow => Problem.Conflict("no-show", $"That the motorcycle of job card {card.Number} did not come is entered already."),
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
            JobCardState.NoShow => Problem.Conflict("no-show", $"The motorcycle of job card {card.Number} did not come; book a new visit."),
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

    /// <summary>When the engine last ran: before check-in, or the last time that somebody wrote down since.</summary>
    public static Instant EngineStoppedAt(Instant atCheckIn, Instant? since) => since is { } later ? Instant.Max(atCheckIn, later) : atCheckIn;

    /// <summary>
    /// When the cold soak ends: so many hours after the engine's last stop. Starting the engine in between begins it again.
    /// </summary>
    public static Instant SoakEndsAt(Instant engineStoppedAt, ColdCondition cold)
    {
        ArgumentNullException.ThrowIfNull(cold);
        return engineStoppedAt + Duration.FromSeconds((long)(cold.SoakHours * NodaConstants.SecondsPerHour));
    }
}
