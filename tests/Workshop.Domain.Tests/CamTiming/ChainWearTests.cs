using CsCheck;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.CamTiming;

/// <summary>How far a chain lasts, beside lines whose answer is known, least squares, and a simulated fleet.</summary>
public class ChainWearTests
{
    private const double Limit = 14;

    [Fact]
    public void A_line_without_error_reaches_its_limit_where_it_does()
    {
        // 4 mm when new and 0.8 mm in 10,000 km: 14 mm at 125,000 km.
        var forecast = Own(Life(x => 4 + (0.8 * x), 2, 4, 5.5, 7, 9)).Value;

        Assert.Equal(0.8, forecast.Slope, 0.005);
        Assert.Equal(4 + (0.8 * 9), forecast.Present, 0.02);
        Assert.InRange(Km(forecast.Even), 123_500, 126_500);
        Assert.True(forecast.Earliest < forecast.Even && forecast.Even < forecast.Latest);
    }

    /// <summary>With an error of reading that is told by many readings, the posterior is that of least squares.</summary>
    [Fact]
    public void Many_readings_give_the_line_and_the_limits_of_least_squares()
    {
        var random = new RandomSource(4711);
        var x = Enumerable.Range(1, 30).Select(i => i * 0.3).ToArray();
        var y = x.Select(at => 4 + (0.8 * at) + (0.2 * random.Normal(0, 1))).ToArray();
        var forecast = Own(Life([.. x.Zip(y, (at, mm) => (at, mm, mm))])).Value;
        var line = LinearRegression.Fit(x, y).Value;
        var reach = line.InverseOfMeanResponse(Limit, 0.8).Value;

        Assert.Equal(line.Slope.Value, forecast.Slope, 0.01);
        Assert.Equal(line.Slope.StandardError, forecast.SlopeDeviation, 0.1 * line.Slope.StandardError);
        Assert.Equal(reach.Estimate, Km(forecast.Even) / 10_000, 0.1);
        Assert.Equal(reach.Lower, Km(forecast.Earliest) / 10_000, 0.15);
        Assert.Equal(reach.Upper, Km(forecast.Latest) / 10_000, 0.25);
    }

    [Fact]
    public void A_tensioner_in_notches_is_read_as_between_two_of_them()
    {
        var notch = 1.5;
        var forecast = Own(Life([.. new[] { 1.0, 3, 5, 7, 9, 11 }.Select(x => (x, Floor(4 + (0.8 * x)), Floor(4 + (0.8 * x)) + notch))])).Value;

        Assert.InRange(forecast.Slope, 0.6, 1.0);
        Assert.InRange(Km(forecast.Even), 110_000, 145_000);
        Assert.True(forecast.SlopeDeviation > 0.01);

        double Floor(double mm) => Math.Floor(mm / notch) * notch;
    }

    [Fact]
    public void A_tensioner_at_its_stop_says_that_the_chain_is_at_least_so_long()
    {
        var open = Own(Life([(2, 5.6, 5.6), (6, 8.8, 8.8), (9, 11.2, 11.2)])).Value;
        var stopped = Own(Life([(2, 5.6, 5.6), (6, 8.8, 8.8), (9, 11.2, 11.2), (11, 18, double.PositiveInfinity)])).Value;

        Assert.True(stopped.BeyondNow > 0.9);
        Assert.True(stopped.Slope > open.Slope);
    }

