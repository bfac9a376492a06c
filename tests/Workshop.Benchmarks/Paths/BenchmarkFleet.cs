using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Benchmarks.Paths;

/// <summary>
/// Valves with two legs of three readings 25,000 km apart, eight an engine, seen through blades: made up, belonging to no engine.
/// </summary>
internal static class BenchmarkFleet
{
    public const int ReadingsPerValve = 6;

    private const int ValvesPerEngine = 8;

    /// <summary>What the readings were drawn from, in mm and mm per 10,000 km.</summary>
    public static PathParameters Truth { get; } = new()
    {
        LevelMean = [0.31],
        LevelDeviation = [0.02],
        SlopeMean = [-0.012],
        SlopeDeviation = [0.01],
        Sigma = 0.006,
    };

    /// <summary>Standard deviation of what an engine's slopes share, in the fleets where they do.</summary>
    public const double BetweenEngines = 0.004;

    public static PathData Build(int valves, double step, bool shared = false)
    {
        var builder = new PathDataBuilder();
        Draw(valves, step, shared, (valve, leg, x, lower) =>
        {
            if (leg == 0 && x == 0)
            {
                if (valve % ValvesPerEngine == 0)
                {
                    builder.Cluster();
                }

                builder.Group();
            }

            if (x == 0)
            {
                builder.Leg();
            }

            builder.Reading(x, lower, lower + step);
        });
        return builder.Build();
    }

    /// <summary>The middles of the same readings as a table for R.</summary>
    public static void WriteMiddles(TextWriter to, int valves, double step, bool shared)
    {
        to.WriteLine("engine,valve,leg,x,y");
        Draw(valves, step, shared, (valve, leg, x, lower) =>
            to.WriteLine(FormattableString.Invariant($"{valve / ValvesPerEngine},{valve},{valve}.{leg},{x},{lower + (step / 2)}")));
    }

    private static void Draw(int valves, double step, bool shared, Action<int, int, double, double> take)
    {
        var random = new RandomSource(7);
        var common = 0.0;
        for (var valve = 0; valve < valves; valve++)
        {
            common = !shared ? 0 : valve % ValvesPerEngine == 0 ? random.Normal(0, BetweenEngines) : common;
            var slope = common + random.Normal(Truth.SlopeMean[0], Truth.SlopeDeviation[0]);
            for (var leg = 0; leg < 2; leg++)
            {
                var level = random.Normal(Truth.LevelMean[0], Truth.LevelDeviation[0]);
                for (var k = 0; k < 3; k++)
                {
                    var x = 2.5 * k;
                    take(valve, leg, x, step * Math.Floor((level + (slope * x) + random.Normal(0, Truth.Sigma)) / step));
                }
            }
        }
    }
}
