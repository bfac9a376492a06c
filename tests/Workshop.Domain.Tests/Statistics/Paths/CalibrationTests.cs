using Workshop.Benchmarks.Calibration;

namespace Workshop.Domain.Tests.Statistics.Paths;

/// <summary>
/// A small sample of the calibration study, whose figures stand in tests/Workshop.Benchmarks/Reports: seeded fleets, so that the
/// bounds, about three standard errors wide, hold or fail on every machine alike.
/// </summary>
public class CalibrationTests
{
    /// <summary>Engines with 1, 2, 3 and 5 checks 20,000 to 40,000 km apart in one fleet of 800 valves.</summary>
    [Theory]
    [InlineData(0.01, true)]
    [InlineData(0.05, true)]
    [InlineData(0.01, false)]
    [InlineData(0.05, false)]
    public void Intervals_hold_what_they_say_and_forecasts_are_as_good_as_they_can_be(double step, bool knownShims)
    {
        var scenario = new FleetScenario([1, 2, 3, 5], step, 0.008, knownShims, 0);
        var figures = CalibrationStudy.Run(scenario, 1, 800);

        Assert.Equal([1, 2, 3, 5], figures.Keys);
        Assert.All(figures.Values, f => Assert.Equal((200, 0), (f.Valves, f.Failures)));
        Assert.InRange(figures.Values.Average(f => f.SlopeCoverage), 0.86, 0.94);
        Assert.InRange(figures.Values.Average(f => f.ClearanceCoverage), 0.86, 0.94);
        Assert.All(figures.Values, f => Assert.True(f.ModelError < 1.05 * f.OracleError, $"{f.ModelError} beside {f.OracleError}"));
        Assert.All(figures.Values, f => Assert.True(f.LineLessModel.Mean > -2 * f.LineLessModel.Error, $"{f.LineLessModel}"));
    }

    /// <summary>
    /// Where every engine has had one check only, how steep the mean slope is is hardly known: without what the fit leaves open
    /// less than half of the intervals would hold.
    /// </summary>
    [Fact]
    public void Fleets_checked_once_know_how_little_they_know()
    {
        var figures = CalibrationStudy.Run(new FleetScenario([1], 0.01, 0.004, true, 0), 8, 160)[1];

        Assert.Equal(0, figures.Failures);
        Assert.InRange(figures.SlopeCoverage, 0.82, 0.96);
        Assert.InRange(figures.ClearanceCoverage, 0.82, 0.96);
        Assert.True(figures.LineLessModel.Mean > 2 * figures.LineLessModel.Error, $"{figures.LineLessModel}");
    }

    [Fact]
    public void A_visit_effect_that_no_model_knows_of_costs_coverage_and_little_else()
    {
        var without = CalibrationStudy.Run(new FleetScenario([3], 0.01, 0.008, true, 0), 1, 400)[3];
        var with = CalibrationStudy.Run(new FleetScenario([3], 0.01, 0.008, true, 0.004), 1, 400)[3];

        Assert.True(with.ClearanceCoverage < without.ClearanceCoverage);
        Assert.True(with.ClearanceCoverage > 0.8, $"{with.ClearanceCoverage:P1}");
        Assert.True(with.ModelError < 1.25 * without.ModelError, $"{with.ModelError} beside {without.ModelError}");
    }
}
