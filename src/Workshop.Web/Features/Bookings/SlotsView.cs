using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Bookings;

/// <summary>Slots on the booking page, each with the form that books it.</summary>
public sealed record SlotsView(FindSlots.Answer Found, ProposeVisit.Answer Visit, Wishes Wishes, WorkshopTime Time, bool Explained)
{
    /// <summary>The signed card because of which it comes back.</summary>
    public int? ComebackOf { get; init; }

    public string? ComebackReason { get; init; }
}
