using System.Globalization;
using CsCheck;
using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Statistics;

public class AmountLawTests
{
    /// <summary>As many digits as are printed, less one and a half for the rounding of the last.</summary>
    private const double Rounding = 1.4;

    [Fact]
    public void The_normal_loss_function_is_the_published_one() => Assert.All(Rows("inventory/normal-losses.csv"), row =>
        DigitsOfAgreement.AtLeast(Number(row[2]) - Rounding, NormalLaw.StandardMissing(Number(row[0])), Number(row[1]), $"L({row[0]})"));

    [Fact]
    public void The_newsvendors_amount_and_cost_are_the_published_ones()
    {
        var rows = Rows("inventory/amounts.csv");
        Assert.Equal(8, rows.Count);
        Assert.All(rows, row =>
        {
            var (law, left, missing, digits) = (Law(row[1], Number(row[2]), Number(row[3])), Number(row[4]), Number(row[5]), Number(row[10]) - Rounding);
            var best = Newsvendor.Best(law, left, missing);
            DigitsOfAgreement.AtLeast(digits, best.Stock, Number(row[6]), $"{row[0]}, {row[1]}");
            if (row[7].Length > 0)
            {
                DigitsOfAgreement.AtLeast(digits, best.Cost, Number(row[7]), $"{row[0]}, its cost");
            }

            if (row[8].Length > 0)
            {
                DigitsOfAgreement.AtLeast(digits, Newsvendor.Cost(law, Number(row[8]), left, missing), Number(row[9]), $"{row[0]}, at {row[8]}");
            }
        });
    }

    /// <summary>The article Newsvendor model of Wikipedia rounds its three examples to 59, 39 and 45 pieces.</summary>
    [Theory]
    [InlineData("uniform", 50, 80, 59)]
    [InlineData("normal", 50, 20, 39)]
    [InlineData("log-normal", 3.912023005428146, 0.2, 45)]
    public void In_whole_pieces_the_newsvendors_amounts_are_those_of_the_article(string law, double first, double second, int pieces) =>
        Assert.Equal(pieces, Math.Round(Newsvendor.Best(Law(law, first, second), 5, 2).Stock));

    [Fact]
    public void Reorder_points_and_safety_stocks_are_the_published_ones() => Assert.All(Rows("inventory/reorder-points.csv"), row =>
    {
        var (first, second) = (Number(row[1]), Number(row[2]));
        DemandOverTime Demand() => DemandOverTime.Of(first, second * second, Number(row[3]), Number(row[4]));
        var computed = row[0] switch
        {
            "normal point" => Demand().NormalReorderPoint(Number(row[5])),
            "normal safety" => Demand().NormalSafetyStock(Number(row[5])),
            "log-normal mean" => new LogNormalLaw(first, second).Mean,
            "log-normal point" => new LogNormalLaw(first, second).Quantile(Number(row[5])),
            "log-normal safety" => new LogNormalLaw(first, second).Quantile(Number(row[5])) - new LogNormalLaw(first, second).Mean,
            _ => throw new ArgumentException(row[0]),
        };
        DigitsOfAgreement.AtLeast(Number(row[7]) - Rounding, computed, Number(row[6]), string.Join(' ', row));
    });

    [Fact]
    public void No_other_amount_costs_less_than_the_newsvendors() =>
        Gen.Select(AnyLaw, Gen.Double[0.1, 10], Gen.Double[0.1, 50], Gen.Double[0.01, 0.99]).Sample((law, left, missing, other) =>
        {
            var best = Newsvendor.Best(law, left, missing);
            return Newsvendor.Cost(law, law.Quantile(other), left, missing) >= best.Cost * (1 - 1e-9);
        });

    /// <summary>What is left less what is missing is the stock less the mean; the loss is the integral of the upper tail.</summary>
    [Fact]
    public void A_loss_function_falls_by_the_chance_of_running_out() =>
        Gen.Select(AnyLaw, Gen.Double[0.02, 0.98]).Sample((law, p) =>
        {
            var stock = law.Quantile(p);
            var step = 1e-5 * (law.Quantile(0.75) - law.Quantile(0.25));
            var slope = (law.ExpectedMissing(stock + step) - law.ExpectedMissing(stock - step)) / (2 * step);
            Assert.Equal(-(1 - p), slope, 1e-4);
            Assert.Equal(stock - law.Mean, law.ExpectedLeft(stock) - law.ExpectedMissing(stock), 6 - (int)Math.Log10(1 + law.Mean));
        });

    [Fact]
    public void What_is_no_law_of_amounts_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new NormalLaw(1, 0));
        Assert.Throws<ArgumentException>(() => new NormalLaw(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LogNormalLaw(1, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new UniformLaw(2, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => new UniformLaw(1, 2).Quantile(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => DemandOverTime.Of(1, -1, 3));
    }

    private static Gen<AmountLaw> AnyLaw => Gen.OneOf(
        Gen.Select(Gen.Double[1, 1000], Gen.Double[0.1, 100]).Select((m, s) => (AmountLaw)new NormalLaw(m, s)),
        Gen.Select(Gen.Double[-1, 5], Gen.Double[0.05, 1]).Select((m, s) => (AmountLaw)new LogNormalLaw(m, s)),
        Gen.Select(Gen.Double[0, 50], Gen.Double[0.1, 50]).Select((a, w) => (AmountLaw)new UniformLaw(a, a + w)));

    private static AmountLaw Law(string name, double first, double second) => name switch
    {
        "normal" => new NormalLaw(first, second),
        "log-normal" => new LogNormalLaw(first, second),
        "uniform" => new UniformLaw(first, second),
        _ => throw new ArgumentException(name, nameof(name)),
    };

    private static List<string[]> Rows(string file) =>
        [.. CheckValues.Lines(file).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','))];

    private static double Number(string text) => text.Length == 0 ? 0 : double.Parse(text, CultureInfo.InvariantCulture);
}
