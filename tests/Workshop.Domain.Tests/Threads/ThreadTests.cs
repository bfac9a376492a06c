using CsCheck;
using Workshop.Domain.Threads;

namespace Workshop.Domain.Tests.Threads;

public class ThreadTests
{
    public static TheoryData<string> Written() => [.. Rows("stress areas", "torque/stress-areas.csv").Select(row => row["thread"])];

    /// <summary>As = pi/4 (d - 0.938194 P)^2, exact arithmetic to eight figures; ISO 898-1 prints three.</summary>
    [Fact]
    public void Stress_areas_are_those_of_the_formula_and_of_the_standard() =>
        Assert.All(Rows("stress areas", "torque/stress-areas.csv"), row =>
        {
            var area = Read(row["thread"]).StressAreaMm2;
            var exact = (double)row.Number("exact_mm2");
            Assert.InRange(area, exact - 5e-6 * 10, exact + 5e-6 * 10);
            if (row.NumberOrNone("printed_mm2") is { } printed)
            {
                Assert.Equal((double)printed, Math.Round(area, 1));
            }
        });

    /// <summary>
    /// ISO 898-1 rounds area and product, so its loads agree with stress times area within 0.7 %: two figures and a half.
    /// </summary>
    [Fact]
    public void Proof_and_ultimate_loads_are_those_that_the_standard_prints() =>
        Assert.All(Rows("loads", "torque/iso-898-1-loads.csv"), row =>
        {
            Assert.True(PropertyClass.TryFind(row["class"], out var steel));
            var thread = Read(row["thread"]);
            Near((double)row.Number("proof_n"), steel.ProofLoadN(thread), 0.007);
            if (row.NumberOrNone("ultimate_n") is { } ultimate)
            {
                Near((double)ultimate, steel.UltimateLoadN(thread), 0.007);
            }
        });

    /// <summary>
    /// VDI 2230-1 (2001), fine threads at 90 % of yield. Forces agree to 0.3 %, torques to 0.7 %: the table prints two or three
    /// figures and takes the through hole of its own edition.
    /// </summary>
    [Fact]
    public void Assembly_forces_and_torques_are_those_of_the_guideline() =>
        Assert.All(Rows("vdi 2230", "torque/vdi-2230-fine-threads.csv"), row =>
        {
            Assert.True(PropertyClass.TryFind(row["class"], out var steel));
            var (thread, friction) = (Read(row["thread"]), (double)row.Number("friction"));
            var force = Tightening.AssemblyForceN(thread, steel, friction);
            Near((double)row.Number("force_kn") * 1000, force, 0.003);
            Near((double)row.Number("torque_nm"), Tightening.TorqueNm(thread, force, friction), 0.007);
        });

    [Fact]
    public void A_torque_and_its_force_are_each_others_way_back() => Threads.Select(Gen.Double[0.05, 0.35], Gen.Double[100, 60_000])
        .Sample((thread, friction, force) =>
            Near(force, Tightening.ForceN(thread, Tightening.TorqueNm(thread, force, friction), friction), 1e-12));

    [Fact]
    public void More_friction_leaves_less_force_and_asks_for_more_torque_to_the_same_stress() =>
        Threads.Select(Gen.Double[0.05, 0.3], Classes).Sample((thread, friction, steel) =>
        {
            var (slippery, rough) = (Tightening.AssemblyForceN(thread, steel, friction), Tightening.AssemblyForceN(thread, steel, friction + 0.05));
            Assert.True(rough < slippery);
            Assert.True(Tightening.TorqueNm(thread, rough, friction + 0.05) > Tightening.TorqueNm(thread, slippery, friction));
        });

    [Fact]
    public void The_usual_span_never_passes_the_proof_load() =>
        Threads.Select(Classes, Frictions)
            .Sample((thread, steel, friction) =>
            {
                var bounds = ThreadBounds.Of(thread, steel, friction);
                Assert.True(bounds.SlipBelowNm < bounds.UsualFromNm);
                Assert.True(bounds.UsualFromNm < bounds.UsualToNm);
                Assert.True(bounds.UsualToNm < bounds.ExceedsLimitNm);
                Assert.True(Tightening.ForceN(thread, bounds.UsualFromNm, friction.Lowest) < bounds.LimitN);
            });

    [Fact]
    public void A_weaker_thread_narrows_the_bounds_and_a_strong_one_changes_nothing() =>
        Threads.Select(Gen.Double[0.5, 30], Gen.Double[20, 400]).Sample((thread, engagement, strength) =>
        {
            Assert.True(PropertyClass.TryFind("8.8", out var steel));
            var alone = ThreadBounds.Of(thread, steel, FrictionSpan.Dry);
            var into = ThreadBounds.Of(thread, steel, FrictionSpan.Dry, new WeakerThread(engagement, strength));
            Assert.Equal(into.StripsFirst, into.LimitN < alone.LimitN);
            Assert.True(into.UsualToNm <= alone.UsualToNm && into.ExceedsLimitNm <= alone.ExceedsLimitNm);
        });

    /// <summary>The formula's area of one pitch is the tooth's axial thickness at the major diameter, turned once.</summary>
    [Fact]
    public void The_inner_thread_is_sheared_over_its_tooth_at_the_bolts_major_diameter() => Threads.Sample(thread =>
    {
        // Basic profile of ISO 68-1: at the pitch diameter tooth and gap share the pitch; each flank leans 30 degrees.
        var (d, p, d2) = (thread.DiameterMm, thread.PitchMm, thread.PitchDiameterMm);
        var tooth = (p / 2) + (2 * ((d - d2) / 2) * Math.Tan(Math.PI / 6));
        Near(Math.PI * d * tooth, thread.InnerShearAreaMm2(p), 1e-12);
    });

    [Theory]
    [InlineData("M6")]
    [InlineData("M6x")]
    [InlineData("6x1")]
    [InlineData("M6x0")]
    [InlineData("M6x4")]
    [InlineData("M6 x 1")]
    [InlineData("")]
    [InlineData(null)]
    public void What_is_no_thread_is_not_read(string? text) => Assert.False(MetricThread.TryParse(text, out _));

    [Theory]
    [MemberData(nameof(Written))]
    public void A_thread_is_written_as_it_is_read(string text) => Assert.Equal(text, Read(text).ToString());

    private static readonly Gen<MetricThread> Threads = OneOf(
        ["M4x0.7", "M5x0.8", "M6x1", "M8x1.25", "M8x1", "M10x1.5", "M10x1.25", "M12x1.75", "M12x1.25", "M14x2", "M16x2"]).Select(Read);

    private static readonly Gen<PropertyClass> Classes = OneOf(PropertyClass.All);

    private static readonly Gen<FrictionSpan> Frictions = OneOf([FrictionSpan.Any, FrictionSpan.Dry, FrictionSpan.Oiled]);

    private static Gen<T> OneOf<T>(IReadOnlyList<T> values) => Gen.Int[0, values.Count - 1].Select(i => values[i]);

    private static MetricThread Read(string text) => MetricThread.TryParse(text, out var thread) ? thread : throw new FormatException(text);

    private static IReadOnlyList<CsvRow> Rows(string name, string file) => CsvTable.Read(name, CheckValues.Lines(file)).Rows;

    private static void Near(double expected, double actual, double share) =>
        Assert.InRange(actual, expected * (1 - share), expected * (1 + share));
}
