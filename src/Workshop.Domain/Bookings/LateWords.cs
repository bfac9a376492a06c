namespace Workshop.Domain.Bookings;

/// <summary>How lateness is said on a page.</summary>
public static class LateWords
{
    public static string Spoken(this LateReason reason) => reason switch
    {
        LateReason.Waits => "waits, lying open",
        LateReason.NotHere => "not here yet",
        LateReason.RunsOver => "goes on beyond its end",
        LateReason.SoaksLonger => "cold later than planned",
        LateReason.NotBegun => "not begun yet",
        LateReason.BegunLate => "begun late",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
    };
}
