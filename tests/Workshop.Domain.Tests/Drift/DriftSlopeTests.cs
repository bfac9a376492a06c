using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Drift;

/// <summary>What a valve's slope goes on through, and what begins a new one.</summary>
public class DriftSlopeTests
{
    private static readonly LobeKey Exhaust = new(new ValveKey(1, Side.Exhaust, 1));
    private static readonly DriftFit Known = KnownFit.Of(MadeUpFleet.Usual with { BetweenEngines = 0 }, firstSeen: 0.3);

    /// <summary>
    /// A valve that stood still for 60,000 km, then set: the slope that it showed goes on, since nothing new of it was read.
    /// </summary>
    [Theory]
    [InlineData("screw")]
    [InlineData("unmeasured")]
    [InlineData("unknown")]
    public void A_cut_keeps_the_slope(string cut)
    {
        var before = Forecast(Still());
        var after = Forecast(Cut(Still(), cut).Left(Exhaust, 0.26m, 0.27m));

        Assert.True(Math.Abs(before.DriftMm) < 0.003);
        Assert.Equal(before.DriftMm, after.DriftMm, 1e-4);
        Assert.Equal(before.DriftDeviationMm, after.DriftDeviationMm, 1e-4);
        Assert.Equal(before.Readings + 1, after.Readings);
        Assert.Equal(0.262, after.PresentMm, 0.008);
    }

    /// <summary>What comes after the cut adds to what is known of the same slope.</summary>
    [Fact]
    public void Readings_on_both_sides_of_a_cut_tell_of_one_slope()
    {
        var before = Forecast(Still());
        var both = Forecast(Cut(Still(), "screw").Left(Exhaust, 0.24m, 0.25m).At(84_000).Found(Exhaust, 0.24m, 0.25m)
            .At(120_000).Found(Exhaust, 0.24m, 0.25m));

        Assert.True(both.DriftDeviationMm < 0.92 * before.DriftDeviationMm);
    }

    [Theory]
    [InlineData(ValvePart.Valve)]
    [InlineData(ValvePart.Seat)]
    public void A_replaced_part_starts_a_new_slope(ValvePart part)
    {
        var after = Forecast(Still().Replaced(part, Exhaust.Valve).Left(Exhaust, 0.24m, 0.25m));

        // Nothing but what valves of its kind do.
        Assert.Equal(-0.014, after.DriftMm, 1e-4);
        Assert.Equal(0.006, after.DriftDeviationMm, 1e-4);
        Assert.Equal(1, after.Readings);
    }

    /// <summary>
    /// Finger followers: 0.5 mm of shim at a ratio known to 0.006 is uncertain by 0.003 mm, more than half of a reading's own
    /// error. The stretches are then told apart, and the slope is still that of both.
    /// </summary>
    [Fact]
    public void A_leg_split_at_a_known_shim_keeps_the_slope()
    {
        var specification = SeedFile.VTwin.Specification;
        var kept = Forecast(Steady(0), specification);
        var split = Forecast(Steady(0.5m), specification);

        Assert.Equal(kept.DriftMm, split.DriftMm, 0.002);
        Assert.InRange(split.DriftDeviationMm, kept.DriftDeviationMm, 2 * kept.DriftDeviationMm);
        Assert.Equal(kept.Readings, split.Readings);
        Assert.Equal(kept.PresentMm - 0.325, split.PresentMm, 0.006);

        // 0.65 is the lever ratio.
        static EngineRows Steady(decimal thicker)
        {
            var rows = new EngineRows { FirstCheckDue = null };
            decimal[] go = [0.61m, 0.60m, 0.59m, 0.58m, 0.57m, 0.56m];
            for (var visit = 0; visit < go.Length; visit++)
            {
                var taken = visit > 2 ? 0.65m * thicker : 0;
                rows.At(12_000 * (visit + 1)).Found(Exhaust, go[visit] - taken, go[visit] + 0.01m - taken);
                if (visit == 2 && thicker > 0)
                {
                    rows.Shim(Exhaust.Valve, Stage.AsFound, 2.1m).Shim(Exhaust.Valve, Stage.AsLeft, 2.1m + thicker);
                }
            }

            return rows;
        }
    }

    private static LobeForecast Forecast(EngineRows rows, EngineSpecification? specification = null)
    {
        var engine = rows.Engine(specification ?? MadeUpFleet.OneCylinder);
        return KnownFit.AssertFinite(EngineForecast.Of(engine, Known), engine).Find(Exhaust)!;
    }

    private static EngineRows Cut(EngineRows rows, string how) => how switch
    {
        "screw" => rows.Happened(Exhaust.Valve, ValveEventKind.ScrewTurned),
        "unmeasured" => rows.Shim(Exhaust.Valve, Stage.AsFound, null).Shim(Exhaust.Valve, Stage.AsLeft, 2.5m),
        _ => rows.Happened(Exhaust.Valve, ValveEventKind.ChangeUnknown),
    };

    private static EngineRows Still()
    {
        var rows = new EngineRows();
        foreach (var km in new[] { 12_000, 24_000, 36_000, 48_000, 60_000, 72_000 })
        {
            rows.At(km).Found(Exhaust, 0.21m, 0.22m);
        }

        return rows;
    }
}
