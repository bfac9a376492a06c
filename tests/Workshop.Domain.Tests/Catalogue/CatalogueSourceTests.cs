namespace Workshop.Domain.Tests.Catalogue;

public class CatalogueSourceTests
{
    [Fact]
    public void Every_row_of_every_table_names_its_source()
    {
        var files = Directory.GetFiles(CatalogueFiles.Folder, "*.csv").Select(path => Path.GetFileName(path)).Order().ToList();

        Assert.Equal(["o-rings-metric.csv", "o-rings.csv", "oil-grades.csv", "sealing-rings.csv", "shim-series.csv"], files);
        Assert.All(files.Select(CatalogueFiles.Read), table =>
        {
            Assert.NotEmpty(table.Rows);
            Assert.All(table.Rows, row => Assert.True(row["source"].Length > 10, $"{row.Place} has no source"));
        });
    }
}
