using System.Globalization;
using CsCheck;
using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Statistics;

public class CountLawTests
{
    [Fact]
    public void Levels_are_those_of_R()
    {
        var rows = Rows("inventory/levels.csv");
        Assert.Equal(27, rows.Count);
        Assert.All(rows, row => Assert.Equal(
            int.Parse(row[4], CultureInfo.InvariantCulture), Law(row[0], row[1], row[2]).SmallestCovering(Number(row[3]))));
    }

    [Fact]
    public void Losses_are_the_published_ones() => Assert.All(Rows("inventory/losses.csv"), row =>
    {
        var (law, stock) = (Law(row[0], row[1], row[2]), int.Parse(row[3], CultureInfo.InvariantCulture));
        DigitsOfAgreement.AtLeast(
            double.Parse(row[6], CultureInfo.InvariantCulture) - 1.4, row[4] == "left" ? law.ExpectedLeft(stock) : law.ExpectedMissing(stock), Number(row[5]),
            string.Join(' ', row));
    });

    [Fact]
    public void The_newsvendors_stock_and_cost_are_the_published_ones() => Assert.All(Rows("inventory/newsvendor.csv"), row =>
    {
        var law = Named(row[1]);
        var (left, missing) = (Number(row[2]), Number(row[3]));
        double Cost(int stock) => (left * law.ExpectedLeft(stock)) + (missing * law.ExpectedMissing(stock));
        var best = law.SmallestCovering(Newsvendor.ServiceLevel(left, missing));
        Assert.Equal(int.Parse(row[4], CultureInfo.InvariantCulture), best);
        DigitsOfAgreement.AtLeast(11, Cost(best), Number(row[5]), row[0]);
        if (row[6].Length > 0)
        {
            DigitsOfAgreement.AtLeast(
                11, Cost(int.Parse(row[6], CultureInfo.InvariantCulture)), Number(row[7]), row[0]);
        }
    });

    /// <summary>R 4.2.2: <c>pnbinom(0:5, 2, 0.5)</c>; exact fractions.</summary>
    [Fact]
    public void The_negative_binomial_adds_up_as_in_R()
    {
        double[] expected = [0.25, 0.5, 0.6875, 0.8125, 0.890625, 0.9375];
        var law = new NegativeBinomialLaw(2, 0.5);

        Assert.Equal((2, 4), (law.Mean, law.Variance));
        Assert.All(expected.Index(), e => DigitsOfAgreement.AtLeast(12, law.Cumulative(e.Index), e.Item, $"F({e.Index})"));
    }

    [Fact]
    public void A_law_made_from_its_moments_has_them() => Gen.Select(Gen.Double[0.01, 40], Gen.Double[0.2, 6]).Sample((mean, spread) =>
    {
        var law = CountLaw.WithMoments(mean, mean * spread);
        var counts = Enumerable.Range(0, 4_000).Select(k => (K: k, P: law.Probability(k))).ToList();
        var variance = spread > 1 ? mean * spread : mean;
        Assert.Equal(spread > 1, law is NegativeBinomialLaw);
        Assert.Equal(1, counts.Sum(c => c.P), 9);
        Assert.Equal(mean, counts.Sum(c => c.K * c.P), 7);
        Assert.Equal(variance, counts.Sum(c => (c.K - mean) * (c.K - mean) * c.P), 6);
    }, iter: 100);

    [Fact]
    public void The_newsvendors_stock_is_never_beaten_by_another() =>
        Gen.Select(Gen.Double[0.1, 20], Gen.Double[0.5, 4], Gen.Double[0.1, 10], Gen.Double[0.1, 50]).Sample((mean, spread, left, missing) =>
        {
            var law = CountLaw.WithMoments(mean, mean * spread);
            double Cost(int stock) => (left * law.ExpectedLeft(stock)) + (missing * law.ExpectedMissing(stock));
            var best = law.SmallestCovering(Newsvendor.ServiceLevel(left, missing));
            return Enumerable.Range(0, 120).All(s => Cost(s) >= Cost(best) - 1e-7);
        }, iter: 200);

    [Fact]
    public void Nobody_asking_wants_no_stock() => Assert.Equal(0, CountLaw.WithMoments(0, 0).SmallestCovering(0.999));

    [Fact]
    public void What_is_no_law_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new PoissonLaw(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PoissonLaw(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NegativeBinomialLaw(0, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NegativeBinomialLaw(2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PoissonLaw(1).SmallestCovering(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Newsvendor.ServiceLevel(0, 1));
    }

    private static CountLaw Law(string name, string first, string second) =>
        name == "poisson" ? new PoissonLaw(Number(first)) : new NegativeBinomialLaw(Number(first), Number(second));

    private static CountLaw Named(string words) => words.Split(' ') switch
    {
        ["poisson", var mean] => new PoissonLaw(Number(mean)),
        ["listed", .. var probabilities] => new Listed([.. probabilities.Select(Number)]),
        _ => throw new ArgumentException(words, nameof(words)),
    };

    private static List<string[]> Rows(string file) =>
        [.. CheckValues.Lines(file).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','))];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>A law that is listed, from 0 upwards, as textbooks list it.</summary>
    private sealed record Listed(IReadOnlyList<double> Probabilities)
        : CountLaw(Probabilities.Index().Sum(p => p.Index * p.Item), double.NaN)
    {
        public override double Probability(int count) => count >= 0 && count < Probabilities.Count ? Probabilities[count] : 0;
    }
}
