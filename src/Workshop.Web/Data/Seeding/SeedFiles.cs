using System.Globalization;
using System.Text.Json;
using CsvHelper;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Web.Http;

namespace Workshop.Web.Data.Seeding;

/// <summary>The files below seed/, which the service carries in itself.</summary>
internal static class SeedFiles
{
    private const string EngineModelFolder = "seed/demo/engine-models/";

    public static DemoWorkshop Workshop() => Document<DemoWorkshop>("seed/demo/workshop.json");

    public static DemoSupplies Suppliers() => Document<DemoSupplies>("seed/demo/suppliers.json");

    public static DemoPrices Prices() => Document<DemoPrices>("seed/demo/prices.json");

    public static DemoFleet Fleet() => Document<DemoFleet>("seed/demo/fleet.json");

    public static IReadOnlyList<SeedEngineModel> EngineModels() =>
    [
        .. typeof(SeedFiles).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(EngineModelFolder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(EngineModel),
    ];

    /// <summary>Inner and outer diameter and thickness of sealing rings, by nominal size.</summary>
    public static IReadOnlyDictionary<string, RingSize> SealingRings() => Table("seed/catalogue/sealing-rings.csv", row =>
        (row.GetField("nominal")!, new RingSize(
            Number(row, "inner_mm"), Number(row, "outer_mm"), Number(row, "thickness_mm"), row.GetField("source")!)));

    /// <summary>Inner diameter and section of O-rings, by their AS568 number, with the tolerances of that table.</summary>
    public static IReadOnlyDictionary<string, RingSize> ORings() => Table("seed/catalogue/o-rings.csv", row =>
        (row.GetField("code")!, ORing(row) with
        {
            InnerToleranceMm = InMillimetres(Number(row, "inner_tolerance_in")), SectionToleranceMm = InMillimetres(Number(row, "section_tolerance_in")),
        }));

    /// <summary>Inner diameter and section of O-rings of metric series, by nominal size.</summary>
    public static IReadOnlyDictionary<string, RingSize> MetricORings() =>
        Table("seed/catalogue/o-rings-metric.csv", row => (row.GetField("nominal")!, ORing(row)));

    /// <summary>The sizes of shim series, by code.</summary>
    public static IReadOnlyDictionary<string, CatalogueSeries> ShimSeries() => Table("seed/catalogue/shim-series.csv", row =>
        (row.GetField("code")!, new CatalogueSeries(
            Enum.Parse<ValveTrainKind>(row.GetField("used_as")!), Number(row, "diameter_mm"), Number(row, "smallest_mm"),
            Number(row, "largest_mm"), Number(row, "step_mm"), row.GetField("source")!)));

    /// <summary>A seed file may be wrong only while somebody edits it: then it is not loaded, and the message says where.</summary>
    private static SeedEngineModel EngineModel(string name)
    {
        var model = Document<SeedEngineModel>(name);
        var findings = SpecificationCheck.Of(model.Specification);
        return findings.Faults.Count == 0
            ? model
            : throw new InvalidDataException($"{name}: {string.Join(" ", findings.Faults.Select(f => f.Sentence))}");
    }

    private static T Document<T>(string name)
    {
        using var stream = Open(name);
        return JsonSerializer.Deserialize<T>(stream, WorkshopJson.Documents)!;
    }

    private static Dictionary<string, T> Table<T>(string name, Func<IReaderRow, (string Key, T Value)> read)
    {
        using var text = new StreamReader(Open(name));
        using var csv = new CsvReader(text, CultureInfo.InvariantCulture);
        csv.Read();
        csv.ReadHeader();
        var rows = new Dictionary<string, T>(StringComparer.Ordinal);
        while (csv.Read())
        {
            var (key, value) = read(csv);
            rows.Add(key, value);
        }

        return rows;
    }

    private static RingSize ORing(IReaderRow row)
    {
        var (inner, section) = (Number(row, "inner_mm"), Number(row, "section_mm"));
        return new RingSize(inner, inner + (2 * section), section, row.GetField("source")!);
    }

    private static decimal InMillimetres(decimal inches) => Math.Round(inches * 25.4m, 3);

    private static decimal Number(IReaderRow row, string column) => row.GetField<decimal>(column);

    private static Stream Open(string name) => typeof(SeedFiles).Assembly.GetManifestResourceStream(name)
        ?? throw new FileNotFoundException($"The service was built without {name}.");
}

/// <param name="InnerToleranceMm">Absent where the catalogue has none.</param>
internal sealed record RingSize(
    decimal InnerMm, decimal OuterMm, decimal SectionMm, string Source, decimal? InnerToleranceMm = null, decimal? SectionToleranceMm = null);

/// <summary>A row of the catalogue of shim series.</summary>
internal sealed record CatalogueSeries(
    ValveTrainKind Seat, decimal DiameterMm, decimal SmallestMm, decimal LargestMm, decimal StepMm, string Source)
{
    /// <summary>The series as one part of the stores has it, in its box.</summary>
    public ShimSeries Of(Guid part, Guid place, int columns) => new()
    {
        PartId = part, Seat = Seat, DiameterMm = DiameterMm, Smallest = ShimThickness.FromMillimetres(SmallestMm),
        Largest = ShimThickness.FromMillimetres(LargestMm), StepMm = StepMm, PlaceId = place, Columns = columns, Source = Source,
    };
}
