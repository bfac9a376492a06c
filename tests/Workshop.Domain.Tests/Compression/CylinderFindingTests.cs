using CsCheck;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using static Workshop.Domain.Tests.Compression.TestedCylinders;

namespace Workshop.Domain.Tests.Compression;

public class CylinderFindingTests
{
    [Fact]
    public void A_cylinder_at_its_least_is_within_and_one_below_is_below()
    {
        Assert.Equal(CylinderVerdict.Within, Of(1, Dry(1, 1000)).Verdict);
        Assert.Equal("1000 kPa is at least 1000 kPa.", Of(1, Dry(1, 1000)).Sentences[0]);

        var below = Of(1, Dry(1, 999.9m));
        Assert.Equal(CylinderVerdict.Below, below.Verdict);
        Assert.Equal("999.9 kPa is below the least of 1000 kPa (10.0 bar, 145 psi).", below.Sentences[0]);
    }

    [Fact]
    public void A_cylinder_too_far_behind_the_best_is_uneven_though_it_reaches_the_least()
    {
        CylinderTest[] tests = [Dry(1, 1200), Dry(2, 1099), Dry(3, 1100)];

        Assert.Equal(CylinderVerdict.Uneven, Of(2, tests).Verdict);
        Assert.Contains("It is 101 kPa behind cylinder 1; 100 kPa is allowed.", Of(2, tests).Sentences);
        Assert.Equal(CylinderVerdict.Within, Of(3, tests).Verdict);
        Assert.Equal(CylinderVerdict.NotMeasured, Of(4, tests).Verdict);
    }

    [Theory]
    [InlineData(EngineWarmth.Cold, true, "Measured cold, throttle open: the least of 1000 kPa (10.0 bar, 145 psi) holds warm with the throttle open, so it is not compared with it.")]
    [InlineData(EngineWarmth.Warm, false, "Measured warm, throttle not open: the least of 1000 kPa (10.0 bar, 145 psi) holds warm with the throttle open, so it is not compared with it.")]
    public void What_was_not_measured_as_the_figure_wants_it_is_not_judged_by_it(EngineWarmth warmth, bool open, string sentence)
    {
        var found = Of(1, Dry(1, 700, warmth: warmth, throttleOpen: open));

        Assert.Equal((CylinderVerdict.NotJudged, sentence), (found.Verdict, found.Sentences[0]));
        // Cylinders measured alike are compared with each other all the same.
        Assert.Equal(CylinderVerdict.Uneven, Of(1, Dry(1, 700, warmth: warmth, throttleOpen: open), Dry(2, 850, warmth: warmth, throttleOpen: open)).Verdict);
        Assert.Equal(CylinderVerdict.NotJudged, Of(1, Dry(1, 700, warmth: warmth, throttleOpen: open), Dry(2, 1200)).Verdict);
    }

    [Fact]
    public void Without_a_stated_difference_three_quarters_of_the_best_is_the_bound()
    {
        var plain = Four with { Compression = null };
        CylinderVerdict[] verdicts = [.. CylinderFindings.Of(plain, [Dry(1, 1000), Dry(2, 750), Dry(3, 749)], Stage.AsFound, []).Select(f => f.Verdict)];

        Assert.Equal([CylinderVerdict.NotJudged, CylinderVerdict.NotJudged, CylinderVerdict.Uneven, CylinderVerdict.NotMeasured], verdicts);
    }

    [Fact]
    public void Leakage_is_judged_at_the_pressure_that_it_is_stated_at()
    {
        Assert.Equal(CylinderVerdict.Within, Of(1, Leak(1, 15)).Verdict);
        Assert.Equal(CylinderVerdict.Leaks, Of(1, Leak(1, 15.1m)).Verdict);
        Assert.Equal(CylinderVerdict.NotJudged, Of(1, Leak(1, 40, kpa: 500)).Verdict);
        Assert.Equal("It loses 20 %, more than the 15 % that is allowed. Air is heard at exhaust and coolant.",
            Of(1, Leak(1, 20, 600, AirPlace.Coolant, AirPlace.Exhaust)).Sentences[0]);
    }

    [Fact]
    public void Only_the_last_attempt_counts() =>
        Assert.Equal(CylinderVerdict.Within, Of(1, Dry(1, 700), Dry(1, 1100, attempt: 2)).Verdict);

