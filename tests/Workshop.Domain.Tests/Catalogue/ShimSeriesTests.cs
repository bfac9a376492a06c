using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Catalogue;

public class ShimSeriesTests
{
    private static readonly CsvTable Series = CatalogueFiles.Read("shim-series.csv");

    [Fact]
    public void Series_come_in_the_steps_that_shims_are_sold_in() =>
        Assert.Equal(
            [0.01m, 0.02m, 0.025m, 0.04m, 0.05m],
            Series.Rows.Select(row => row.Number("step_mm")).Distinct().Order());

    [Fact]
    public void Every_thickness_of_a_series_is_one_that_a_shim_may_have() =>
        Assert.All(Series.Rows, row =>
        {
            var (smallest, largest, step) = (row.Number("smallest_mm"), row.Number("largest_mm"), row.Number("step_mm"));
            Assert.True(largest > smallest && (largest - smallest) % step == 0, row.Place);
            for (var thickness = smallest; thickness <= largest; thickness += step)
            {
                Assert.Equal(thickness, ShimThickness.FromMillimetres(thickness).Millimetres);
            }
        });

    [Fact]
    public void Codes_tell_the_series_apart_and_each_suits_a_valve_train()
    {
        Assert.Equal(Series.Rows.Count, Series.Rows.Select(row => row["code"]).Distinct().Count());
        Assert.All(Series.Rows, row =>
        {
            Assert.True(Enum.TryParse<ValveTrainKind>(row["used_as"], out var kind), row.Place);
            Assert.StartsWith("Shim", kind.ToString());
            Assert.InRange(row.Number("diameter_mm"), 5, 40);
        });
    }
}
