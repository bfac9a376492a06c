using NodaTime;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.JobCards;

/// <summary>An item of a visit that is being done: what it opens must be closed again.</summary>
/// <param name="StartedAt">When a likely or possible item was begun; absent for a certain one.</param>
public sealed record ItemUnderWay(ServiceItem Item, Instant? StartedAt = null);
