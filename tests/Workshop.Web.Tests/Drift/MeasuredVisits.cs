using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Tests.Drift;

/// <summary>Rows that a visit leaves behind, for tests of what comes after readings and shims.</summary>
internal static class MeasuredVisits
{
    /// <summary>A motorcycle checked once a year, every 20,000 km, one lobe read as found at each visit.</summary>
    public static async Task<TestVisit> ReadOverYears(
        this WorkshopApp app, ValveKey valve, params IReadOnlyList<(decimal Go, decimal NoGo)> readings)
    {
        var now = app.Clock.Now;
        TestVisit? visit = null;
        for (var year = 0; year < readings.Count; year++)
        {
            app.Clock.Now = now - Duration.FromDays(365 * (readings.Count - 1 - year));
            var km = 20_000 * (year + 1);
            visit = visit is null ? await app.CheckedIn(km) : await app.CheckedInAgain(visit, km);
            await app.Read(visit, valve, Stage.AsFound, readings[year].Go, readings[year].NoGo);
        }

        app.Clock.Now = now;
        await app.RewriteForecasts(visit!);
        return visit!;
    }

    public static Task Read(
        this WorkshopApp app, TestVisit visit, ValveKey valve, Stage stage, decimal? go, decimal? noGo, int lobe = 1) =>
        app.Look(async db =>
        {
            db.ClearanceReadings.Add(new ClearanceReading
            {
                Id = NewId.At(app.Clock.Now), EngineId = visit.EngineId, JobCardNumber = visit.Number, Valve = valve, Lobe = lobe,
                Stage = stage, Attempt = 1,
                Kind = go is null ? BracketKind.NoneEnters : noGo is null ? BracketKind.NextNotTried : BracketKind.GoAndNoGo,
                Go = go is { } g ? Clearance.FromMillimetres(g) : null,
                NoGo = noGo is { } n ? Clearance.FromMillimetres(n) : null,
                OdometerReadingId = visit.OdometerReadingId!.Value, MeasuredAt = app.Clock.Now,
                MeasuredBy = TestWorkshop.Technician, EnteredBy = TestWorkshop.Technician, EnteredAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync();
        });

    public static Task Shim(this WorkshopApp app, TestVisit visit, ValveKey valve, Stage stage, decimal? mm) => app.Look(async db =>
    {
        db.ShimObservations.Add(new ShimObservation
        {
            Id = NewId.At(app.Clock.Now), EngineId = visit.EngineId, JobCardNumber = visit.Number, Valve = valve, Stage = stage,
            Thickness = mm is { } thickness ? ShimThickness.FromMillimetres(thickness) : null,
            OdometerReadingId = visit.OdometerReadingId!.Value, MeasuredAt = app.Clock.Now,
            MeasuredBy = TestWorkshop.Technician, EnteredBy = TestWorkshop.Technician, EnteredAt = app.Clock.Now,
        });
        return await db.SaveChangesAsync();
    });

    public static Task RewriteForecasts(this WorkshopApp app, TestVisit visit) => app.Look(async db =>
    {
        await using var transaction = await db.Database.BeginTransactionAsync();
        await ForecastRows.Rewrite(db, visit.EngineId, app.Clock, CancellationToken.None);
        await DueRows.Rewrite(db, visit.MotorcycleId, app.Clock, CancellationToken.None);
        await transaction.CommitAsync();
        return true;
    });
}
