using Workshop.Domain.Arrivals;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.Measures;
using Workshop.Domain.Tests.Arrivals;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.Compression;

public class CompressionAskedTests
{
    [Fact]
    public void A_valve_below_its_lower_limit_asks_for_compression_and_one_that_is_wide_does_not()
    {
        Assert.Equal(
            ["Found tight: cylinder 1, exhaust 1. A valve that does not close any more loses compression."],
            CompressionAsked.Because(Engine, [Reading(Intake, Stage.AsFound, 0.30m), Reading(Exhaust, Stage.AsFound, 0.15m)], []));
        Assert.Empty(CompressionAsked.Because(Engine, [Reading(Intake, Stage.AsFound, 0.30m)], []));
        Assert.Empty(CompressionAsked.Because(Engine, [Reading(Exhaust, Stage.AsLeft, 0.15m)], []));
    }

    [Fact]
    public void A_valve_into_which_no_blade_enters_asks_for_it_though_the_blades_leave_it_undecided()
    {
        var found = Reading(Exhaust, Stage.AsFound, 0.05m);
        var none = new ClearanceReading
        {
            Id = found.Id, EngineId = found.EngineId, JobCardNumber = 1001, Valve = Exhaust, Lobe = 1, Stage = Stage.AsFound, Attempt = 1,
            Kind = BracketKind.NoneEnters, NoGo = Clearance.FromMillimetres(0.25m), OdometerReadingId = Guid.Empty, MeasuredAt = Start,
            MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = Start,
        };

        Assert.Equal(Verdict.NotDecided, ClearanceVerdict.Of(none.Bracket, Engine.Limits[1]).Verdict);
        Assert.Single(CompressionAsked.Because(Engine, [none], []));
    }

    [Theory]
    [InlineData(ArrivalSubject.HardStarting, true)]
    [InlineData(ArrivalSubject.Misfire, true)]
    [InlineData(ArrivalSubject.Noise, true)]
    [InlineData(ArrivalSubject.LossOfPower, true)]
    [InlineData(ArrivalSubject.Smoke, true)]
    [InlineData(ArrivalSubject.Other, false)]
    public void A_complaint_of_how_it_runs_asks_for_it_and_another_does_not(ArrivalSubject subject, bool asks) =>
        Assert.Equal(asks, CompressionAsked.Because(Engine, [], [Notes.Of(ArrivalKind.Complaint, subject)]).Count == 1);

    [Fact]
    public void A_complaint_that_was_struck_asks_for_nothing()
    {
        var complaint = Notes.Of(ArrivalKind.Complaint, ArrivalSubject.Misfire);

        Assert.Empty(CompressionAsked.Because(Engine, [], [complaint, Notes.Of(ArrivalKind.Complaint, ArrivalSubject.Misfire, takes: complaint, struck: true)]));
    }
}
