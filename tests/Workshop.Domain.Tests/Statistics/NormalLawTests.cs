using System.Globalization;
using CsCheck;
using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Statistics;

public class NormalLawTests
{
    /// <summary>As many digits as are printed, less one and a half for the rounding of the last.</summary>
    private const double Rounding = 1.4;

    [Fact]
    public void The_normal_loss_function_is_the_published_one() => Assert.All(Rows("inventory/normal-losses.csv"), row =>
        DigitsOfAgreement.AtLeast(Number(row[2]) - Rounding, NormalLaw.StandardMissing(Number(row[0])), Number(row[1]), $"L({row[0]})"));

    /// <summary>The newsvendor's amount is the quantile at its service level; its cost is (left + missing) n(S) + left (S - mean).</summary>
    [Fact]
    public void The_newsvendors_amount_and_cost_are_the_published_ones()
    {
        var rows = Rows("inventory/amounts.csv").FindAll(r => r[1] == "normal");
        Assert.NotEmpty(rows);
        Assert.All(rows, row =>
        {
            var (law, left, missing, digits) = (new NormalLaw(Number(row[2]), Number(row[3])), Number(row[4]), Number(row[5]), Number(row[10]) - Rounding);
            double Cost(double stock) => (left * (stock - law.Mean)) + ((left + missing) * law.ExpectedMissing(stock));
            var stock = law.Quantile(Newsvendor.ServiceLevel(left, missing));
            DigitsOfAgreement.AtLeast(digits, stock, Number(row[6]), row[0]);
            if (row[7].Length > 0)
            {
                DigitsOfAgreement.AtLeast(digits, Cost(stock), Number(row[7]), $"{row[0]}, its cost");
            }

            if (row[8].Length > 0)
            {
                DigitsOfAgreement.AtLeast(digits, Cost(Number(row[8])), Number(row[9]), $"{row[0]}, at {row[8]}");
            }
        });
    }

    [Fact]
    public void Reorder_points_are_the_published_ones() => Assert.All(Rows("inventory/reorder-points.csv").FindAll(r => r[0].StartsWith("normal", StringComparison.Ordinal)), row =>
    {
        var (first, second) = (Number(row[1]), Number(row[2]));
        var demand = DemandOverTime.Of(first, second * second, Number(row[3]), Number(row[4]));
        DigitsOfAgreement.AtLeast(
            Number(row[7]) - Rounding, demand.NormalReorderPoint(Number(row[5])) - (row[0] == "normal safety" ? demand.Mean : 0), Number(row[6]), string.Join(' ', row));
    });

    /// <summary>The loss is the integral of the upper tail.</summary>
    [Fact]
    public void A_loss_function_falls_by_the_chance_of_running_out() =>
        Gen.Select(Gen.Double[1, 1000], Gen.Double[0.1, 100], Gen.Double[0.02, 0.98]).Sample((mean, deviation, p) =>
        {
            var law = new NormalLaw(mean, deviation);
            var (stock, step) = (law.Quantile(p), 1e-5 * deviation);
            Assert.Equal(-(1 - p), (law.ExpectedMissing(stock + step) - law.ExpectedMissing(stock - step)) / (2 * step), 1e-4);
        });

    [Fact]
    public void What_is_no_law_of_amounts_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new NormalLaw(1, 0));
        Assert.Throws<ArgumentException>(() => new NormalLaw(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => DemandOverTime.Of(1, -1, 3));
    }

    private static List<string[]> Rows(string file) =>
        [.. CheckValues.Lines(file).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','))];

    private static double Number(string text) => text.Length == 0 ? 0 : double.Parse(text, CultureInfo.InvariantCulture);
}
