namespace Workshop.Domain.Bookings;

/// <summary>How phases of a visit are said on a page.</summary>
public static class VisitPhaseWords
{
    /// <summary>In full.</summary>
    public static string Spoken(this VisitPhase phase) => phase switch
    {
        VisitPhase.Arrival => "arrival",
        VisitPhase.ColdSoak => "cold soak",
        VisitPhase.Work => "work",
        VisitPhase.SealantCure => "sealant cure",
        VisitPhase.WarmRun => "warm run",
        VisitPhase.TestRide => "test ride",
        VisitPhase.CoolAndRecheck => "cool and re-check",
        VisitPhase.HandOver => "hand-over",
        VisitPhase.Waiting => "waiting",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, null),
    };
}
