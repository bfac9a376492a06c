using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Tests.Kits;
using Workshop.Domain.Tooling;
using Workshop.Domain.TorqueSheets;
using static Workshop.Domain.Tests.Tooling.Wrenches;

namespace Workshop.Domain.Tests.Tooling;

public class InstrumentStandingTests
{
    [Fact]
    public void An_instrument_may_be_used_on_the_day_its_calibration_is_due_and_not_after()
    {
        var wrench = Wrench("N.m", 5, 25);
        wrench.CalibrationDueOn = Today;

        Assert.Null(Against(wrench, Today));
        Assert.Equal("was due for calibration on 2026-03-02", Against(wrench, Today.PlusDays(1)));
    }

    // 12 months or 5,000 cycles, whichever first: ISO 6789-1:2017 (from memory, as the standard is not open).
    [Fact]
    public void A_wrench_is_due_after_twelve_months_or_five_thousand_cycles_whichever_comes_first()
    {
        var wrench = Wrench("N.m", 5, 25);
        (wrench.CalibratedOn, wrench.CalibrationDueOn) = (Today.PlusMonths(-12), null);

        Assert.Null(Against(wrench, Today, 4999));
        Assert.Equal("has made 5,000 cycles since its calibration, and is due after 5,000", Against(wrench, Today, 5000));
        Assert.Equal("was due for calibration on 2026-03-02", Against(wrench, Today.PlusDays(1), 0));
        wrench.CalibrationCycles = 8000;
        Assert.Null(Against(wrench, Today, 5000));
    }

    [Fact]
    public void Cycles_are_all_alike_at_each_torque_of_a_tick()
    {
        var once = MadeUpEngines.Fastener("bolt", 10);

        Assert.Equal(10, WrenchCycles.Of(once));
        Assert.Equal(30, WrenchCycles.Of(once with { Stages = [Torque.FromNewtonMetres(3), Torque.FromNewtonMetres(6)] }));
    }

    [Fact]
    public void A_wrench_that_nobody_calibrated_is_not_used_while_another_instrument_may_be()
    {
        var wrench = Wrench("N.m", 5, 25);
        (wrench.CalibratedOn, wrench.CalibrationDueOn) = (null, null);
        var wheel = new Instrument { Id = default, Kind = InstrumentKind.DegreeWheel, Name = "Wheel", SerialNumber = "1", Unit = "degree" };

        Assert.Equal("has no calibration on record", Against(wrench, Today));
        Assert.Null(Against(wheel, Today));
        Assert.Equal("never calibrated, not to be used", wrench.StateOn(Today));
    }

    [Theory]
    [InlineData(InstrumentEventKind.Dropped, "was dropped on 2026-03-02 and is neither calibrated nor released since", "dropped, not to be used")]
    [InlineData(InstrumentEventKind.Overloaded, "was overloaded on 2026-03-02 and is neither calibrated nor released since", "overloaded, not to be used")]
    public void What_fell_or_was_overloaded_is_not_used_until_it_is_calibrated(InstrumentEventKind kind, string reason, string state)
    {
        var wrench = Wrench("N.m", 5, 25);

        Assert.Null(InstrumentChanges.Apply(wrench, kind, null, Today));
        Assert.Equal((reason, state), (Against(wrench, Today), wrench.StateOn(Today)));

        Assert.Null(InstrumentChanges.Apply(wrench, Certificate(wrench, Today.PlusDays(-5)), Today));
        Assert.Equal(reason, Against(wrench, Today));
        Assert.Null(InstrumentChanges.Apply(wrench, Certificate(wrench, Today.PlusDays(3)), Today.PlusDays(3)));
        Assert.Null(Against(wrench, Today.PlusDays(3)));
    }