    [Fact]
    public void A_weak_cylinder_that_rises_with_oil_speaks_for_its_rings_and_one_that_stays_low_for_valves_or_gasket()
    {
        Assert.Contains("With oil it rises from 800 to 880 kPa: likely piston rings or bore.", Of(1, Dry(1, 800), Wet(1, 880)).Sentences);
        Assert.Contains("With oil it stays low (800, then 879 kPa): likely valves or head gasket.", Of(1, Dry(1, 800), Wet(1, 879)).Sentences);
        Assert.EndsWith("not what is certain: confirm it before anything is opened.", Of(1, Dry(1, 800), Wet(1, 880)).Sentences[^1], StringComparison.Ordinal);
        Assert.Equal("What was measured does not tell where it leaks: measure once more with oil in the cylinder, or by leak-down.", Of(1, Dry(1, 800)).Sentences[^1]);
    }

    [Fact]
    public void Two_neighbours_that_are_low_alike_speak_for_the_gasket_between_them()
    {
        Assert.Contains("Cylinder 3 beside it is low too: likely the gasket between the two.", Of(2, Dry(2, 600), Dry(3, 620), Dry(1, 1100)).Sentences);
        // Not where the other one's rings explain it, nor where they stand apart.
        Assert.DoesNotContain(Of(2, Dry(2, 600), Dry(3, 620), Wet(3, 900), Dry(1, 1100)).Sentences, s => s.Contains("beside it", StringComparison.Ordinal));
        Assert.DoesNotContain(Of(2, Dry(2, 600), Dry(4, 620), Dry(1, 1100)).Sentences, s => s.Contains("beside it", StringComparison.Ordinal));
        var twoBanks = Four with { Layout = Four.Layout with { Cylinders = [new(1, "front"), new(2, "front"), new(3, "rear"), new(4, "rear")] } };
        Assert.DoesNotContain(
            CylinderFindings.Of(twoBanks, [Dry(2, 600), Dry(3, 620), Dry(1, 1100)], Stage.AsFound, []).SelectMany(f => f.Sentences), s => s.Contains("beside it", StringComparison.Ordinal));
    }

    [Fact]
    public void Air_is_said_where_it_goes_out_and_a_tight_valve_of_the_cylinder_is_named()
    {
        var tight = new ValveKey(1, Side.Exhaust, 1);
        var found = CylinderFindings.Of(Four, [Leak(1, 30, 600, AirPlace.Exhaust), Leak(2, 30)], Stage.AsFound, [tight]);

        Assert.Contains("Air at the exhaust: likely an exhaust valve.", found[0].Sentences);
        Assert.Contains("Found tight: cylinder 1, exhaust 1. A valve that does not close leaks; measure again once it is set.", found[0].Sentences);
        Assert.DoesNotContain(found[1].Sentences, s => s.Contains("Found tight", StringComparison.Ordinal));
    }

    [Fact]
    public void More_pressure_never_makes_a_cylinder_weak() =>
        Gen.Select(Gen.Int[0, 20000], Gen.Int[0, 20000], Gen.Int[0, 20000], Gen.Int[1, 4000]).Sample((a, b, c, more) =>
        {
            CylinderTest[] Tests(decimal first) => [Dry(1, first), Dry(2, b / 10m), Dry(3, c / 10m)];
            var (before, after) = (Of(1, Tests(a / 10m)), Of(1, Tests((a + more) / 10m)));
            Assert.False(after.IsWeak && !before.IsWeak);
        });

    [Fact]
    public void The_order_in_which_cylinders_were_entered_changes_nothing() =>
        Gen.Int[0, 20000].Array[4].Sample(kpa =>
        {
            CylinderTest[] tests = [.. kpa.Select((k, i) => Dry(i + 1, k / 10m))];
            static IEnumerable<(int, CylinderVerdict)> Verdicts(IEnumerable<CylinderTest> of) =>
                CylinderFindings.Of(Four, [.. of], Stage.AsFound, []).Select(f => (f.Cylinder, f.Verdict));
            Assert.Equal(Verdicts(tests), Verdicts(tests.Reverse()));
        });
}
