using NodaTime;

namespace Workshop.Web.Data.Seeding;

/// <summary>Invented prices, tax rates, and one finding, as the seed file holds them.</summary>
/// <param name="About">Says that it is invented, to whoever opens the file.</param>
internal sealed record DemoPrices(
    string About, string Currency, decimal LabourNetPerHour, string UsualTax, IReadOnlyList<DemoTaxRate> TaxRates, IReadOnlyList<DemoPartPrice> Parts,
    DemoFinding Finding);

internal sealed record DemoTaxRate(string Code, LocalDate ValidFrom, string Name, decimal Percent);

/// <param name="Price">Of one piece or litre, before tax.</param>
internal sealed record DemoPartPrice(string Code, decimal Price, string? Tax = null);

internal sealed record DemoFinding(string Place, string Text, string Work, int Minutes, string Parts, decimal Price, string Caption);
