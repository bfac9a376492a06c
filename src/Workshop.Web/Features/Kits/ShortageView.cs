using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Kits;

/// <summary>One missing part on a page: <c>&lt;partial name="_Shortage" model="..." /&gt;</c>.</summary>
public sealed record ShortageView(ListShortages.MissingPart Part, WorkshopTime Time);
