using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Domain.Tests.Statistics;

namespace Workshop.Domain.Tests.Drift;

public class StraightLineDriftTests
{
    /// <summary>
    /// NIST/ITL StRD Norris, read as one leg: y in thousandths of a mm of clearance, x in 10,000 km, brackets 0.0002 mm wide
    /// about each y. The whole road from rows to drift must give the certified slope and standard error.
    /// </summary>
    [Fact]
    public void Norris_goes_through_rows_and_legs_to_its_certified_line()
    {
        var set = NistDataSet.Read("nist/Norris.dat");
        var rows = new LobeRows();
        foreach (var (x, y) in set.Column(1).Zip(set.Column(0)))
        {
            var middle = (decimal)y / 1000;
            rows.At((decimal)x * 10_000).Found(middle - 0.0001m, middle + 0.0001m).Happened(ValveEventKind.NotDisturbed);
        }

        var drift = rows.Estimate(0, 3).Drift!;

        DigitsOfAgreement.AtLeast(11, drift.Value * 1000, set.Certified("B1"), "slope");
        DigitsOfAgreement.AtLeast(10, drift.StandardError * 1000, set.Certified("B1", 1), "its standard error");
        Assert.Equal(34, drift.DegreesOfFreedom);
    }

    [Fact]
    public void The_line_gives_drift_present_clearance_and_where_it_reaches_the_lower_limit()
    {
        var estimate = new LobeRows()
            .At(20_000).Found(0.200m, 0.210m)
            .At(40_000).Found(0.180m, 0.190m)
            .At(60_000).Found(0.160m, 0.170m)
            .At(80_000).Found(0.150m, 0.160m)
            .Estimate();

        // By hand: x 0, 2, 4, 6; middles 0.205, 0.185, 0.165, 0.155; Sxx 20, Sxy -0.17; residual sum of squares 3e-5.
        Assert.Equal(-0.0085, estimate.DriftMm!.Value, 1e-12);
        Assert.Equal(Math.Sqrt(3e-5 / 2 / 20), estimate.Drift!.StandardError, 1e-12);
        Assert.Equal(0.152, estimate.PresentMm!.Value, 1e-12);
        Assert.Equal(0.152, estimate.Present!.Estimate, 1e-12);
        Assert.Equal((LimitEnd.Lower, 0.10m, false), (estimate.Reaches!.End, estimate.Reaches.LimitMm, estimate.Reaches.Passed));

        // 0.152 - 0.10 = 0.052 mm at 0.0085 mm per 10,000 km.
        Assert.Equal(80_000 + (0.052 / 0.0085 * 10_000), (double)estimate.Reaches.At.Kilometres, 0.001);
        Assert.True(estimate.Reaches.Earliest < estimate.Reaches.At && estimate.Reaches.At < estimate.Reaches.Latest);
        Assert.Null(estimate.Reason);
    }

    [Fact]
    public void The_interval_ends_where_the_confidence_band_crosses_the_limit()
    {
        var rows = TwoLegs();
        var (lobe, estimate) = (rows.Legs(), rows.Estimate());
        var line = estimate.Lines!.LineOf(1);

        double Band(Distance at, bool upper)
        {
            var band = line.MeanResponseAt(lobe.Legs[1].XAt(at), StraightLineDrift.Confidence);
            return upper ? band.Upper : band.Lower;
        }

        Assert.Equal(0.10, Band(estimate.Reaches!.Earliest, upper: false), 1e-6);
        Assert.Equal(0.10, Band(estimate.Reaches.Latest, upper: true), 1e-6);
    }

    [Fact]
    public void A_clearance_that_grows_reaches_the_upper_limit()
    {
        var estimate = new LobeRows()
            .At(0).Found(0.20m, 0.21m).At(20_000).Found(0.22m, 0.23m).At(40_000).Found(0.24m, 0.25m).At(60_000).Found(0.26m, 0.27m)
            .Estimate();

        Assert.Equal(LimitEnd.Upper, estimate.Reaches!.End);
        Assert.Equal(95_000, (double)estimate.Reaches.At.Kilometres, 0.001);
    }

    /// <summary>
    /// After more shim the limit is met sooner by just what the shim took: 0.06 mm at 0.01 mm per 10,000 km is 60,000 km.
    /// </summary>
    [Fact]
    public void A_thicker_shim_brings_the_limit_nearer_by_what_it_takes()
    {
        var before = new LobeRows()
            .At(0).Found(0.28m, 0.29m).At(20_000).Found(0.26m, 0.27m).At(40_000).Found(0.24m, 0.25m)
            .At(60_000).Found(0.22m, 0.23m).CameOut(2.5m);
        var unchanged = before.Estimate();
        var changed = before.WentIn(2.6m).Estimate();

        Assert.Equal(unchanged.DriftMm, changed.DriftMm);
        Assert.Equal(unchanged.PresentMm!.Value - 0.06, changed.PresentMm!.Value, 1e-12);
        Assert.Equal(60_000m, (unchanged.Reaches!.At - changed.Reaches!.At).Kilometres);
    }

