using CsCheck;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Finishing;

public class BalanceJudgementTests
{
    private static readonly BalanceFigures Figures = new(1300, 50, Pressure.FromKilopascals(2));

    [Theory]
    [InlineData(28.00, 30.00, BalanceVerdict.Within)]
    [InlineData(28.00, 30.01, BalanceVerdict.Outside)]
    [InlineData(30.00, 28.00, BalanceVerdict.Within)]
    public void A_difference_of_exactly_the_tolerance_is_within(double first, double second, BalanceVerdict expected) =>
        Assert.Equal(expected, BalanceJudgement.Of(Figures, Read(first, second)).Verdict);

    [Fact]
    public void Without_a_tolerance_nothing_is_judged_and_the_difference_is_said()
    {
        var judged = BalanceJudgement.Of(null, Read(27, 30, 28.5, 28));

        Assert.Equal((BalanceVerdict.NothingStated, 3m), (judged.Verdict, judged.Worst.Kilopascals));
        Assert.Equal([0m, 3m, 1.5m, 1m], judged.Cylinders.Select(c => c.FromKpa));
        Assert.Equal("3 kPa (23 mmHg) apart; no tolerance is stated", judged.Sentence);
    }

    /// <summary>With a reference, 1.5 to either side is within 2 of it, though the outer two are 3 apart.</summary>
    [Fact]
    public void With_a_reference_cylinder_each_is_held_against_it_and_not_against_one_another()
    {
        var to = Figures with { ReferenceCylinder = 2 };

        Assert.Equal(BalanceVerdict.Outside, BalanceJudgement.Of(Figures, Read(26.5, 28, 29.5)).Verdict);
        var judged = BalanceJudgement.Of(to, Read(26.5, 28, 29.5));
        Assert.Equal((BalanceVerdict.Within, "within: 1.5 kPa (11 mmHg) from cylinder 2, 2 kPa (15 mmHg) allowed"), (judged.Verdict, judged.Sentence));
        Assert.Equal([-1.5m, 0m, 1.5m], judged.Cylinders.Select(c => c.FromKpa));
    }

    [Fact]
    public void What_cannot_be_judged_is_a_mistake_of_the_caller()
    {
        Assert.Throws<ArgumentException>(() => BalanceJudgement.Of(Figures, Read(28)));
        Assert.Throws<ArgumentException>(() => BalanceJudgement.Of(Figures with { ReferenceCylinder = 4 }, Read(28, 29)));
    }

    /// <summary>Another gauge that shows all of them higher, and another order of reading, change nothing of the verdict.</summary>
    [Fact]
    public void Only_differences_count() => Gen.Select(Gen.Int[2000, 4000].Array[2, 6], Gen.Int[0, 3000]).Sample((hundredths, more) =>
    {
        var read = Read([.. hundredths.Select(h => h / 100.0)]);
        var shifted = Read([.. hundredths.Select(h => (h + more) / 100.0)]);
        var backwards = read.Reverse().ToArray();
        var judged = BalanceJudgement.Of(Figures, read);
        Assert.Equal(judged.Worst, BalanceJudgement.Of(Figures, shifted).Worst);
        Assert.Equal(judged.Sentence, BalanceJudgement.Of(Figures, backwards).Sentence);
        Assert.Equal(hundredths.Max() - hundredths.Min() <= 200, judged.Verdict == BalanceVerdict.Within);
    });

    private static BalanceVacuum[] Read(params double[] kilopascals) =>
        [.. kilopascals.Select((k, i) => new BalanceVacuum { RunId = Guid.Empty, Cylinder = i + 1, Vacuum = Pressure.FromKilopascals((decimal)k) })];
}
