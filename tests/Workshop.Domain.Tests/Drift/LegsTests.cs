using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Drift;

public class LegsTests
{
    [Fact]
    public void A_shim_that_nobody_moved_needs_no_thickness()
    {
        var lobe = new LobeRows().At(20_000).Found(0.20m, 0.21m).At(40_000).Found(0.18m, 0.19m).Legs();

        var leg = Assert.Single(lobe.Legs);
        Assert.Equal([0.205m, 0.185m], leg.Readings.Select(r => r.MiddleMm!.Value));
        Assert.Null(leg.FirstShim);
        Assert.Equal([0.0, 2.0], leg.Readings.Select(r => r.X));
    }

    /// <summary>Design figure: 0.10 mm more shim at a ratio of 0.6 lowers the clearance by 0.06 mm.</summary>
    [Fact]
    public void A_tenth_more_shim_at_a_ratio_of_six_tenths_lowers_the_clearance_by_six_hundredths()
    {
        var lobe = new LobeRows()
            .At(20_000).Found(0.26m, 0.27m).CameOut(2.50m).WentIn(2.60m).Left(0.20m, 0.21m)
            .Legs();

        var leg = Assert.Single(lobe.Legs);
        Assert.Equal(0.06m, leg.Readings[1].ShimPartMm);
        Assert.Equal(leg.Readings[0].LowerMm, leg.Readings[1].LowerMm);
        Assert.Equal(leg.Readings[0].UpperMm, leg.Readings[1].UpperMm);
        Assert.Equal([0, 1], leg.Readings.Select(r => r.Swaps));
        Assert.Equal(0.06m, lobe.ShimPartNowMm);
        Assert.Equal(ShimThickness.FromMillimetres(2.60m), lobe.ShimNow);
        var change = Assert.Single(lobe.Changes);
        Assert.Null(change.Cut);
    }

    [Fact]
    public void A_shim_measured_on_its_way_out_says_what_it_was_before()
    {
        var lobe = new LobeRows()
            .At(10_000).Found(0.28m, 0.29m)
            .At(20_000).Found(0.26m, 0.27m).CameOut(2.50m).WentIn(2.60m).Left(0.20m, 0.21m)
            .Legs();

        var leg = Assert.Single(lobe.Legs);
        Assert.All(leg.Readings.Take(2), r => Assert.Equal(ShimThickness.FromMillimetres(2.50m), r.Shim));
        Assert.Equal([0m, 0m, 0.06m], leg.Readings.Select(r => r.ShimPartMm));
    }

    [Fact]
    public void A_shim_that_went_in_measured_need_not_be_measured_on_its_way_out()
    {
        var lobe = new LobeRows()
            .At(10_000).Found(0.12m, 0.13m).CameOut(null).WentIn(2.40m).Left(0.20m, 0.21m)
            .At(30_000).Found(0.18m, 0.19m).WentIn(2.45m).Left(0.15m, 0.16m)
            .Legs();

        Assert.Equal([1, 3], lobe.Legs.Select(l => l.Readings.Count));
        Assert.Equal([0m, 0m, 0.03m], lobe.Legs[1].Readings.Select(r => r.ShimPartMm));
    }

    [Fact]
    public void As_found_takes_the_shim_that_came_out_even_where_another_went_in_before()
    {
        var lobe = new LobeRows()
            .At(10_000).Found(0.20m, 0.21m).CameOut(2.50m).WentIn(2.50m).Left(0.20m, 0.21m)
            .At(30_000).Found(0.23m, 0.24m).CameOut(2.45m)
            .Legs();

        Assert.Equal([0m, 0m, -0.03m], Assert.Single(lobe.Legs).Readings.Select(r => r.ShimPartMm));
    }

    [Fact]
    public void A_shim_measured_on_its_way_out_with_none_recorded_as_going_in_went_back()
    {
        var lobe = new LobeRows().At(20_000).Found(0.20m, 0.21m).CameOut(2.50m).Left(0.20m, 0.21m).Legs();

        Assert.Equal(2, Assert.Single(lobe.Legs).Readings.Count);
        Assert.Empty(lobe.Changes);
    }

