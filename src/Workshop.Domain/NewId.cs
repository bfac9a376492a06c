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

    /// <summary>When a row was made, to the millisecond, from its id.</summary>
    public static Instant TimeOf(Guid id)
    {
        var bytes = id.ToByteArray(bigEndian: true);
        var milliseconds = 0L;
        for (var at = 0; at < 6; at++)
        {
            milliseconds = (milliseconds << 8) | bytes[at];
        }

        return Instant.FromUnixTimeMilliseconds(milliseconds);
    }
}
