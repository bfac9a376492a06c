using CsCheck;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Tests.Shims;

public class BoxMapTests
{
    private static readonly BoxMap Box = new(Mm(2.000m), Mm(3.500m), 0.025m, 10);

    private static readonly decimal[] Steps = [0.01m, 0.02m, 0.025m, 0.04m, 0.05m];

    [Fact]
    public void Sizes_lie_row_by_row_the_thinnest_first()
    {
        Assert.Equal(61, Box.Compartments.Count);
        Assert.Equal(7, Box.Rows);
        Assert.Equal(("A1", Mm(2.000m)), (Box.Compartments[0].Address, Box.Compartments[0].Nominal));
        Assert.Equal(("B1", Mm(2.250m)), (Box.Compartments[10].Address, Box.Compartments[10].Nominal));
        Assert.Equal(("G1", Mm(3.500m)), (Box.Compartments[60].Address, Box.Compartments[60].Nominal));
    }

    [Theory]
    [InlineData(2.113, "A6")]
    [InlineData(2.112, "A5")]
    [InlineData(2.000, "A1")]
    [InlineData(3.500, "G1")]
    public void A_used_shim_lies_with_the_nearest_size(double mm, string address) =>
        Assert.Equal(address, Box.For(Mm((decimal)mm))!.Address);

    [Fact]
    public void Half_a_step_between_two_sizes_lies_with_the_thinner()
    {
        var box = new BoxMap(Mm(2.00m), Mm(3.00m), 0.05m, 7);

        Assert.Equal(Mm(2.10m), box.For(Mm(2.125m))!.Nominal);
        Assert.Equal(Mm(2.15m), box.For(Mm(2.126m))!.Nominal);
    }

    [Fact]
    public void What_is_beyond_the_box_has_no_compartment()
    {
        Assert.Null(Box.For(Mm(1.987m)));
        Assert.Null(Box.For(Mm(3.513m)));
        Assert.NotNull(Box.For(Mm(3.512m)));
        Assert.NotNull(Box.For(Mm(1.988m)));
    }

    [Fact]
    public void An_address_is_found_however_it_is_typed()
    {
        Assert.Equal(Mm(2.575m), Box.At("c 4")!.Nominal);
        Assert.Null(Box.At("H1"));
        Assert.Null(Box.At(null));
    }

    [Fact]
    public void After_row_Z_follows_AA()
    {
        var box = new BoxMap(Mm(1.00m), Mm(1.30m), 0.01m, 1);

        Assert.Equal(["Z1", "AA1", "AB1"], box.Compartments.Skip(25).Take(3).Select(c => c.Address));
    }

    [Fact]
    public void Every_thickness_lies_at_most_half_a_step_from_its_compartment() =>
        Gen.Select(Gen.Int[500, 10_000], Gen.Int[0, 4].Select(i => Steps[i]), Gen.Int[1, 26]).Sample(drawn =>
        {
            var (micrometres, step, columns) = drawn;
            var thickness = Mm(micrometres / 1000m);
            var box = new BoxMap(Mm(1.20m), Mm(3.20m), step, columns);
            var place = box.For(thickness);
            var inside = thickness.Millimetres >= 1.20m && thickness.Millimetres <= 3.20m;
            return inside
                ? place is not null && decimal.Abs(place.Nominal - thickness) <= step / 2 && place.Column < columns
                : place is null || decimal.Abs(place.Nominal - thickness) <= step / 2;
        });

    [Fact]
    public void A_box_without_a_step_or_columns_is_no_box()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new BoxMap(Mm(2), Mm(3), 0, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BoxMap(Mm(2), Mm(3), 0.05m, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BoxMap(Mm(3), Mm(2), 0.05m, 10));
    }

    private static ShimThickness Mm(decimal mm) => ShimThickness.FromMillimetres(mm);
}
