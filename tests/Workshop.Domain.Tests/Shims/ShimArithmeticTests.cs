using CsCheck;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Tests.Shims;

public class ShimArithmeticTests
{
    private const int Many = 20_000;

    private static readonly Gen<LeverRatio> AnyRatio = Gen.Int[1_000, 20_000].Select(r => LeverRatio.From(r / 10_000m));
    private static readonly Gen<ShimThickness> AnyShim = Gen.Int[500, 10_000].Select(t => ShimThickness.FromMillimetres(t / 1000m));
    private static readonly Gen<decimal> AnyClearance = Gen.Int[0, 30_000].Select(c => c / 10_000m);

    /// <summary>The sign, once and for all: a thicker shim takes clearance away.</summary>
    [Fact]
    public void A_tenth_more_of_shim_at_ratio_six_tenths_lowers_the_clearance_by_six_hundredths() =>
        Assert.Equal(0.14m, ShimArithmetic.PredictedMm(0.20m, LeverRatio.From(0.6m), Shim(2.00m), 2.10m));

    [Theory]
    [InlineData(0.21, 0.15, 1.0, 2.00, 2.06)]
    [InlineData(0.21, 0.15, 0.6, 2.00, 2.10)]
    [InlineData(0.09, 0.15, 0.6, 2.00, 1.90)]
    [InlineData(0.15, 0.15, 0.6, 2.00, 2.00)]
    public void Too_wide_takes_a_thicker_shim_and_too_tight_a_thinner_one(
        decimal found, decimal aim, decimal ratio, decimal old, decimal ideal) =>
        Assert.Equal(ideal, ShimArithmetic.IdealMm(found, LeverRatio.From(ratio), Shim(old), aim), 12);

    [Fact]
    public void The_ideal_thickness_gives_the_clearance_aimed_at() =>
        Gen.Select(AnyClearance, AnyClearance, AnyRatio, AnyShim).Sample(
            (found, aim, ratio, old) => Assert.Equal(
                aim, ShimArithmetic.PredictedMm(found, ratio, old, ShimArithmetic.IdealMm(found, ratio, old, aim)), 15),
            iter: Many);

    [Fact]
    public void A_thicker_shim_always_lowers_the_clearance() =>
        Gen.Select(AnyClearance, AnyRatio, AnyShim, AnyShim, AnyShim).Sample(
            (found, ratio, old, one, other) =>
            {
                var (thin, thick) = one <= other ? (one, other) : (other, one);
                var (wide, tight) = (
                    ShimArithmetic.PredictedMm(found, ratio, old, thin.Millimetres),
                    ShimArithmetic.PredictedMm(found, ratio, old, thick.Millimetres));
                Assert.True(thin == thick ? wide == tight : tight < wide);
            },
            iter: Many);

    [Fact]
    public void The_same_shim_back_in_changes_nothing() =>
        Gen.Select(AnyClearance, AnyRatio, AnyShim).Sample(
            (found, ratio, old) => Assert.Equal(found, ShimArithmetic.PredictedMm(found, ratio, old, old.Millimetres)), iter: Many);

    private static ShimThickness Shim(decimal millimetres) => ShimThickness.FromMillimetres(millimetres);
}
