using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Tests.JobCards;

public class StandingPlaceTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 2, 8, 0);
    private static readonly Guid Stand = new(1, 0, 0, new byte[8]);
    private static readonly Guid Bay = new(2, 0, 0, new byte[8]);
    private static readonly Guid OtherBay = new(3, 0, 0, new byte[8]);

    private static readonly Take[] Planned =
    [
        new(VisitPhase.ColdSoak, Stand, new Interval(At(-14), At(1))), new(VisitPhase.Work, Bay, new Interval(At(1), At(4))),
        new(VisitPhase.WarmRun, Bay, new Interval(At(4), At(5))),
    ];

    [Fact]
    public void It_soaks_where_that_was_planned_and_is_in_the_bay_once_work_begins()
    {
        Assert.Equal(Stand, StandingPlace.Of([], [], Planned, Now));
        Assert.Equal(Bay, StandingPlace.Of([Start(VisitPhase.Work, 1)], [], Planned, At(2)));
        Assert.Equal(Bay, StandingPlace.Of([Start(VisitPhase.Work, 1)], [], Planned, At(30)));
    }

    [Fact]
    public void A_move_by_hand_counts_until_a_phase_with_a_place_of_its_own_begins()
    {
        Assert.Equal(OtherBay, StandingPlace.Of([Start(VisitPhase.Work, 1)], [Move(OtherBay, 2)], Planned, At(3)));
        Assert.Equal(Bay, StandingPlace.Of([Start(VisitPhase.Work, 1)], [Move(OtherBay, 0)], Planned, At(3)));
        Assert.Equal(OtherBay, StandingPlace.Of([Start(VisitPhase.Work, 1), Start(VisitPhase.HandOver, 5)], [Move(OtherBay, 2)], Planned, At(6)));
    }

    [Fact]
    public void Where_nobody_planned_a_place_nobody_knows_one()
    {
        Assert.Null(StandingPlace.Of([], [], [], Now));
        Assert.Null(StandingPlace.Of([], [], Planned[1..], Now));
    }

    private static Instant At(int hours) => Now + Duration.FromHours(hours);

    private static PhaseStart Start(VisitPhase phase, int hours) => new()
    {
        Id = NewId.At(Now), JobCardNumber = 1, Phase = phase, StartedAt = At(hours), EnteredBy = Guid.Empty,
    };

    private static MotorcycleMove Move(Guid to, int hours) => new()
    {
        Id = NewId.At(Now), JobCardNumber = 1, ResourceId = to, MovedAt = At(hours), MovedBy = Guid.Empty,
    };
}
