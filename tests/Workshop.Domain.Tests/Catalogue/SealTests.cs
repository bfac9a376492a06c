using System.Globalization;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Catalogue;

public class SealTests
{
    private static readonly CsvTable Rings = CatalogueFiles.Read("sealing-rings.csv");
    private static readonly CsvTable ORings = CatalogueFiles.Read("o-rings.csv");

    /// <summary>DIN 7603 form A, sizes d1 x d2 x s from memory.</summary>
    [Fact]
    public void Every_remembered_ring_size_is_in_the_catalogue()
    {
        var sizes = Rings.Rows.Select(Size).ToList();
        var remembered = CsvTable.Read("din 7603", CheckValues.Lines("seals/din-7603-nominal-sizes.csv")).Rows
            .Select(row => row["size"].Split('x').Select(part => decimal.Parse(part, CultureInfo.InvariantCulture)).ToArray())
            .Select(part => (part[0], part[1], part[2]))
            .ToList();

        Assert.Equal(14, remembered.Count);
        Assert.Empty(remembered.Except(sizes));
    }

    /// <summary>A public table of copper rings to DIN 7603 gives the hole itself, nominal size + 0.2 mm.</summary>
    [Fact]
    public void Every_listed_copper_ring_is_in_the_catalogue_and_only_those_count_as_seen()
    {
        var listed = CsvTable.Read("copper rings", CheckValues.Lines("seals/din-7603-listed-copper-rings.csv")).Rows
            .Select(row => (row.Number("inner_mm") - 0.2m, row.Number("outer_mm"), row.Number("thickness_mm")))
            .ToList();

        Assert.Equal(8, listed.Count);
        Assert.Equal(
            listed.Order(),
            Rings.Rows.Where(row => row["source"].Contains("seen in", StringComparison.Ordinal)).Select(Size).Order());
    }

    [Fact]
    public void A_ring_is_wider_outside_than_inside_and_named_by_its_sizes() =>
        Assert.All(Rings.Rows, row =>
        {
            var (inner, outer, thickness) = Size(row);
            Assert.True(inner > 0 && outer > inner && thickness > 0 && thickness < (outer - inner) / 2, row.Place);
            Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"{inner}x{outer}"), row["nominal"]);
        });

    /// <summary>SAE AS568 / ISO 3601-1; every row here, every figure.</summary>
    [Fact]
    public void O_rings_are_those_of_the_size_table()
    {
        var table = CsvTable.Read("as568", CheckValues.Lines("seals/as568.csv")).Rows;

        Assert.Equal(table.Select(row => $"AS568-{row["dash"]}"), ORings.Rows.Select(row => row["code"]));
        Assert.All(table.Zip(ORings.Rows), pair =>
        {
            foreach (var column in ORings.Columns.Except(["code", "source"]))
            {
                Assert.Equal(pair.First.Number(column), pair.Second.Number(column));
            }
        });
    }

    /// <summary>1 in = 25.4 mm exactly; the table prints two decimals, a half rounded up (1.475 in = 37.465 mm = 37.47).</summary>
    [Fact]
    public void Inches_times_25_4_round_to_the_millimetres_beside_them() =>
        Assert.All(ORings.Rows, row =>
        {
            Assert.Equal(row.Number("inner_mm"), Rounding.HalfUp(row.Number("inner_in") * 25.4m, 2));
            Assert.Equal(row.Number("section_mm"), Rounding.HalfUp(row.Number("section_in") * 25.4m, 2));
        });

    /// <summary>
    /// The inch-derived series of sections of ISO 3601-1: 1.78, 2.62, 3.53, 5.33, 6.99 mm for dashes 0xx to 4xx.
    /// </summary>
    [Fact]
    public void The_first_figure_of_a_dash_number_is_its_section() =>
        Assert.All(ORings.Rows, row =>
        {
            decimal[] sections = [1.78m, 2.62m, 3.53m, 5.33m, 6.99m];
            Assert.Equal(sections[row["code"]["AS568-".Length] - '0'], row.Number("section_mm"));
        });

    /// <summary>No row of these was seen in a standard, and each says so.</summary>
    [Fact]
    public void Metric_o_rings_are_named_by_their_sizes_and_say_that_nobody_compared_them() =>
        Assert.All(CatalogueFiles.Read("o-rings-metric.csv").Rows, row =>
        {
            var (inner, section) = (row.Number("inner_mm"), row.Number("section_mm"));
            Assert.True(inner > 2 * section && section > 1, row.Place);
            Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"{inner}x{section}"), row["nominal"]);
            Assert.Matches("no source|not verified", row["source"]);
        });

    private static (decimal Inner, decimal Outer, decimal Thickness) Size(CsvRow row) =>
        (row.Number("inner_mm"), row.Number("outer_mm"), row.Number("thickness_mm"));
}