    [Theory]
    [InlineData(0, "was not read yet")]
    [InlineData(1, "1 reading at 1 distance")]
    [InlineData(2, "2 readings at 2 distances")]
    public void Little_data_gives_a_reason_and_no_number(int readings, string words)
    {
        var forecast = Own(Life([.. Enumerable.Range(1, readings).Select(i => ((double)i, 4.0 + i, 4.0 + i))]));

        Assert.False(forecast.HasValue);
        Assert.Contains(words, forecast.WhyNot!.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_at_one_distance_tell_no_line()
    {
        var forecast = Own(Life([(3, 6, 6), (3, 6.2, 6.2), (3, 6.1, 6.1)]));

        Assert.Equal(NotComputableReason.NoSpreadInX, forecast.WhyNot!.Reason);
    }

    [Fact]
    public void A_chain_that_does_not_grow_has_no_end_within_reach()
    {
        var forecast = Own(Life(_ => 5, 2, 4, 6, 8, 10, 12, 14)).Value;

        Assert.Null(forecast.Even);
        Assert.True(forecast.BeyondNow < 0.001);
    }

    [Fact]
    public void A_new_chain_begins_anew_and_a_new_tensioner_on_a_new_level()
    {
        var life = new ChainLife(Guid.Empty, "chain",
        [
            Leg(0, false, (2, 5.6, 5.6), (6, 8.8, 8.8)), Leg(6, true, (6, 6, 6), (9, 8.4, 8.4)),
        ], true);

        var forecast = Own(life).Value;

        Assert.Equal(0.8, forecast.Slope, 0.1);
        Assert.Equal(8.4, forecast.Present, 0.3);
        Assert.InRange(Km(forecast.Even), 140_000, 180_000); // 8.4 mm at 90,000 km, 0.8 a 10,000: 160,000 km
    }

    /// <summary>Ordered, finite, and later where the limit is further: whatever was read.</summary>
    [Fact]
    public void Whatever_was_read_the_answer_is_ordered_and_finite() =>
        Gen.Select(Gen.Double[0.5, 20], Gen.Double[0, 15], Gen.Double[0, 3]).Array[1, 6].Sample(rows =>
        {
            var life = Life([.. rows.OrderBy(r => r.Item1).Select(r => (Math.Round(r.Item1, 2), r.Item2, r.Item2 + r.Item3))]);
            var forecast = Own(life);
            if (!forecast.HasValue)
            {
                return;
            }

            var f = forecast.Value;
            Assert.All(
                new[] { f.Present, f.PresentDeviation, f.Slope, f.SlopeDeviation, f.BeyondNow }.Concat(f.Fan.SelectMany(p => new[] { p.Low, p.Middle, p.High })),
                figure => Assert.True(double.IsFinite(figure)));
            Assert.All(f.Fan, p => Assert.True(p.Low <= p.Middle + 1e-9 && p.Middle <= p.High + 1e-9));
            Assert.True(f.Even is null || f.Earliest <= f.Even);
            Assert.True(f.Latest is null || f.Even <= f.Latest);
            var further = ChainWear.Forecast(life, WearMeasure.TensionerExtension, Limit + 5).Value;
            Assert.True(further.BeyondNow <= f.BeyondNow + 1e-3);
        }, iter: 30);

    [Fact]
    public void A_fleet_tells_of_a_chain_that_was_read_once()
    {
        var random = new RandomSource(815);
        var fleet = Enumerable.Range(0, 12).Select(i =>
        {
            var (level, slope) = (4 + (0.3 * random.Normal(0, 1)), 0.8 + (0.1 * random.Normal(0, 1)));
            return Life([.. new[] { 2.5, 5, 7.5, 10 }.Select(x => (x, level + (slope * x) + (0.2 * random.Normal(0, 1)))).Select(r => (r.x, r.Item2, r.Item2))]);
        }).ToList();

        var model = ChainWear.Fit(fleet, WearMeasure.TensionerExtension, TestContext.Current.CancellationToken).Value;
        var young = Life([(2.5, 6, 6)]);

        Assert.Equal(12, model.Chains);
        Assert.Equal(0.8, model.Slope, 0.1);
        Assert.False(Own(young).HasValue);
        var forecast = ChainWear.Forecast(young, WearMeasure.TensionerExtension, Limit, model).Value;
        Assert.Equal(WearBasis.EngineModel, forecast.Basis);
        Assert.InRange(Km(forecast.Even), 110_000, 140_000);
        Assert.False(ChainWear.Fit([.. fleet.Take(4)], WearMeasure.TensionerExtension, TestContext.Current.CancellationToken).HasValue);
    }

    private static Computed<ChainForecast> Own(ChainLife life) => ChainWear.Forecast(life, WearMeasure.TensionerExtension, Limit);

    private static ChainLife Life(Func<double, double> line, params double[] x) => Life([.. x.Select(at => (at, line(at), line(at)))]);

    private static ChainLife Life((double X, double Lower, double Upper)[] readings) => new(Guid.Empty, "chain", [Leg(0, false, readings)], true);

    private static WearLeg Leg(double origin, bool refitted, params (double X, double Lower, double Upper)[] readings) => new(
        At(origin), refitted, [.. readings.Select(r => new WearReading(At(r.X), r.Lower, r.Upper))]);

    private static Distance At(double x) => Distance.FromKilometres((decimal)(x * 10_000));

    private static double Km(Distance? distance) => (double)Assert.NotNull(distance).Kilometres;
}
