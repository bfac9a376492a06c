using NodaTime;
using Workshop.Domain.Arrivals;
using Workshop.Domain.Finishing;
using Workshop.Domain.Ignition;
using Workshop.Domain.Measures;
using Workshop.Domain.Records;
using Xunit;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.Records;

public class RecordedChecksTests
{
    private static readonly Guid Said = NewId.At(Start);

    [Fact]
    public void What_was_seen_on_arrival_stands_by_kind_and_what_came_up_later_says_so()
    {
        var arrival = RecordedChecks.Arrival(InOrder with
        {
            Arrival =
            [
                Note(ArrivalKind.Lamp, null, ArrivalState.NoneSeen), Note(ArrivalKind.Leak, ArrivalSubject.EngineOil, ArrivalState.Weeping, Said),
                Note(ArrivalKind.Damage, ArrivalSubject.LeftSide, ArrivalState.Noted, stage: ArrivalStage.DuringWork),
            ],
        });

        Assert.Equal(
            [
                new RecordedCheck("Leaks", "Engine oil weeping", Said), new RecordedCheck("Damage", "Left side (seen since the work was begun)"),
                new RecordedCheck("Warning lamps", "None seen"),
            ],
            arrival);
    }

    [Fact]
    public void A_plug_is_said_as_it_came_out_and_as_it_goes_back()
    {
        var plug = Assert.Single(RecordedChecks.Plugs(InOrder with { PlugChecks = [Plug(PlugCondition.WornElectrode, 1.05m, renewed: true)] }));
        Assert.Equal(("Plug of cylinder 1", "Worn electrode, gap 1.05 mm; renewed, gap 0.80 mm."), (plug.Name, plug.Sentence));
        Assert.Equal("Normal; put back, gap 0.80 mm.", Assert.Single(RecordedChecks.Plugs(InOrder with { PlugChecks = [Plug(PlugCondition.Normal, null, renewed: false)] })).Sentence);
        Assert.Empty(RecordedChecks.Plugs(InOrder));
        Assert.Empty(RecordedChecks.Cylinders(InOrder));
    }

    [Fact]
    public void What_followed_the_work_is_said_by_the_attempt_that_counts()
    {
        var after = RecordedChecks.AfterWork(
            InOrder with
            {
                Finished = new FinishedWork
                {
                    Leaks = [Look("engine", LeakState.Leaking, 1), Look("engine", LeakState.Dry, 2), Look("sump", LeakState.Weeping, 1)],
                    Rides = [Ride(1, 3.5m), Ride(2, 12m)],
                    Reminders = [new ReminderReset { Id = Said, JobCardNumber = 1001, Attempt = 1, Outcome = ReminderOutcome.HasNone, EnteredBy = Guid.Empty, EnteredAt = Start }],
                },
            },
            _ => "Tek Nician");

        Assert.Equal(
            [
                new RecordedCheck("Leak check", "Dry after 10 min of running: The engine as a whole, from below too"), new RecordedCheck("Leak check", "sump: weeping", Said),
                new RecordedCheck("Test ride", "12 km, ridden by Tek Nician"), new RecordedCheck("Service reminder", "The instruments have none"),
            ],
            after);
    }

    [Fact]
    public void A_ride_that_nobody_rode_says_why_and_nothing_done_says_nothing()
    {
        var ride = new TestRide
        {
            Id = Said, JobCardNumber = 1001, Attempt = 1, WhyNot = WhyNotRidden.Weather, WordsRemarkId = Said, RiddenAt = Start, EnteredBy = Guid.Empty, EnteredAt = Start,
        };

        Assert.Equal([new RecordedCheck("Test ride", "Not ridden: the weather", Said)], RecordedChecks.AfterWork(InOrder with { Finished = new FinishedWork { Rides = [ride] } }, _ => ""));
        Assert.Empty(RecordedChecks.AfterWork(InOrder, _ => ""));
    }

    private static ArrivalNote Note(
        ArrivalKind kind, ArrivalSubject? subject, ArrivalState state, Guid? words = null, ArrivalStage stage = ArrivalStage.OnArrival) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, Stage = stage, Kind = kind, Subject = subject, State = state, WordsRemarkId = words, NotedBy = Guid.Empty, NotedAt = Start,
    };

    private static PlugCheck Plug(PlugCondition condition, decimal? foundMm, bool renewed) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, JobCardNumber = 1001, Cylinder = 1, Plug = 1, Attempt = 1, Condition = condition, GapFoundMm = foundMm, Renewed = renewed,
        GapLeftMm = 0.8m, Gauge = GapGauge.Wire, OdometerReadingId = Guid.Empty, CheckedAt = Start, CheckedBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = Start,
    };

    private static LeakLook Look(string place, LeakState state, int attempt) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, PlaceCode = place, PlaceName = place, Attempt = attempt, State = state, RunMinutes = 10,
        WordsRemarkId = state == LeakState.Dry ? null : Said, LookedAt = Start + Duration.FromHours(2), LookedBy = Guid.Empty, EnteredAt = Start,
    };

    private static TestRide Ride(int attempt, decimal km) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, Attempt = attempt, RiderId = Said, Distance = Distance.FromKilometres(km), RiddenAt = Start, EnteredBy = Guid.Empty, EnteredAt = Start,
    };
}