    [Fact]
    public void Legs_of_one_section_share_the_slope_and_each_has_its_level()
    {
        var estimate = TwoLegs().Estimate();

        Assert.Equal(7, estimate.Readings);
        Assert.Equal(7 - 2 - 1, estimate.Drift!.DegreesOfFreedom);

        // By hand: Sxy -0.08 of Sxx 8 in the first leg, -0.23 of 20 in the second.
        Assert.Equal(-0.31 / 28, estimate.DriftMm!.Value, 1e-12);
    }

    [Fact]
    public void A_changed_part_leaves_the_slope_before_it_out()
    {
        var estimate = new LobeRows()
            .At(0).Found(0.28m, 0.29m).At(20_000).Found(0.20m, 0.21m)
            .At(40_000).Found(0.12m, 0.13m).Changed(ValvePart.Valve, LobeRows.Valve).Left(0.24m, 0.25m)
            .At(60_000).Found(0.22m, 0.23m).At(80_000).Found(0.20m, 0.21m)
            .Estimate();

        Assert.Equal(3, estimate.Readings);
        Assert.Equal(-0.01, estimate.DriftMm!.Value, 1e-12);
    }

    /// <summary>A line through three 0.01 mm brackets that happens to fit exactly is known no better than 0.01/sqrt(12) mm.</summary>
    [Fact]
    public void Readings_that_lie_on_a_line_are_still_no_better_than_their_blades()
    {
        var estimate = new LobeRows()
            .At(0).Found(0.24m, 0.25m).At(20_000).Found(0.22m, 0.23m).At(40_000).Found(0.20m, 0.21m).Estimate();

        Assert.Equal(0.01 / Math.Sqrt(12) / Math.Sqrt(8), estimate.Drift!.StandardError, 1e-12);
    }

    [Fact]
    public void A_reading_open_at_one_end_is_left_out_of_the_line_and_counted()
    {
        var estimate = new LobeRows()
            .At(0).Found(0.24m, 0.25m).At(10_000).Found(0.20m, null).At(20_000).Found(0.22m, 0.23m).At(40_000).Found(0.20m, 0.21m)
            .Estimate();

        Assert.Equal((3, 1), (estimate.Readings, estimate.OpenEnded));
    }

    [Theory]
    [InlineData(0.08, 0.09, LimitEnd.Lower)]
    [InlineData(0.09, 0.10, LimitEnd.Lower)]
    [InlineData(null, 0.05, LimitEnd.Lower)]
    [InlineData(0.31, 0.32, LimitEnd.Upper)]
    [InlineData(0.40, null, LimitEnd.Upper)]
    public void A_bracket_outside_the_limits_needs_no_forecast(double? go, double? noGo, LimitEnd end)
    {
        var estimate = new LobeRows().At(20_000).Found((decimal?)go, (decimal?)noGo).Estimate();

        Assert.True(estimate.Reaches!.Passed);
        Assert.Equal((end, Distance.FromKilometres(20_000)), (estimate.Reaches.End, estimate.Reaches.At));
        Assert.Null(estimate.Reason);
    }

    /// <summary>Wide blades across a limit: the middle lies outside, the reading leaves it open.</summary>
    [Fact]
    public void A_bracket_across_a_limit_decides_nothing() =>
        Refuses(new LobeRows().At(20_000).Found(0.06m, 0.11m), NoForecastReason.OneReading, "One reading has no slope");

    [Fact]
    public void A_shim_that_went_in_since_the_last_reading_takes_its_verdict_away()
    {
        var found = new LobeRows().At(20_000).Found(0.08m, 0.09m).CameOut(2.60m);

        Assert.True(found.Estimate().Reaches!.Passed);
        Assert.Equal(NoForecastReason.OneReading, found.WentIn(2.40m).Estimate().Reason);
    }

    [Fact]
    public void A_line_that_is_outside_for_certain_needs_no_forecast_either()
    {
        var rows = new LobeRows();
        for (var visit = 0; visit < 8; visit++)
        {
            rows.At(visit * 10_000).Found(0.23m - (visit * 0.02m), 0.24m - (visit * 0.02m));
        }

        // The last bracket, 0.09 to 0.10, lies across the limit; the line there is 0.095 with an interval of 0.0048 either side.
        var estimate = rows.Estimate(0.0999m, 0.3001m);

        Assert.True(estimate.Present!.Upper < 0.0999 && estimate.Reaches!.Passed);
    }

