using System.Globalization;
using System.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.People;
using Workshop.Domain.Statistics.Paths;
using Workshop.Domain.Tests;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Xunit;

namespace Workshop.Web.Tests.Imports;

/// <summary>
/// drift/caseA.csv, 24 simulated valves with 139 readings, reshaped into worksheets of six motorcycles of four valves. Shims
/// were never measured: a chain of the file begins with a reading as left. What the import leaves in the books must give the
/// log-likelihood and the slopes that brute force in R 4.2.2 found for the file (shared/check-values/SOURCES.md).
/// </summary>
public sealed class CaseATests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const int ValvesEach = 4;

    // So slow that every 10 km has a day of its own, and one motorcycle never two odometer readings a day.
    private const double KilometresPerYear = 2000;

    private static readonly string[] Valves = ["1-intake-1", "1-exhaust-1", "2-intake-1", "2-exhaust-1"];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_case_of_old_worksheets_goes_through_the_import_to_its_likelihood_and_slopes()
    {
        var rows = CsvTable.Read("caseA", CheckValues.Lines("drift/caseA.csv")).Rows.Select(Row.Of).ToList();
        var motorcycles = new Dictionary<int, Guid>();
        foreach (var number in rows.Select(r => r.Motorcycle).Distinct())
        {
            motorcycles.Add(number, await app.Motorcycle($"CASE {number}"));
        }

        var manager = await app.As(Roles.Manager);

        var answer = await manager.SendCsv(Worksheets.File(rows.Select((r, i) => r.Written(startsChain: i > 0 && rows[i - 1].Valve == r.Valve && rows[i - 1].Chain != r.Chain))));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var said = await answer.Json();
        Assert.Equal((139, 6, 139), (said.GetProperty("lines").GetInt32(), said.GetProperty("motorcycles").GetInt32(), said.GetProperty("readings").GetInt32()));
        var import = said.GetProperty("importId").GetGuid();
        Assert.Equal(139, await app.Look(db => db.ClearanceReadings.CountAsync(r => r.ImportId == import, Ct)));
        Assert.Equal(
            rows.GroupBy(r => r.Valve).Sum(v => v.Select(r => r.Chain).Distinct().Count() - 1),
            await app.Look(db => db.ValveEvents.CountAsync(e => e.ImportId == import && e.Kind == ValveEventKind.ChangeUnknown, Ct)));
        Compare(await LegsOf(motorcycles.Values), rows, motorcycles);
    }

    private static void Compare(
        Dictionary<Guid, EngineDrift> engines, List<Row> rows, Dictionary<int, Guid> motorcycles)
    {
        var builder = new PathDataBuilder();
        foreach (var valve in rows.GroupBy(r => r.Valve))
        {
            var history = engines[motorcycles[valve.First().Motorcycle]].Engine.Lobes
                .Single(l => l.Lobe.Lobe == 1 && l.Lobe.Valve.ToString() == valve.First().Key);
            Assert.Equal(valve.GroupBy(r => r.Chain).Select(c => c.Count()), history.Legs.Select(l => l.Readings.Count));
            builder.Cluster();
            builder.Group();
            foreach (var leg in history.Legs)
            {
                builder.Leg();
                foreach (var reading in leg.Readings)
                {
                    // The file counts x from the engine's beginning, whatever the chain.
                    builder.Reading(
                        (double)reading.At.Metres / (double)LobeHistory.MetresPerX, (double)reading.LowerMm!.Value, (double)reading.UpperMm!.Value);
                }
            }
        }

        var data = builder.Build();
        Assert.Equal(-234.849313156, IntervalPaths.LogLikelihood(data, Maximum, cancellation: Ct), 1e-6);
        foreach (var row in CsvTable.Read("slopes", CheckValues.Lines("drift/caseA_slopes.csv")).Rows)
        {
            var posterior = IntervalPaths.Posterior(data, Maximum, (int)row.Number("valve") - 1);
            Assert.Equal((double)row.Number("mean"), posterior.SlopeMean, 1e-7);
            Assert.Equal((double)row.Number("sd"), posterior.SlopeDeviation, 1e-6);
        }
    }

    /// <summary>Where the reference has its maximum: means and standard deviations of levels and slopes, sigma.</summary>
    private static PathParameters Maximum { get; } = new()
    {
        LevelMean = [0.3122464042],
        LevelDeviation = [0.0185241237],
        SlopeMean = [-0.0121338659],
        SlopeDeviation = [0.0116632767],
        Sigma = 0.0052896995,
    };

    private Task<Dictionary<Guid, EngineDrift>> LegsOf(IEnumerable<Guid> motorcycles) => app.Look(async db =>
    {
        var wanted = motorcycles.ToList();
        var fitted = await db.EngineFittings.Where(f => wanted.Contains(f.MotorcycleId)).ToDictionaryAsync(f => f.EngineId, f => f.MotorcycleId, Ct);
        return (await EngineDrift.Load(db, fitted.Keys, Ct)).ToDictionary(e => fitted[e.Engine.EngineId]);
    });

    private sealed record Row(int Valve, string Chain, double X, double Low, double High)
    {
        public int Motorcycle => ((Valve - 1) / ValvesEach) + 1;

        public string Key => Valves[(Valve - 1) % ValvesEach];

        public static Row Of(CsvRow row) => new(
            int.Parse(row["valve"], CultureInfo.InvariantCulture), row["chain"], (double)row.Number("x"), (double)row.Number("lo"), (double)row.Number("hi"));

        public string Written(bool startsChain)
        {
            var kilometres = (int)Math.Round(X * 10_000);
            var day = new LocalDate(1980, 1, 1).PlusDays((int)Math.Round(kilometres / KilometresPerYear * 365.2425));
            return string.Create(CultureInfo.InvariantCulture,
                $"CASE {Motorcycle},{day:uuuu-MM-dd},{kilometres},{Key},{(startsChain ? "as left" : "as found")},{Low:0.00},{High:0.00},");
        }
    }
}
