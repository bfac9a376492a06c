using System.Globalization;
using System.Text.Json;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Tests.Catalogue;

namespace Workshop.Domain.Tests.EngineModels;

/// <summary>Whether the invented engines could run, be measured, be screwed together, and be served from the invented stores.</summary>
public class DemoEngineTests
{
    private const double Cycle = 720;

    // ISO 261:1998, table 2, from memory: the pitches of the diameters that these engines use.
    private static readonly Dictionary<int, double[]> Pitches = new()
    {
        [6] = [1, 0.75], [7] = [1, 0.75], [8] = [1.25, 1, 0.75], [10] = [1.5, 1.25, 1, 0.75], [12] = [1.75, 1.5, 1.25, 1],
        [14] = [2, 1.5, 1.25, 1], [20] = [2.5, 2, 1.5, 1], [30] = [3.5, 3, 2, 1.5, 1], [36] = [4, 3, 2, 1.5],
    };

    private static JsonElement Workshop { get; } =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(SeedFile.Folder, "workshop.json"))).RootElement;

    [Fact]
    public void Each_says_that_it_is_invented() => Assert.All(SeedFile.All, model =>
    {
        Assert.True(model.Invented);
        Assert.Contains("invented", model.Specification.Provenance.Source, StringComparison.Ordinal);
    });

    [Fact]
    public void They_are_the_three_that_differ_where_it_matters()
    {
        Assert.Equal(ValveTrainKind.ShimUnderFingerFollower, SeedFile.VTwin.Specification.ValveTrain);
        Assert.Equal(8, SeedFile.VTwin.Specification.Valves.Count);
        Assert.All(SeedFile.VTwin.Specification.Valves, v => Assert.Equal(v.Key.Side == Side.Intake ? 2 : 1, v.Lobes));
        Assert.All(SeedFile.VTwin.Specification.Limits, l => Assert.InRange(l.LeverRatio.Value, 0.6m, 0.7m));
        Assert.Equal(ValveTrainKind.ShimUnderBucket, SeedFile.Four.Specification.ValveTrain);
        Assert.Equal(16, SeedFile.Four.Specification.Valves.Count);
        Assert.Equal(ValveTrainKind.ScrewAndLocknut, SeedFile.Single.Specification.ValveTrain);
        Assert.Null(SeedFile.Single.Specification.Shims);
    }

    /// <summary>
    /// A lobe may be measured where it lies away from its follower. Opening and closing with wide ramps, crank degrees from
    /// the cylinder's compression dead centre: exhaust 110 to 410, intake 310 to 620 (common practice, no source).
    /// </summary>
    [Fact]
    public void Every_lobe_lies_away_from_its_follower_at_its_measuring_position() => Assert.All(SeedFile.All, model =>
    {
        var deadCentres = CompressionDeadCentres(model);
        foreach (var position in model.Specification.MeasuringPositions)
        {
            foreach (var lobe in position.Lobes)
            {
                var angle = ((double)position.CrankDegrees - deadCentres[lobe.Valve.Cylinder] + Cycle) % Cycle;
                var lifts = lobe.Valve.Side == Side.Exhaust ? angle is > 110 and < 410 : angle is > 310 and < 620;
                Assert.False(lifts, $"{model} {lobe} lifts at {position.Name}: {angle} degrees");
            }
        }
    });

    /// <summary>
    /// No torque exceeds K d F, with F = 90 % of the proof load of property class 8.8 (ISO 898-1:2013: 580 MPa, table 3, on
    /// the stress area of clause 9.1.6.1, from memory) and K = 0.20 dry, 0.15 oiled or locked (common practice, no source).
    /// Where an angle follows, half of that.
    /// </summary>
    [Fact]
    public void No_fastener_is_tightened_beyond_what_its_thread_bears() => Assert.All(
        SeedFile.All.SelectMany(model => model.Specification.Fasteners), fastener =>
        {
            var (diameter, pitch) = Thread(fastener);
            var mean = diameter - (0.9382 * pitch);
            var force = 0.9 * 580 * Math.PI / 4 * mean * mean;
            var friction = fastener.Treatment == ThreadTreatment.Dry ? 0.20 : 0.15;
            var most = friction * diameter / 1000 * force * (fastener.AngleDegrees is null ? 1 : 0.5);

            Assert.Contains(pitch, Pitches[(int)diameter]);
            Assert.InRange((double)fastener.Torque.NewtonMetres, 1, most);
        });

    [Theory]
    [InlineData(6, 1, 20.1)]
    [InlineData(8, 1.25, 36.6)]
    [InlineData(10, 1.5, 58.0)]
    public void The_stress_area_is_that_of_the_standard_s_table(double diameter, double pitch, double area)
    {
        // ISO 898-1:2013, table 4, from memory.
        var mean = diameter - (0.9382 * pitch);
        Assert.Equal(area, Math.PI / 4 * mean * mean, 0.05);
    }

    [Fact]
    public void All_that_can_be_said_of_a_fastener_or_seal_is_said_somewhere()
    {
        var fasteners = SeedFile.All.SelectMany(m => m.Specification.Fasteners).ToList();
        Assert.Contains(fasteners, f => f.AngleDegrees is not null);
        Assert.Contains(fasteners, f => f.UseOnce);
        Assert.Contains(fasteners, f => f.Stages.Count > 1);
        Assert.Equal(Enum.GetValues<ThreadTreatment>(), fasteners.Select(f => f.Treatment).Distinct().Order());
        Assert.Equal(
            Enum.GetValues<SealPolicy>(),
            SeedFile.All.SelectMany(m => m.Specification.Joints).SelectMany(j => j.Seals).Select(s => s.Policy).Distinct().Order());
    }

    [Fact]
    public void Some_figures_were_checked_by_somebody_and_some_by_nobody()
    {
        var items = SeedFile.All.SelectMany(m => m.Specification.ServiceItems).Select(i => i.Provenance).ToList();
        Assert.Contains(items, p => p.CheckedBy is not null);
        Assert.Contains(items, p => p.CheckedBy is null);
    }

    [Fact]
    public void The_shims_are_those_of_a_series_of_the_catalogue() => Assert.All(
        SeedFile.All.Where(m => m.Specification.Shims is not null), model =>
        {
            var shims = model.Specification.Shims!;
            var row = Assert.Single(CatalogueFiles.Read("shim-series.csv").Rows, r => r["code"] == shims.PartCode);
            Assert.Equal(model.Specification.ValveTrain.ToString(), row["used_as"]);
            Assert.Equal(row.Number("diameter_mm"), shims.DiameterMm);
            Assert.Equal(row.Number("step_mm"), shims.StepMm);
            Assert.Equal((row.Number("smallest_mm"), row.Number("largest_mm")), (shims.Smallest.Millimetres, shims.Largest.Millimetres));
        });

    [Fact]
    public void The_stores_keep_every_part_that_the_engines_name() => Assert.All(SeedFile.All, model =>
    {
        var specification = model.Specification;
        var named = specification.ServiceItems.SelectMany(i => i.Parts).Select(p => p.PartCode)
            .Concat(specification.Joints.SelectMany(j => j.Seals).Select(s => s.PartCode))
            .Concat(specification.Fasteners.SelectMany(f => f.Seals).Select(s => s.PartCode))
            .Concat(specification.Joints.Where(j => j.Sealant is not null).Select(j => j.Sealant!.PartCode))
            .Concat(specification.Shims is null ? [] : [specification.Shims.PartCode]);
        Assert.Empty(named.Except(Words("parts", "code")));
    });

    [Fact]
    public void The_workshop_has_every_skill_and_special_tool_that_the_engines_ask_for()
    {
        var items = SeedFile.All.SelectMany(m => m.Specification.ServiceItems).ToList();
        Assert.Empty(items.SelectMany(i => i.Skills).Except(Lists("people", "skills")));
        Assert.Empty(items.SelectMany(i => i.SpecialTools).Except(Lists("specialTools", "capabilities")));
    }

    [Fact]
    public void The_workshop_is_as_large_as_it_should_be()
    {
        Assert.Equal(3, Workshop.GetProperty("bays").GetArrayLength());
        Assert.Equal(5, Workshop.GetProperty("people").EnumerateArray().Count(p => p.TryGetProperty("initials", out _)));
        Assert.Contains("invented", Workshop.GetProperty("name").GetString()!, StringComparison.Ordinal);
    }

    private static Dictionary<int, double> CompressionDeadCentres(SeedEngineModel model)
    {
        // A twin on one crank pin, 80 degrees between its cylinders: the rear one is at its dead centre 80 degrees before the
        // front one in running direction, and fires a turn after that, at 360 - 80.
        if (model == SeedFile.VTwin)
        {
            return new() { [1] = 0, [2] = 360 - 80 };
        }

        var order = model.Specification.Layout.FiringOrder;
        return order.Select((cylinder, place) => (cylinder, place))
            .ToDictionary(p => p.cylinder, p => p.place * Cycle / order.Count);
    }

    private static (double Diameter, double Pitch) Thread(Fastener fastener)
    {
        var parts = fastener.Thread[1..].Split('x');
        return (double.Parse(parts[0], CultureInfo.InvariantCulture), double.Parse(parts[1], CultureInfo.InvariantCulture));
    }

    private static IEnumerable<string> Words(string list, string member) =>
        Workshop.GetProperty(list).EnumerateArray().Select(e => e.GetProperty(member).GetString()!);

    private static IEnumerable<string> Lists(string list, string member) =>
        Workshop.GetProperty(list).EnumerateArray()
            .Where(e => e.TryGetProperty(member, out _))
            .SelectMany(e => e.GetProperty(member).EnumerateArray().Select(v => v.GetString()!));
}
