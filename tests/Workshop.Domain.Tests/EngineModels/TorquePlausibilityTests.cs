using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.EngineModels;

public class TorquePlausibilityTests
{
    private static readonly Fastener Bolt = new(
        "cap-bolt", "Cap bolt", 1, "M6x1", Torque.FromNewtonMetres(10), ThreadTreatment.Dry, "8 mm socket", new Provenance("Invented", "1"))
    {
        PropertyClass = "8.8", Form = FastenerForm.SolidBolt, Into = new ReceivingThread(ThreadMaterial.Steel),
    };

    /// <summary>VDI 2230-1 tables of M6, class 8.8 (from memory): 10.1 N.m at friction 0.12, 14.1 at 0.20.</summary>
    [Fact]
    public void An_absurd_torque_is_told_with_the_usual_span_and_the_proof_load()
    {
        var judged = TorquePlausibility.Of(Bolt with { Torque = Torque.FromNewtonMetres(40) });

        Assert.Equal(TorqueVerdict.Exceeds, judged.Verdict);
        Assert.Equal(
            "usual span 10 to 14 N.m for a bolt M6x1 of class 8.8, dry; above 18 N.m it would exceed the proof load whatever the friction",
            judged.Sentence);
    }

    [Theory]
    [InlineData(1, TorqueVerdict.Slip)]
    [InlineData(5, TorqueVerdict.BelowUsual)]
    [InlineData(12, TorqueVerdict.Usual)]
    [InlineData(16, TorqueVerdict.MayExceed)]
    [InlineData(100, TorqueVerdict.Exceeds)]
    public void A_torque_is_judged_by_where_it_lies(int nm, TorqueVerdict verdict) =>
        Assert.Equal(verdict, TorquePlausibility.Of(Bolt with { Torque = Torque.FromNewtonMetres(nm) }).Verdict);

    [Fact]
    public void Less_is_usual_for_an_oiled_thread() => Assert.True(
        TorquePlausibility.Of(Bolt with { Treatment = ThreadTreatment.Oiled }).Bounds!.UsualToNm < TorquePlausibility.Of(Bolt).Bounds!.UsualToNm);

    [Fact]
    public void What_is_turned_further_by_angle_may_begin_low()
    {
        var judged = TorquePlausibility.Of(Bolt with { Torque = Torque.FromNewtonMetres(1), AngleDegrees = 90 });

        Assert.Equal(TorqueVerdict.BelowUsual, judged.Verdict);
        Assert.EndsWith("the angle after it is not judged", judged.Sentence);
    }

    public static TheoryData<string, Fastener> WithoutBounds() => new()
    {
        { "a plug is tightened to its seal", Bolt with { Form = FastenerForm.Plug } },
        { "solid bolts only", Bolt with { Form = FastenerForm.HollowOrShouldered } },
        { "solid bolt or not is not stated", Bolt with { Form = null } },
        { "property class is not stated", Bolt with { PropertyClass = null } },
        { "what it is turned into is not stated", Bolt with { Into = null } },
        { "light alloy's thread, which is the weaker one", Bolt with { Into = new ReceivingThread(ThreadMaterial.LightAlloy, 12) } },
        { "plastic", Bolt with { Into = new ReceivingThread(ThreadMaterial.Plastic) } },
        { "head of an M7 bolt", Bolt with { Thread = "M7x1" } },
        { "head of an M20 bolt", Bolt with { Thread = "M20x1.5" } },
    };

    [Theory]
    [MemberData(nameof(WithoutBounds))]
    public void Where_no_bounds_hold_it_says_so_and_why(string reason, Fastener fastener)
    {
        var judged = TorquePlausibility.Of(fastener with { Torque = Torque.FromNewtonMetres(500) });

        Assert.Equal(TorqueVerdict.NoCheck, judged.Verdict);
        Assert.StartsWith("no check available: ", judged.Sentence);
        Assert.Contains(reason, judged.Sentence);
    }

    [Fact]
    public void In_light_alloy_the_inner_thread_is_the_bound_where_it_is_the_weaker()
    {
        var shallow = TorquePlausibility.Of(Bolt with
        {
            Into = new ReceivingThread(ThreadMaterial.LightAlloy, 3, 150), Torque = Torque.FromNewtonMetres(14),
        });
        var deep = TorquePlausibility.Of(Bolt with { Into = new ReceivingThread(ThreadMaterial.LightAlloy, 15, 180) });

        Assert.True(shallow.Bounds!.StripsFirst);
        Assert.Equal(TorqueVerdict.Exceeds, shallow.Verdict);
        Assert.Contains("the light alloy's thread would strip", shallow.Sentence);
        Assert.False(deep.Bounds!.StripsFirst);
    }

    [Fact]
    public void A_specification_asks_an_absurd_torque_back_and_does_not_refuse_it()
    {
        var specification = SeedFile.VTwin.Specification;
        var at = specification.Fasteners.ToList().FindIndex(f => f.Code == "tank-bolt");
        var findings = SpecificationCheck.Of(specification with
        {
            Fasteners = [.. specification.Fasteners.Select(f => f.Code == "tank-bolt" ? f with { Torque = Torque.FromNewtonMetres(180) } : f)],
        });

        Assert.Empty(findings.Faults);
        var asked = Assert.Single(findings.ToConfirm);
        Assert.Equal($"fasteners[{at}].torqueNm", asked.Field);
        Assert.StartsWith($"fasteners[{at}].torqueNm is 180 N.m: usual span ", asked.Sentence);
    }
}
