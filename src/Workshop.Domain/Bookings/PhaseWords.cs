using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>How phases are said on a page.</summary>
public static class PhaseWords
{
    public static string Spoken(this VisitPhase phase) => phase switch
    {
        VisitPhase.Arrival => "arrival",
        VisitPhase.ColdSoak => "cold soak",
        VisitPhase.Work => "work",
        VisitPhase.SealantCure => "sealant cures",
        VisitPhase.WarmRun => "warm run",
        VisitPhase.TestRide => "test ride",
        VisitPhase.CoolAndRecheck => "cools, then recheck",
        VisitPhase.HandOver => "hand-over",
        VisitPhase.Waiting => "waiting",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, null),
    };
}
