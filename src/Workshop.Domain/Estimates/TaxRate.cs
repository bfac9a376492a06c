using NodaTime;

namespace Workshop.Domain.Estimates;

/// <summary>A tax rate of the workshop's country, from a day on; the latest by day holds.</summary>
public sealed class TaxRate
{
    public required string Code { get; init; }

    public required LocalDate ValidFrom { get; init; }

    public required string Name { get; set; }

    /// <summary>0 to 100.</summary>
    public required decimal Percent { get; set; }
}

/// <summary>The tax rates of one day.</summary>
public sealed class TaxTable
{
    private readonly Dictionary<string, TaxRate> byCode;

    private TaxTable(Dictionary<string, TaxRate> byCode) => this.byCode = byCode;

    /// <summary>By code.</summary>
    public IReadOnlyList<TaxRate> Rates => [.. byCode.Values.OrderBy(r => r.Code, StringComparer.Ordinal)];

    /// <summary>Of each code the rate that holds on <paramref name="day"/>; a code whose first day is later is left out.</summary>
    public static TaxTable On(LocalDate day, IEnumerable<TaxRate> rates)
    {
        ArgumentNullException.ThrowIfNull(rates);
        return new TaxTable(rates.Where(r => r.ValidFrom <= day)
            .GroupBy(r => r.Code, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.MaxBy(r => r.ValidFrom)!, StringComparer.Ordinal));
    }

    /// <summary>Nothing where no rate of that code holds.</summary>
    public TaxRate? Find(string? code) => code is null ? null : byCode.GetValueOrDefault(code);
}