    [Theory]
    [InlineData(null, 2.60)]
    [InlineData(2.50, null)]
    [InlineData(null, null)]
    public void A_shim_changed_to_or_from_an_unmeasured_one_cuts_the_leg(double? cameOut, double? wentIn)
    {
        var lobe = new LobeRows()
            .At(20_000).Found(0.12m, 0.13m).CameOut((decimal?)cameOut).WentIn((decimal?)wentIn).Left(0.20m, 0.21m)
            .At(40_000).Found(0.18m, 0.19m)
            .Legs();

        Assert.Equal([1, 2], lobe.Legs.Select(l => l.Readings.Count));
        Assert.Equal(LegCut.ShimUnmeasured, lobe.Legs[1].Cut);
        Assert.Equal(1, lobe.Legs[1].Section);
        Assert.Equal(LegStart.Adjusted, lobe.Legs[1].Start);
    }

    [Fact]
    public void A_turned_screw_cuts_the_leg_and_keeps_the_slope()
    {
        var lobe = new LobeRows()
            .At(20_000).Found(0.12m, 0.13m).Happened(ValveEventKind.ScrewTurned).Left(0.20m, 0.21m)
            .Legs();

        Assert.Equal([LegCut.ScrewTurned], lobe.Legs.Select(l => l.Cut).OfType<LegCut>());
        Assert.Equal([1, 1], lobe.Legs.Select(l => l.Section));
    }

    [Fact]
    public void Whether_it_was_changed_being_unknown_cuts_the_leg_with_no_adjustment_claimed()
    {
        var lobe = new LobeRows()
            .At(20_000).Found(0.12m, 0.13m).Happened(ValveEventKind.ChangeUnknown)
            .At(40_000).Found(0.18m, 0.19m)
            .Legs();

        Assert.Equal(LegStart.FirstSeen, lobe.Legs[1].Start);
        Assert.Equal(Distance.FromKilometres(40_000), lobe.Legs[1].Origin);
    }

    [Theory]
    [InlineData(0.12, 0.13)]
    [InlineData(0.14, 0.15)]
    [InlineData(0.10, 0.11)]
    public void A_valve_measured_again_with_nothing_written_down_was_not_changed(double go, double noGo)
    {
        var lobe = new LobeRows().At(20_000).Found(0.12m, 0.13m).Left((decimal)go, (decimal)noGo).Legs();

        Assert.Equal(2, Assert.Single(lobe.Legs).Readings.Count);
    }

    [Theory]
    [InlineData(0.20, 0.21)]
    [InlineData(0.08, 0.09)]
    [InlineData(0.15, null)]
    [InlineData(null, 0.10)]
    public void Readings_too_far_apart_for_that_say_that_something_was_changed(double? go, double? noGo)
    {
        var lobe = new LobeRows().At(20_000).Found(0.12m, 0.13m).Left((decimal?)go, (decimal?)noGo).Legs();

        Assert.Equal([null, LegCut.ChangeUnknown], lobe.Legs.Select(l => l.Cut));
    }

