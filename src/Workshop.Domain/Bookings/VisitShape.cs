using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;

namespace Workshop.Domain.Bookings;

/// <summary>What the arrival of a motorcycle takes beside its place.</summary>
public enum ArrivalTakes
{
    /// <summary>Somebody at the counter takes the key.</summary>
    Nobody,

    /// <summary>A technician runs it and hears the complaint.</summary>
    Technician,

    /// <summary>Its oil is drained while it is warm.</summary>
    TechnicianAndBay,
}

/// <summary>
/// How long each phase of a visit takes, before anybody has said when. A phase of no length is left out, except the work.
/// </summary>
public sealed record VisitShape
{
    /// <summary>Minutes at the counter for an engine that then stands until it is cold.</summary>
    public const int CounterMinutes = 10;

    /// <summary>The most that a person may say in place of what the items add up to.</summary>
    public const int MostWorkMinutes = 6000;

    public int ArrivalMinutes { get; init; }

    public ArrivalTakes ArrivalTakes { get; init; }

    /// <summary>Elapsed hours from the last stop of the engine to the work; the clock on the wall has no part in it.</summary>
    public Duration Soak { get; init; }

    /// <summary>Minutes of a technician; above 0.</summary>
    public required int WorkMinutes { get; init; }

    /// <summary>Elapsed minutes in the bay.</summary>
    public int CureMinutes { get; init; }

    public int WarmRunMinutes { get; init; }

    public int TestRideMinutes { get; init; }

    /// <summary>Elapsed hours in the bay before the recheck.</summary>
    public Duration Cool { get; init; }

    /// <summary>Minutes of a technician; with 0 there is no recheck, and no cooling for it.</summary>
    public int RecheckMinutes { get; init; }

    /// <summary>Within the opening hours of one day.</summary>
    public int HandOverMinutes { get; init; }

    /// <summary>
    /// The phases that these items ask for. Only certain and likely items count; a possible one lengthens the visit when it is
    /// begun.
    /// </summary>
    /// <param name="specification">Of the engine model, as the visit pins it.</param>
    /// <param name="items">What it comes for.</param>
    /// <param name="usual">The workshop's minutes where the engine model says nothing.</param>
    /// <param name="testRunAtArrival">A technician runs it as it arrives.</param>
    /// <param name="workMinutes">In place of what the items add up to, when a person said so.</param>
    public static VisitShape Of(
        EngineSpecification specification,
        IReadOnlyCollection<ChosenItem> items,
        WorkshopProfile usual,
        bool testRunAtArrival = false,
        int? workMinutes = null)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(usual);
        var booked = items.Where(i => i.Likelihood != Likelihood.Possible).Select(i => i.Item).ToList();
        var soaks = booked.Exists(NeedsColdEngine) && specification.Cold.SoakHours > 0;
        var drains = soaks ? booked.Where(i => i.DrainsWarm && !NeedsColdEngine(i)).ToList() : [];
        var drainMinutes = drains.Sum(i => i.LabourMinutes);
        var arrival = drainMinutes + (testRunAtArrival ? usual.ArrivalMinutes : 0);
        var recheck = specification.RecheckAfter(booked);
        return new VisitShape
        {
            ArrivalMinutes = arrival > 0 ? arrival : soaks ? CounterMinutes : 0,
            ArrivalTakes = drainMinutes > 0 ? ArrivalTakes.TechnicianAndBay
                : arrival > 0 ? ArrivalTakes.Technician
                : ArrivalTakes.Nobody,
            Soak = soaks ? Hours(specification.Cold.SoakHours) : Duration.Zero,
            WorkMinutes = workMinutes ?? Math.Max(1, VisitDuration.Of(specification, items).BookedMinutes - drainMinutes),
            CureMinutes = Opened.By(specification, booked).Joints.Max(j => j.Sealant?.CureMinutes) ?? 0,
            WarmRunMinutes = specification.AfterWork?.WarmRunMinutes ?? usual.WarmRunMinutes,
            TestRideMinutes = specification.AfterWork?.TestRideMinutes ?? usual.TestRideMinutes,
            Cool = recheck is null ? Duration.Zero : Hours(recheck.CoolHours),
            RecheckMinutes = recheck?.Minutes ?? 0,
            HandOverMinutes = usual.HandOverMinutes,
        };
    }

    /// <summary>Whether an item is done on a cold engine: what is measured at valves and cams.</summary>
    public static bool NeedsColdEngine(ServiceItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return item.Kind is ServiceItemKind.ValveClearanceCheck or ServiceItemKind.ValveClearanceAdjustment or ServiceItemKind.CamTimingCheck;
    }

    private static Duration Hours(decimal hours) => Duration.FromSeconds((long)(hours * NodaConstants.SecondsPerHour));
}
