using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Records;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Domain.Tests.JobCards;
using Xunit;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.Records;

/// <summary>The made-up engine allows 0.10 to 0.20 mm on the intake side and 0.20 to 0.30 mm on the exhaust side.</summary>
public class RecordedLobesTests
{
    [Fact]
    public void A_valve_is_said_as_found_as_set_and_as_left()
    {
        Assert.Equal("Within limits.", Say([Reading(Intake, Stage.AsFound, 0.15m)]));
        Assert.Equal("Too tight.", Say([Reading(Intake, Stage.AsFound, 0.08m)]));
        Assert.Equal("Too wide as found; set; within limits as left.", Say([Reading(Intake, Stage.AsFound, 0.22m), Reading(Intake, Stage.AsLeft, 0.15m)], Changed));
        Assert.Equal("Too tight as found; set.", Say([Reading(Intake, Stage.AsFound, 0.08m)], Changed));
        Assert.Equal("Within limits; left as it was.", Say([Reading(Intake, Stage.AsFound, 0.15m), Reading(Intake, Stage.AsLeft, 0.15m, carried: true)]));
        Assert.Equal("Within limits as found and as left.", Say([Reading(Intake, Stage.AsFound, 0.15m), Reading(Intake, Stage.AsLeft, 0.16m)]));
        Assert.Equal("Not decided by the blades that were tried.", Say([Reading(Intake, Stage.AsFound, 0.05m, 0.15m)]));
    }

    [Fact]
    public void The_last_attempt_counts_and_lobes_that_nobody_measured_are_left_out()
    {
        var lobes = RecordedLobes.Of(Engine, [Reading(Intake, Stage.AsFound, 0.08m), Reading(Intake, Stage.AsFound, 0.15m, attempt: 2)], [], []);

        var lobe = Assert.Single(lobes);
        Assert.Equal((Intake, 0.15m, Verdict.Within), (lobe.Valve, lobe.Found!.GoMm!.Value.Millimetres, lobe.Found.Verdict));
    }

    [Fact]
    public void A_shim_that_went_back_sets_nothing_and_a_turned_screw_does()
    {
        ShimObservation[] same = [Shim(Intake, Stage.AsFound), Shim(Intake, Stage.AsLeft)];
        Assert.False(RecordedLobes.IsSet(Intake, same, []));
        Assert.True(RecordedLobes.IsSet(Intake, Changed, []));
        Assert.True(RecordedLobes.IsSet(Intake, [], [Event(Intake, ValveEventKind.ScrewTurned)]));
        Assert.False(RecordedLobes.IsSet(Exhaust, Changed, [Event(Intake, ValveEventKind.ScrewTurned)]));
    }

    [Fact]
    public void Shims_are_said_out_and_in_new_used_or_put_back()
    {
        Assert.Equal("2.500 mm out; 2.400 mm in, new", Said(new FittedShim(Intake, StockCondition.New, SameOne: false)));
        Assert.Equal("2.500 mm out; 2.400 mm in, used", Said(new FittedShim(Intake, StockCondition.Used, SameOne: false)));
        Assert.Equal("2.500 mm out; 2.400 mm put back", Said(new FittedShim(Intake, StockCondition.Used, SameOne: true)));
        Assert.Equal("2.500 mm out; 2.400 mm in", Assert.Single(RecordedLobes.Shims(Changed, [])).Sentence);
        Assert.Equal("2.500 mm out", Assert.Single(RecordedLobes.Shims([Shim(Exhaust, Stage.AsFound)], [])).Sentence);
    }

    private static ShimObservation[] Changed => [Shim(Intake, Stage.AsFound), Other(Stage.AsLeft)];

    private static string Said(FittedShim fitted) => Assert.Single(RecordedLobes.Shims(Changed, [fitted])).Sentence;

    private static string Say(ClearanceReading[] readings, ShimObservation[]? shims = null) => Assert.Single(RecordedLobes.Of(Engine, readings, shims ?? [], [])).Sentence;

    private static ShimObservation Other(Stage stage) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, JobCardNumber = 1001, Valve = Intake, Stage = stage, Thickness = ShimThickness.FromMillimetres(2.4m),
        OdometerReadingId = Guid.Empty, MeasuredAt = Start, MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = Start,
    };
}
