using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>Everything that visits may take, and when it is free: what slots are searched and plans are made on.</summary>
/// <param name="Opening">The workshop's hours over the window.</param>
/// <param name="Window">What was read; nothing is planned to end after it.</param>
/// <param name="Resources">Bays, technicians, special tools and parking places that are not retired.</param>
public sealed record WorkshopFloor(OpeningDays Opening, Interval Window, IReadOnlyList<ResourceTimeline> Resources)
{
    public WorkshopTime Time => Opening.Calendar.Time;

    /// <summary>Of one kind, by name.</summary>
    public IReadOnlyList<ResourceTimeline> Of(ResourceKind kind) =>
        [.. Resources.Where(r => r.Resource.Kind == kind).OrderBy(r => r.Resource.Name, StringComparer.Ordinal)];

    public ResourceTimeline? Find(ResourceKind kind, Guid? id) =>
        Resources.SingleOrDefault(r => r.Resource.Id == id && r.Resource.Kind == kind);
}
