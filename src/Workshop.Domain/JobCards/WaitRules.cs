using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.JobCards;

/// <summary>When a visit may be said to wait, and to go on.</summary>
public static class WaitRules
{
    /// <summary>Nothing when the visit may wait, or wait longer.</summary>
    /// <param name="visit">How far it is.</param>
    /// <param name="waitsFor">What for; a wait that is open goes on for the same.</param>
    /// <param name="field">The field of the time as the caller wrote it.</param>
    /// <param name="until">When work is expected to go on.</param>
    /// <param name="now">The time.</param>
    /// <param name="time">For the sentences.</param>
    public static Problem? RefuseWait(VisitSoFar visit, WaitsFor waitsFor, string field, Instant until, Instant now, WorkshopTime time)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(time);
        if (visit.WorkBegunAt is null)
        {
            return Problem.Conflict("work-not-begun",
                $"Job card {visit.Number}: nothing lies open yet; a visit whose parts are late is moved, not left waiting.");
        }

        if (visit.Waits is { } wait && wait.For != waitsFor)
        {
            return Problem.Conflict("waits",
                $"Job card {visit.Number} waits for {wait.For.Spoken()} since {time.Say(wait.Since)}; go on with it first.");
        }

        return until <= now
            ? Problem.Impossible("past", field, $"{field} is {time.Say(until)}, which is past; it is {time.Say(now)} now.")
            : null;
    }

    /// <summary>Nothing when the visit may go on.</summary>
    /// <param name="visit">How far it is.</param>
    /// <param name="place">Where it stands; nothing where nobody knows.</param>
    public static Problem? RefuseGoOn(VisitSoFar visit, Resource? place)
    {
        ArgumentNullException.ThrowIfNull(visit);
        if (visit.Waits is null)
        {
            return Problem.Conflict("waits-for-nothing", $"Job card {visit.Number} waits for nothing.");
        }

        return place is { Kind: ResourceKind.ParkingPlace }
            ? Problem.Conflict("no-bay", $"Job card {visit.Number} stands in {place.Name}: move it to a bay first, then go on.")
            : null;
    }
}
