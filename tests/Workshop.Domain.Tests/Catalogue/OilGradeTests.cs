namespace Workshop.Domain.Tests.Catalogue;

public class OilGradeTests
{
    private static readonly CsvTable Grades = CatalogueFiles.Read("oil-grades.csv");

    /// <summary>SAE J300:2015-01; every row, every figure.</summary>
    [Fact]
    public void Grades_are_those_of_the_standard()
    {
        var standard = CsvTable.Read("j300", CheckValues.Lines("oils/sae-j300.csv")).Rows;
        (string Catalogue, string Standard)[] columns =
        [
            ("cranking_max_mpa_s", "ccs_max"), ("cranking_at_c", "ccs_c"), ("pumping_max_mpa_s", "mrv_max"),
            ("pumping_at_c", "mrv_c"), ("kv100_min_mm2_s", "kv100_min"), ("kv100_below_mm2_s", "kv100_below"),
            ("hths150_min_mpa_s", "hths_min"),
        ];

        Assert.Equal(
            standard.Select(row => (row["grade"], row["cold_with"])),
            Grades.Rows.Select(row => (row["grade"], row["applies_with"])));
        Assert.All(standard.Zip(Grades.Rows), pair => Assert.All(columns, column =>
            Assert.Equal(pair.First.NumberOrNone(column.Standard), pair.Second.NumberOrNone(column.Catalogue))));
    }

    [Fact]
    public void Ranges_of_hot_viscosity_are_ordered_and_from_20_on_join_without_a_gap()
    {
        var ranges = Hot()
            .Select(row => (Grade: int.Parse(row["grade"]), From: row.Number("kv100_min_mm2_s"), Below: row.Number("kv100_below_mm2_s")))
            .Distinct()
            .ToList();

        Assert.Equal([8, 12, 16, 20, 30, 40, 50, 60], ranges.Select(range => range.Grade));
        Assert.All(ranges, range => Assert.True(range.From < range.Below));
        Assert.All(ranges.Zip(ranges.Skip(1)), pair =>
        {
            Assert.True(pair.First.From < pair.Second.From && pair.First.Below < pair.Second.Below);
            Assert.True(pair.Second.From <= pair.First.Below, "neighbours leave a gap");
            Assert.True(pair.First.Grade < 20 || pair.First.Below == pair.Second.From, "neighbours overlap");
        });
    }

    [Fact]
    public void A_heavier_hot_grade_never_asks_for_less_at_high_shear()
    {
        var hot = Hot().Select(row => row.Number("hths150_min_mpa_s")).ToList();

        Assert.Equal(hot.Order(), hot);
    }

    [Fact]
    public void Cold_grades_are_cranked_5_degrees_above_where_they_must_pump_and_warmer_by_5_from_grade_to_grade()
    {
        var cold = Grades.Rows.Where(row => row["grade"].EndsWith('W')).ToList();

        Assert.Equal(["0W", "5W", "10W", "15W", "20W", "25W"], cold.Select(row => row["grade"]));
        Assert.All(cold, row => Assert.Equal(row.Number("pumping_at_c") + 5, row.Number("cranking_at_c")));
        Assert.All(cold.Zip(cold.Skip(1)), pair =>
            Assert.Equal(pair.First.Number("cranking_at_c") + 5, pair.Second.Number("cranking_at_c")));
        Assert.All(cold, row => Assert.Null(row.NumberOrNone("hths150_min_mpa_s")));
    }

    private static IEnumerable<CsvRow> Hot() => Grades.Rows.Where(row => !row["grade"].EndsWith('W'));
}
