namespace Workshop.Domain.Tests.Catalogue;

/// <summary>The tables of standard sizes that the service loads, as the tests read them.</summary>
internal static class CatalogueFiles
{
    public static string Folder { get; } = Path.Combine(CheckValues.RepositoryRoot, "seed", "catalogue");

    public static CsvTable Read(string file) => CsvTable.Read(file, File.ReadLines(Path.Combine(Folder, file)));
}