    [Fact]
    public void A_line_that_lies_outside_while_the_readings_leave_it_open_says_since_when()
    {
        var estimate = new LobeRows()
            .At(0).Found(0.25m, 0.30m).At(20_000).Found(0.20m, 0.25m).At(40_000).Found(0.15m, 0.20m).At(60_000).Found(0.10m, 0.15m)
            .At(80_000).Found(0.06m, 0.11m)
            .Estimate();

        Assert.False(estimate.Reaches!.Passed);
        Assert.True(estimate.Reaches.At < estimate.LastReadingAt && estimate.Reaches.Earliest < estimate.Reaches.At);
        Assert.True(estimate.Reaches.Latest > estimate.LastReadingAt);
    }

    [Fact]
    public void Nothing_measured_has_a_reason() => Refuses(new LobeRows(), NoForecastReason.NotMeasured, "not measured yet");

    [Fact]
    public void One_reading_has_a_present_clearance_and_a_reason()
    {
        var rows = new LobeRows().At(20_000).Found(0.20m, 0.21m);

        Refuses(rows, NoForecastReason.OneReading, "One reading has no slope");
        Assert.Equal(0.205, rows.Estimate().PresentMm!.Value, 1e-12);
    }

    [Fact]
    public void Readings_at_one_distance_have_a_reason()
    {
        var rows = new LobeRows().At(20_000).Found(0.20m, 0.21m).Happened(ValveEventKind.NotDisturbed).Left(0.21m, 0.22m);

        Refuses(rows, NoForecastReason.OneDistance, "one distance");
        Assert.Equal(0.21, rows.Estimate().PresentMm!.Value, 1e-12);
    }

    [Fact]
    public void Two_readings_have_a_slope_and_a_reason()
    {
        var rows = new LobeRows().At(0).Found(0.20m, 0.21m).At(20_000).Found(0.18m, 0.19m);

        Refuses(rows, NoForecastReason.NoUncertainty, "2 readings tell a slope (-0.0100 mm per 10,000 km)");
        Assert.Equal(-0.01, rows.Estimate().DriftMm!.Value, 1e-12);
        Assert.Null(rows.Estimate().Drift);
    }

    [Fact]
    public void A_slope_that_may_be_none_has_a_reason_and_its_uncertainty()
    {
        var rows = new LobeRows().At(0).Found(0.20m, 0.21m).At(20_000).Found(0.21m, 0.22m).At(40_000).Found(0.20m, 0.21m);

        Refuses(rows, NoForecastReason.SlopeNotDistinguishable, "cannot be told from none with 3 readings");
        Assert.NotNull(rows.Estimate().Drift);
        Assert.NotNull(rows.Estimate().Present);
    }

    [Fact]
    public void A_limit_too_far_away_has_a_reason()
    {
        var rows = new LobeRows();
        for (var visit = 0; visit < 8; visit++)
        {
            rows.At(visit * 20_000).Found(0.250m - (visit * 0.003m), 0.251m - (visit * 0.003m));
        }

        Refuses(rows, NoForecastReason.NotWithinReach, "not within 200,000 km");
    }

    [Fact]
    public void A_change_since_the_last_reading_has_a_reason() => Refuses(
        new LobeRows().At(0).Found(0.20m, 0.21m).Happened(ValveEventKind.ScrewTurned),
        NoForecastReason.NotMeasuredSinceChange, "The screw was turned, and it was not measured since");

    [Fact]
    public void Open_readings_alone_have_a_reason() =>
        Refuses(new LobeRows().At(0).Found(null, 0.31m), NoForecastReason.OpenEnded, "open at one end");

    private static void Refuses(LobeRows rows, NoForecastReason reason, string words)
    {
        var estimate = rows.Estimate();

        Assert.Null(estimate.Reaches);
        Assert.Equal(reason, estimate.Reason);
        Assert.Contains(words, estimate.ReasonSentence, StringComparison.Ordinal);
    }

    private static LobeRows TwoLegs() => new LobeRows()
        .At(0).Found(0.25m, 0.26m)
        .At(20_000).Found(0.23m, 0.24m)
        .At(40_000).Found(0.21m, 0.22m).CameOut(null).WentIn(null).Left(0.24m, 0.25m)
        .At(60_000).Found(0.22m, 0.23m)
        .At(80_000).Found(0.20m, 0.21m)
        .At(100_000).Found(0.17m, 0.18m);
}
