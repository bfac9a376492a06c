using NodaTime;

namespace Workshop.Domain;

/// <summary>Row ids are UUID version 7 (RFC 9562): they sort by the time of the clock that was passed in.</summary>
public static class NewId
{
    public static Guid At(Instant now) => Guid.CreateVersion7(now.ToDateTimeOffset());

    public static Guid At(IClock clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return At(clock.GetCurrentInstant());
    }
}
