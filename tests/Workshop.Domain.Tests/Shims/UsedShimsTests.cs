using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Tests.Shims;

public class UsedShimsTests
{
    private static readonly Guid Mine = new(1, 0, 0, new byte[8]);
    private static readonly Guid Another = new(2, 0, 0, new byte[8]);

    [Fact]
    public void New_shims_go_anywhere_whatever_the_policy() =>
        Assert.All(Enum.GetValues<UsedShimPolicy>(), policy => Assert.True(policy.Allows(StockCondition.New, null, Mine)));

    [Fact]
    public void Used_shims_go_where_the_policy_lets_them()
    {
        Assert.False(UsedShimPolicy.Never.Allows(StockCondition.Used, Mine, Mine));
        Assert.True(UsedShimPolicy.OwnMachineOnly.Allows(StockCondition.Used, Mine, Mine));
        Assert.False(UsedShimPolicy.OwnMachineOnly.Allows(StockCondition.Used, Another, Mine));
        Assert.False(UsedShimPolicy.OwnMachineOnly.Allows(StockCondition.Used, null, Mine));
        Assert.True(UsedShimPolicy.Yes.Allows(StockCondition.Used, Another, Mine));
    }

    [Theory]
    [InlineData(2.100, 2.090, true)]
    [InlineData(2.100, 2.111, false)]
    public void One_shim_reads_alike_within_a_hundredth(double one, double other, bool same) =>
        Assert.Equal(same, UsedShims.MayBeSame(Mm(one), Mm(other)));

    [Fact]
    public void Three_hundredths_of_wear_are_accepted_and_no_more()
    {
        Assert.False(UsedShims.IsWornOut(Mm(2.500), Mm(2.470)));
        Assert.True(UsedShims.IsWornOut(Mm(2.500), Mm(2.469)));
        Assert.False(UsedShims.IsWornOut(null, Mm(0.9)));
    }

    private static ShimThickness Mm(double mm) => ShimThickness.FromMillimetres((decimal)mm);
}