    [Fact]
    public void A_release_sets_aside_what_stood_against_the_wrench_then_and_nothing_later()
    {
        var wrench = Wrench("N.m", 5, 25);
        wrench.CalibrationDueOn = Today.PlusDays(10);
        InstrumentChanges.Apply(wrench, InstrumentEventKind.Dropped, null, Today);

        Assert.Null(InstrumentChanges.Release(wrench, until: null, Today, cycles: 0));
        Assert.Null(Against(wrench, Today));
        Assert.Equal("in use, released by the manager until its next calibration", wrench.StateOn(Today));
        Assert.Equal("was due for calibration on 2026-03-12", Against(wrench, Today.PlusDays(11)));
        Assert.Equal("has made 5,000 cycles since its calibration, and is due after 5,000", Against(wrench, Today, 5000));

        InstrumentChanges.Apply(wrench, InstrumentEventKind.Overloaded, null, Today.PlusDays(1));
        Assert.StartsWith("was overloaded on 2026-03-03", Against(wrench, Today.PlusDays(1)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_release_may_end_on_a_day_and_covers_cycles_only_where_they_were_used_up()
    {
        var wrench = Wrench("N.m", 5, 25);

        Assert.Null(InstrumentChanges.Release(wrench, Today.PlusDays(7), Today, cycles: 5000));
        Assert.Null(Against(wrench, Today.PlusDays(7), 5200));
        Assert.NotNull(Against(wrench, Today.PlusDays(8), 5200));
        Assert.Equal("in use, released by the manager until 2026-03-09", wrench.StateOn(Today, 5100));
    }

    [Fact]
    public void A_release_needs_something_to_release_and_an_end_ahead()
    {
        var wrench = Wrench("N.m", 5, 25);

        Assert.Equal("nothing-to-release", InstrumentChanges.Release(wrench, null, Today, 0)!.Code);
        Assert.Equal("release-ended", InstrumentChanges.Release(wrench, Today.PlusDays(-1), Today, 5000)!.Code);
        InstrumentChanges.Apply(wrench, InstrumentEventKind.SentForCalibration, null, Today);
        Assert.Equal("nothing-to-release", InstrumentChanges.Release(wrench, null, Today, 0)!.Code);
    }

    [Fact]
    public void What_is_away_is_neither_used_nor_handed_to_anybody()
    {
        var (wrench, person) = (Wrench("N.m", 5, 25), Guid.CreateVersion7());

        Assert.Null(InstrumentChanges.Apply(wrench, InstrumentEventKind.HandedTo, person, Today));
        Assert.Equal(person, wrench.HolderId);
        Assert.Null(InstrumentChanges.Apply(wrench, InstrumentEventKind.SentForCalibration, null, Today));
        Assert.Equal((null, "is out for calibration"), (wrench.HolderId, Against(wrench, Today)));
        Assert.Equal(["kind"], InstrumentChanges.Apply(wrench, InstrumentEventKind.HandedTo, person, Today)!.Faults.Select(f => f.Field));
        Assert.NotNull(InstrumentChanges.Apply(wrench, InstrumentEventKind.SentForCalibration, null, Today));
        Assert.Null(InstrumentChanges.Apply(wrench, InstrumentEventKind.BackInUse, null, Today));
        Assert.NotNull(InstrumentChanges.Apply(wrench, InstrumentEventKind.BackInUse, null, Today));
        Assert.Null(InstrumentChanges.Apply(wrench, InstrumentEventKind.Withdrawn, null, Today));
        Assert.Equal("is withdrawn", Against(wrench, Today));
    }

    [Fact]
    public void A_calibration_lies_behind_and_is_due_ahead_of_itself_and_an_older_one_is_history_only()
    {
        var wrench = Wrench("N.m", 5, 25);
        var stood = wrench.CalibratedOn;

        Assert.Equal(["doneOn"], InstrumentChanges.Apply(wrench, Certificate(wrench, Today.PlusDays(1)), Today)!.Faults.Select(f => f.Field));
        Assert.Equal(["dueOn"], InstrumentChanges.Apply(wrench, Certificate(wrench, Today, Today), Today)!.Faults.Select(f => f.Field));
        Assert.Null(InstrumentChanges.Apply(wrench, Certificate(wrench, Today.PlusYears(-2)), Today));
        Assert.Equal(stood, wrench.CalibratedOn);
        Assert.Equal(Today.PlusMonths(12), InstrumentChanges.DueAfter(wrench, Today, null));
    }

    private static Calibration Certificate(Instrument wrench, LocalDate doneOn, LocalDate? dueOn = null) => new()
    {
        Id = NewId.At(Instant.FromUtc(2026, 3, 2, 8, 0)), InstrumentId = wrench.Id, DoneOn = doneOn,
        DueOn = dueOn ?? InstrumentChanges.DueAfter(wrench, doneOn, null), Certificate = "C", Laboratory = "L", EnteredBy = default,
        EnteredAt = Instant.FromUtc(2026, 3, 2, 8, 0),
    };

    private static string? Against(Instrument wrench, LocalDate day, int cycles = 0) => InstrumentStanding.ReasonAgainst(wrench, day, cycles);
}
