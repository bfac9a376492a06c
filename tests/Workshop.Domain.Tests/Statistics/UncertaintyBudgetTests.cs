using CsCheck;
using Workshop.Domain.Statistics;
using Xunit;

namespace Workshop.Domain.Tests.Statistics;

public class UncertaintyBudgetTests
{
    /// <summary>
    /// JCGM 100:2008 (GUM), example H.1, calibration of an end gauge of 50 mm: contributions in nm with 18, 24, 5, 8, 50 and 2 degrees
    /// of freedom; printed are u = 32 nm, 16.7 effective degrees, k(0.99) = 2.92 and U = 2.92 x 32 = 93 nm, which has the rounded u.
    /// Quantiles by R 4.2.2: <c>qt(0.995, 16)</c> = 2.92078162243, <c>qt(0.975, 16)</c> = 2.11990529922.
    /// </summary>
    [Fact]
    public void The_end_gauge_of_the_GUM_has_its_printed_uncertainty()
    {
        var budget = UncertaintyBudget.Of(
        [
            new("calibration of the standard", 25, 18), new("repeated observations", 5.8, 24), new("comparator, random", 3.9, 5),
            new("comparator, systematic", 6.7, 8), new("difference of expansion coefficients", 2.9, 50), new("difference of temperatures", 16.6, 2),
        ]);

        Assert.Equal(32, budget.Combined, 0.5);
        Assert.Equal(16.7, budget.EffectiveDegreesOfFreedom, 0.1);
        DigitsOfAgreement.AtLeast(11, budget.CoverageFactor(0.99), 2.92078162243, "k 99");
        DigitsOfAgreement.AtLeast(11, budget.CoverageFactor(0.95), 2.11990529922, "k 95");
        Assert.Equal(93, budget.CoverageFactor(0.99) * Math.Round(budget.Combined), 0.5);
        Assert.Equal(budget.CoverageFactor(0.99) * budget.Combined, budget.Expanded(0.99));
    }

    /// <summary>R 4.2.2 <c>qnorm(0.975)</c> = 1.95996398454005.</summary>
    [Fact]
    public void What_is_known_for_certain_takes_the_normal_law()
    {
        var budget = UncertaintyBudget.Of([new("resolution", 3), new("temperature", 4)]);

        Assert.Equal(5, budget.Combined);
        Assert.Equal(double.PositiveInfinity, budget.EffectiveDegreesOfFreedom);
        DigitsOfAgreement.AtLeast(5, budget.CoverageFactor(0.95), 1.95996398454005, "k");
    }

    [Fact]
    public void Effective_degrees_lie_between_the_fewest_and_the_sum_of_all() =>
        Gen.Select(Gen.Double[0.1, 10], Gen.Double[1, 60]).Array[1, 6].Sample(causes =>
        {
            var budget = UncertaintyBudget.Of([.. causes.Select((c, i) => new UncertaintyContribution($"{i}", c.Item1, c.Item2))]);
            return budget.EffectiveDegreesOfFreedom >= causes.Min(c => c.Item2) - 1e-9
                && budget.EffectiveDegreesOfFreedom <= causes.Sum(c => c.Item2) + 1e-9
                && budget.Combined <= causes.Sum(c => c.Item1) + 1e-9;
        });

    [Fact]
    public void A_cause_that_makes_no_sense_is_refused()
    {
        Assert.Throws<ArgumentException>(() => UncertaintyBudget.Of([]));
        Assert.Throws<ArgumentException>(() => UncertaintyBudget.Of([new("a", -1)]));
        Assert.Throws<ArgumentException>(() => UncertaintyBudget.Of([new("a", 1, 0)]));
    }
}
