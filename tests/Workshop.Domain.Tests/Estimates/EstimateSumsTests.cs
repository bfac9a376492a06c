using CsCheck;
using Workshop.Domain.Estimates;

namespace Workshop.Domain.Tests.Estimates;

/// <summary>The arithmetic of tax, against documents published with the core invoice model EN 16931-1.</summary>
public class EstimateSumsTests
{
    private static readonly Gen<PricedQuantity> AnyLine = Gen.Select(
        Gen.Int[-5_000, 50_000], Gen.Enum<EstimateUnit>(), Gen.Int[0, 2_000_000], Gen.OneOf(Gen.Const("standard"), Gen.Const("reduced"), Gen.Const("none")), Gen.Int[0, 3],
        (quantity, unit, price, code, rate) => new PricedQuantity(quantity / 10m, unit, price / 10_000m, price / 20_000m, code, new[] { 0m, 6m, 19.6m, 25m }[rate]));

    /// <summary>
    /// EN 16931 validation artefacts of the European Commission, examples 1 and 2 (figures seen, digits as printed): net amount of each
    /// line, taxable amount and tax of each rate, totals. In the second 25 % of 1460.50 is 365.125, and is printed as 365.13.
    /// </summary>
    [Theory]
    [InlineData("1")]
    [InlineData("2")]
    public void Published_invoices_come_to_what_they_print(string example)
    {
        var rows = CsvTable.Read("en16931-lines", CheckValues.Lines("money/en16931-lines.csv")).Rows.Where(r => r["example"] == example).ToList();
        var lines = rows.ConvertAll(r => new PricedQuantity(r.Number("quantity"), EstimateUnit.Piece, r.Number("price"), null, "S", r.Number("percent")));
        Assert.All(rows.Zip(lines), pair => Assert.Equal(pair.First.Number("net"), pair.Second.Net));

        var sums = EstimateSums.Of(lines);
        var printed = CsvTable.Read("en16931-totals", CheckValues.Lines("money/en16931-totals.csv")).Rows.Where(r => r["example"] == example).ToList();
        foreach (var row in printed.Where(r => r["percent"] != "all"))
        {
            var rate = Assert.Single(sums.Rates, r => r.Percent == row.Number("percent"));
            Assert.Equal((row.Number("taxable"), row.Number("tax")), (rate.Net, rate.Tax));
        }

        var all = Assert.Single(printed, r => r["percent"] == "all");
        Assert.Equal((all.Number("taxable"), all.Number("tax")), (sums.Net, sums.Tax));
        Assert.Equal(all.Number("taxable") + all.Number("tax"), sums.Gross);
        Assert.Equal(printed.Count - 1, sums.Rates.Count);
    }

    [Fact]
    public void Hours_and_litres_are_priced_by_the_hour_and_the_litre()
    {
        // 100 minutes at 93 an hour: 155; 3.6 litres at 12.55: 45.18. Exact arithmetic.
        Assert.Equal(155.00m, new PricedQuantity(100, EstimateUnit.Minute, 93, null, "S", 20).Net);
        Assert.Equal(45.18m, new PricedQuantity(3600, EstimateUnit.Millilitre, 12.55m, null, "S", 20).Net);
    }

    [Theory]
    [InlineData("0.005", "0.01")]
    [InlineData("-0.005", "-0.01")]
    [InlineData("2.675", "2.68")]
    [InlineData("2.674999", "2.67")]
    public void Half_a_cent_goes_away_from_zero(string exact, string rounded) =>
        Assert.Equal(decimal.Parse(rounded, null), Money.Round(decimal.Parse(exact, null)));

    [Fact]
    public void Net_is_the_sum_of_the_lines_and_gross_is_net_and_tax() => AnyLine.List[0, 30].Sample(lines =>
    {
        var sums = EstimateSums.Of(lines);

        Assert.Equal(lines.Sum(l => l.Net), sums.Net);
        Assert.Equal(sums.Net + sums.Tax, sums.Gross);
        Assert.Equal(sums.Net, sums.Rates.Sum(r => r.Net));
        Assert.All(sums.Rates, r => Assert.True(Math.Abs(r.Tax - (r.Net * r.Percent / 100)) <= 0.005m));
        Assert.All(lines, l => Assert.Equal(l.Net, decimal.Round(l.Net, Money.Decimals)));
    });

    [Fact]
    public void The_order_of_lines_leaves_no_trace() => Gen.Select(AnyLine.List[0, 20], Gen.Int[0, 1000]).Sample((lines, seed) =>
    {
        var shuffled = lines.OrderBy(l => HashCode.Combine(seed, l.Quantity, l.UnitPrice)).ToList();

        Assert.Equivalent(EstimateSums.Of(lines), EstimateSums.Of(shuffled), strict: true);
    });

    [Fact]
    public void A_margin_counts_only_what_a_cost_is_known_of() => AnyLine.List[0, 20].Sample(lines =>
    {
        var known = lines.Select((l, i) => i % 3 == 0 ? l with { UnitCost = null } : l).ToList();
        var margin = EstimateMargin.Of(known);

        Assert.Equal(known.Count(l => l.UnitCost is null), margin.LinesWithoutCost);
        Assert.Equal(known.Where(l => l.UnitCost is not null).Sum(l => l.Net), margin.Cost + margin.Margin);
    });

    /// <summary>ISO 4217: the codes whose minor unit is the hundredth, and no others.</summary>
    [Fact]
    public void Currencies_are_those_of_ISO_4217_that_are_counted_in_hundredths()
    {
        var rows = CsvTable.Read("iso-4217", CheckValues.Lines("money/iso-4217.csv")).Rows;

        Assert.Equal(rows.Where(r => r.Number("minor_digits") == 2).Select(r => r["code"]), Currencies.All);
        Assert.All(rows.Where(r => r.Number("minor_digits") != 2), r => Assert.False(Currencies.IsKnown(r["code"])));
        Assert.False(Currencies.IsKnown("eur"));
        Assert.False(Currencies.IsKnown(null));
    }
}
