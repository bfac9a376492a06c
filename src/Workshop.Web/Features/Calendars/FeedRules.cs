using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;

namespace Workshop.Web.Features.Calendars;

/// <summary>Where links to calendars lead, and whose a person may make and revoke: the manager all, a technician the own.</summary>
internal static class FeedRules
{
    /// <summary>The address under which a calendar is read.</summary>
    public static string PathOf(string secret) => $"/calendar/{secret}.ics";

    public static bool MayHandle(Actor actor, Resource resource) =>
        actor.Is(Roles.Manager) || resource.PersonId == actor.PersonId;

    public static Problem Refuse(Resource resource) => new(ProblemKind.Forbidden, "not-yours",
        $"Links to the calendar of {resource.Name} are made and revoked by the manager, and by a technician for the own calendar.");
}