    [Fact]
    public void Wide_blades_are_given_their_width()
    {
        var lobe = new LobeRows().At(20_000).Found(0.10m, 0.15m).Left(0.20m, 0.25m).Legs();

        Assert.Single(lobe.Legs);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_changed_part_begins_a_new_slope_for_its_valve_or_for_all(bool wholeEngine)
    {
        ValveKey? valve = wholeEngine ? null : LobeRows.Valve;
        var lobe = new LobeRows()
            .At(20_000).Found(0.12m, 0.13m).Changed(ValvePart.Seat, valve).CameOut(2.5m).WentIn(2.4m).Left(0.20m, 0.21m)
            .At(40_000).Found(0.18m, 0.19m)
            .Legs();

        Assert.Equal([1, 2], lobe.Legs.Select(l => l.Section));
        Assert.Equal(LegCut.PartChanged, lobe.Legs[1].Cut);
        Assert.Equal([lobe.Legs[1]], lobe.LastSection);
    }

    [Fact]
    public void What_is_done_to_another_valve_changes_nothing()
    {
        var other = new ValveKey(1, Side.Intake, 1);
        var lobe = new LobeRows()
            .At(20_000).Found(0.20m, 0.21m).Changed(ValvePart.Seat, other).Happened(ValveEventKind.ScrewTurned, other)
            .At(40_000).Found(0.18m, 0.19m)
            .Legs();

        Assert.Single(lobe.Legs);
        Assert.Empty(lobe.Changes);
    }

    [Fact]
    public void Only_the_last_attempt_of_a_stage_enters_and_what_was_corrected_does_not()
    {
        var lobe = new LobeRows()
            .At(20_000).Found(0.10m, 0.11m).Found(0.12m, 0.13m, attempt: 2)
            .At(40_000).Found(0.20m, 0.21m).Corrected(0.11m, 0.12m)
            .Legs();

        Assert.Equal([0.125m, 0.115m], Assert.Single(lobe.Legs).Readings.Select(r => r.MiddleMm!.Value));
    }

    [Fact]
    public void Readings_of_a_warm_engine_and_carried_ones_are_kept_out_with_the_reason()
    {
        var lobe = new LobeRows()
            .At(20_000).Found(0.20m, 0.21m).Happened(ValveEventKind.NotDisturbed).Left(0.20m, 0.21m, notRemeasured: true)
            .At(40_000).Found(0.15m, 0.16m, notCold: true)
            .At(60_000).Found(0.18m, 0.19m)
            .Legs();

        Assert.Equal([20_000m, 60_000m], Assert.Single(lobe.Legs).Readings.Select(r => r.At.Kilometres));
        Assert.Equal(["carried from as found, used once", "not cold"], lobe.LeftOut.Select(l => l.Why));
    }

    [Fact]
    public void A_warm_last_attempt_does_not_bring_back_the_one_before()
    {
        var lobe = new LobeRows().At(20_000).Found(0.20m, 0.21m).Found(0.15m, 0.16m, attempt: 2, notCold: true).Legs();

        Assert.Empty(lobe.Legs);
    }

    [Fact]
    public void Open_ends_stay_open_with_the_shims_part_added_to_the_other()
    {
        var lobe = new LobeRows()
            .At(20_000).Found(null, 0.05m).CameOut(2.60m).WentIn(2.50m).Left(0.10m, null)
            .Legs();

        var readings = Assert.Single(lobe.Legs).Readings;
        Assert.Equal((null, 0.05m, null), (readings[0].LowerMm, readings[0].UpperMm, readings[0].MiddleMm));
        Assert.Equal((0.04m, null, null), (readings[1].LowerMm, readings[1].UpperMm, readings[1].MiddleMm));
    }

    [Theory]
    [InlineData(24_000, 24_000, LegStart.New)]
    [InlineData(30_000, 24_000, LegStart.New)]
    [InlineData(30_001, 24_000, LegStart.FirstSeen)]
    [InlineData(5_000, null, LegStart.FirstSeen)]
    public void A_valve_read_about_when_its_first_check_was_due_was_never_opened_before(
        int firstReadKm, int? firstDueKm, LegStart start)
    {
        var due = firstDueKm is { } km ? Distance.FromKilometres(km) : (Distance?)null;

        var leg = new LobeRows { FirstCheckDue = due }.At(firstReadKm).Found(0.20m, 0.21m).Legs().Legs[0];

        Assert.Equal(start, leg.Start);
        Assert.Equal(start == LegStart.New ? Distance.Zero : Distance.FromKilometres(firstReadKm), leg.Origin);
    }

    [Fact]
    public void A_set_level_counts_from_the_visit_that_set_it()
    {
        var lobe = new LobeRows { FirstCheckDue = Distance.FromKilometres(24_000) }
            .At(20_000).Found(0.12m, 0.13m).CameOut(null).WentIn(null)
            .At(45_000).Found(0.18m, 0.19m)
            .Legs();

        Assert.Equal((LegStart.Adjusted, Distance.FromKilometres(20_000)), (lobe.Legs[1].Start, lobe.Legs[1].Origin));
        Assert.Equal(2.5, lobe.Legs[1].Readings[0].X);
    }

    [Fact]
    public void A_change_after_the_last_reading_leaves_the_present_level_unknown()
    {
        var lobe = new LobeRows().At(20_000).Found(0.12m, 0.13m).CameOut(2.5m).WentIn(null).Legs();

        Assert.Equal(LegCut.ShimUnmeasured, lobe.CutSinceLastReading);
        Assert.Single(lobe.Legs);
    }

    [Fact]
    public void Two_lobes_share_the_shim_each_by_its_own_ratio()
    {
        var rows = new LobeRows()
            .At(20_000).Found(0.26m, 0.27m).Found(0.30m, 0.31m, lobe: 2).CameOut(2.50m).WentIn(2.60m)
            .Left(0.20m, 0.21m).Left(0.22m, 0.23m, lobe: 2);

        Assert.Equal(0.06m, Assert.Single(rows.Legs(0.6m).Legs).Readings[1].ShimPartMm);
        Assert.Equal(0.08m, Assert.Single(rows.Legs(0.8m, lobe: 2).Legs).Readings[1].ShimPartMm);
    }
}
