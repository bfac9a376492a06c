using System.Globalization;
using System.Net;
using MathNet.Numerics.LinearAlgebra;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.People;
using Workshop.Domain.Tests;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Imports;

/// <summary>
/// drift/caseA.csv, 24 simulated valves with 139 readings, reshaped into worksheets of six motorcycles of four valves. Shims
/// were never measured: a chain of the file begins with a reading as left. The slopes in the books must be those of least
/// squares on a dense matrix with a column for x and one for each chain.
/// </summary>
public sealed class CaseATests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const int ValvesEach = 4;

    // So slow that every 10 km has a day of its own, and one motorcycle never two odometer readings a day.
    private const double KilometresPerYear = 2000;

    private static readonly string[] Valves = ["1-intake-1", "1-exhaust-1", "2-intake-1", "2-exhaust-1"];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_case_of_old_worksheets_goes_through_the_import_to_its_slopes()
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
        foreach (var valve in rows.GroupBy(r => r.Valve))
        {
            Compare(await ForecastOf(motorcycles[valve.First().Motorcycle], valve.First().Key), [.. valve]);
        }
    }

    private static void Compare(ClearanceForecast forecast, IReadOnlyList<Row> rows)
    {
        var chains = rows.Select(r => r.Chain).Distinct().ToList();
        var design = Matrix<double>.Build.Dense(rows.Count, chains.Count + 1, (row, column) =>
            column == 0 ? rows[row].X : chains[column - 1] == rows[row].Chain ? 1 : 0);
        var y = Vector<double>.Build.Dense([.. rows.Select(r => (r.Low + r.High) / 2)]);
        var fit = design.QR().Solve(y);
        var freedom = rows.Count - chains.Count - 1;

        Assert.Equal(rows.Count, forecast.Readings);
        Assert.Equal(fit[0], (double)forecast.DriftMmPer10000Km!.Value, 1e-6);
        if (freedom < 1)
        {
            Assert.Null(forecast.DriftStandardError);
            return;
        }

        // The scatter is never taken below that of the 0.01 mm blades themselves.
        var residual = (y - (design * fit)).L2Norm();
        var variance = Math.Max(residual * residual / freedom, 0.01 * 0.01 / 12);
        Assert.Equal(
            Math.Sqrt(variance * (design.Transpose() * design).Inverse()[0, 0]), (double)forecast.DriftStandardError!.Value, 1e-6);
    }

    private Task<ClearanceForecast> ForecastOf(Guid motorcycle, string valve) => app.Look(async db => (await (
        from f in db.ClearanceForecasts
        join fitting in db.EngineFittings on f.EngineId equals fitting.EngineId
        where fitting.MotorcycleId == motorcycle && f.Lobe == 1
        select f).ToListAsync(Ct)).Single(f => f.Valve.ToString() == valve));

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
