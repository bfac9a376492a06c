using CsCheck;
using Workshop.Domain.Tooling;

namespace Workshop.Domain.Tests.Tooling;

public class WrenchLeverTests
{
    private static readonly Gen<decimal> Torques = Gen.Decimal[1, 200];
    private static readonly Gen<decimal> Lengths = Gen.Decimal[150, 600];
    private static readonly Gen<decimal> Adapters = Gen.Decimal[0, 100];
    private static readonly Gen<decimal> Angles = Gen.Int[0, 1800].Select(tenths => tenths / 10m);

    // US Army TM 1-1500-204-23-9, figure 8-16: 300 lbf.in wanted, wrench 10 in, adapter 4 in: 214 on the dial (214.2857).
    [Fact]
    public void A_published_example_of_an_adapter_straight_on_comes_out()
    {
        Assert.Equal(214m, decimal.Round(WrenchLever.ToDial(300, 10, 4, 0)));
        Assert.Equal(214.285714m, decimal.Round(WrenchLever.ToDial(300, 10, 4, 0), 6));
    }

    // The same example in the units of this service: lengths of 254 and 101.6 mm, exact by the inch of 25.4 mm.
    [Fact]
    public void The_example_is_the_same_in_millimetres() =>
        Assert.Equal(WrenchLever.ToDial(300, 10, 4, 0), WrenchLever.ToDial(300, 254, 101.6m, 0));

    // Moments by hand: at 60 degrees half of the adapter counts, at 180 degrees it counts backwards.
    [Theory]
    [InlineData(0, 24)]
    [InlineData(60, 26.6667)]
    [InlineData(90, 30)]
    [InlineData(120, 34.2857)]
    [InlineData(180, 40)]
    public void The_angle_decides_how_much_of_the_adapter_counts(double angle, double dialled) =>
        Assert.Equal((decimal)dialled, decimal.Round(WrenchLever.ToDial(30, 240, 60, (decimal)angle), 4));

    [Fact]
    public void What_is_dialled_gives_back_the_torque_at_the_fastener() => Gen.Select(Torques, Lengths, Adapters, Angles)
        .Sample((torque, length, adapter, angle) =>
            Assert.Equal(torque, WrenchLever.AtFastener(WrenchLever.ToDial(torque, length, adapter, angle), length, adapter, angle), 8));

    [Fact]
    public void Further_round_more_is_dialled() => Gen.Select(Torques, Lengths, Gen.Decimal[1, 100], Angles, Angles)
        .Where(s => s.Item4 < s.Item5)
        .Sample((torque, length, adapter, less, more) =>
            Assert.True(WrenchLever.ToDial(torque, length, adapter, less) < WrenchLever.ToDial(torque, length, adapter, more)));

    [Fact]
    public void A_longer_adapter_straight_on_asks_for_less_on_the_dial() => Gen.Select(Torques, Lengths, Adapters, Gen.Decimal[0.1m, 50])
        .Sample((torque, length, adapter, more) =>
            Assert.True(WrenchLever.ToDial(torque, length, adapter + more, 0) < WrenchLever.ToDial(torque, length, adapter, 0)));

    [Fact]
    public void Across_and_on_a_straight_extension_nothing_changes() => Gen.Select(Torques, Lengths, Adapters, Angles)
        .Sample((torque, length, adapter, angle) =>
        {
            Assert.Equal(torque, WrenchLever.ToDial(torque, length, adapter, 90), 20);
            Assert.Equal(torque, WrenchLever.ToDial(torque, length, 0, angle), 20);
        });

    [Fact]
    public void Units_of_length_and_of_torque_do_not_matter() => Gen.Select(Torques, Lengths, Adapters, Angles)
        .Sample((torque, length, adapter, angle) =>
        {
            var dialled = WrenchLever.ToDial(torque, length, adapter, angle);
            Assert.Equal(dialled, WrenchLever.ToDial(torque, length / 25.4m, adapter / 25.4m, angle), 10);
            Assert.Equal(dialled * 8.85m, WrenchLever.ToDial(torque * 8.85m, length, adapter, angle), 10);
        });

    [Fact]
    public void An_adapter_that_reaches_back_to_the_grip_turns_nothing()
    {
        Assert.False(WrenchLever.Turns(100, 100, 180));
        Assert.True(WrenchLever.Turns(100, 100, 90));
        Assert.Throws<ArgumentOutOfRangeException>(() => WrenchLever.ToDial(10, 100, 100, 180));
        Assert.Throws<ArgumentOutOfRangeException>(() => WrenchLever.ToDial(10, 0, 50, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => WrenchLever.ToDial(10, 100, 50, 181));
    }
}
