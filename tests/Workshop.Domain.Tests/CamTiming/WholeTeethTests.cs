using CsCheck;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Measures;
using static Workshop.Domain.Tests.CamTiming.MadeUpDrives;

namespace Workshop.Domain.Tests.CamTiming;

public class WholeTeethTests
{
    /// <summary>360 / teeth on the crankshaft: exact arithmetic.</summary>
    [Theory]
    [InlineData(18, 20)]
    [InlineData(15, 24)]
    [InlineData(16, 22.5)]
    [InlineData(36, 10)]
    public void One_tooth_of_a_direct_drive_is_a_turn_by_the_teeth_on_the_crankshaft(int teeth, decimal degrees) =>
        Assert.Equal(degrees, WholeTeeth.ToothOf(Chain(teeth), 0).Degrees);

    [Fact]
    public void The_same_tooth_counted_at_the_camshaft_is_the_same_angle() => Gen.Int[8, 60].Sample(teeth =>
    {
        // A wheel with twice the teeth, in cam degrees, doubled.
        var atCam = CamAngle.FromDegrees(360m / (2 * teeth)).ToCrank();
        Assert.Equal(atCam.Degrees, WholeTeeth.ToothOf(Chain(teeth), 0).Degrees, 20);
    });

    [Fact]
    public void A_tooth_behind_an_intermediate_shaft_is_worth_as_much_more_as_the_shaft_is_slower()
    {
        Assert.Equal(10, WholeTeeth.ToothOf(InTwoStages(), 0).Degrees);
        Assert.Equal(22.5m, WholeTeeth.ToothOf(InTwoStages(), 1).Degrees); // 360 / 24 x 54 / 36
    }

    [Fact]
    public void Whole_teeth_and_what_is_left_over_make_the_advance() => Gen.Select(Gen.Int[8, 60], Gen.Int[-9000, 9000]).Sample((teeth, hundredths) =>
    {
        var found = WholeTeeth.AtStage(Chain(teeth), 0, Degrees(hundredths / 100m));
        Assert.Equal(hundredths / 100m, ((found.Tooth * found.Teeth) + found.Remainder).Degrees, 15);
        Assert.True(found.Remainder.Abs().Degrees <= (found.Tooth.Degrees / 2) + 0.000001m);
    });

    [Fact]
    public void The_stage_that_leaves_least_over_explains_best()
    {
        Assert.Equal((1, 1), Of(22));
        Assert.Equal((0, -1), Of(-10.5m));
        Assert.Null(WholeTeeth.Nearest(InTwoStages(), Degrees(4.9m)));

        static (int, int) Of(decimal advance) => WholeTeeth.Nearest(InTwoStages(), Degrees(advance)) is { } t ? (t.Stage, t.Teeth) : default;
    }
}
