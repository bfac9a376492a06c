using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>Shown by <c>&lt;partial name="_StandingVisits" model="..." /&gt;</c>.</summary>
public sealed record StandingVisitsView(IReadOnlyList<StandingVisit> Visits, WorkshopTime Time);

/// <summary>The form that moves a visit, with what is proposed filled in; nothing is moved by opening it.</summary>
public static class MoveAddress
{
    public static string Of(int number) => $"/job-cards/{number}/plan";
}
