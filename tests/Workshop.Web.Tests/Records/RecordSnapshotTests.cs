using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Domain.Records;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Workshop.Web.Http;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.Records;

public sealed class RecordSnapshotTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nothing_that_comes_later_changes_a_record()
    {
        var technician = await app.As(Roles.Technician);
        var (visit, _, _) = await app.RichlySignedOff();
        var before = await Raw(technician, visit);
        var beforeText = await PageText(visit);

        // Another specification of the engine model, other prices, another name of the workshop and of who signed.
        await app.Look(async db =>
        {
            var version = await db.EngineModelVersions.AsNoTracking().SingleAsync(v => v.Id == visit.EngineModelVersionId, Ct);
            var specification = version.Specification with
            {
                Limits = [.. version.Specification.Limits.Select(l => l with { Lower = Clearance.FromMillimetres(0.30m), Upper = Clearance.FromMillimetres(0.40m), SetTo = Clearance.FromMillimetres(0.35m) })],
            };
            db.EngineModelVersions.Add(new EngineModelVersion
            {
                Id = Domain.NewId.At(app.Clock), EngineModelId = version.EngineModelId, Version = 2, Specification = specification,
                CreatedBy = TestWorkshop.Manager, CreatedAt = app.Clock.Now,
            });
            (await db.EngineModels.SingleAsync(m => m.Id == version.EngineModelId, Ct)).CurrentVersion = 2;
            (await db.WorkshopProfiles.SingleAsync(Ct)).LabourNetPerHour = 500;
            (await db.WorkshopProfiles.SingleAsync(Ct)).Name = "Another name";
            (await db.People.SingleAsync(p => p.Id == TestWorkshop.Technician, Ct)).Name = "Other Name";
            (await db.Motorcycles.SingleAsync(m => m.Id == visit.MotorcycleId, Ct)).Registration = "NEW PLATE";
            (await db.Instruments.SingleAsync(i => i.Id == TestWorkshop.FeelerSet, Ct)).CalibratedOn = new LocalDate(2026, 3, 3);
            return await db.SaveChangesAsync(Ct);
        });

        // The next visit finds other clearances, and a refit gives the engine forecasts that it did not have.
        app.Clock.Now += Duration.FromDays(200);
        technician = await app.As(Roles.Technician);
        var next = await app.CheckedInAgain(visit, 30_000);
        await app.Finish(next, technician);
        await RecordedVisits.SignOff(technician, next, 30_000);
        await Refit();
        Assert.True(await app.Look(db => db.ClearanceForecasts.AnyAsync(f => f.EngineId == visit.EngineId && f.ComputedAt == app.Clock.Now, Ct)));

        Assert.Equal(before, await Raw(technician, visit));
        Assert.Equal(beforeText, await PageText(visit));
        Assert.NotEqual(before, await Raw(technician, next));
    }

    /// <summary>Documents are read for years: what was added to them since may be absent.</summary>
    [Fact]
    public async Task A_record_that_was_written_before_something_was_added_to_records_is_still_read()
    {
        var visit = await app.SignedOff();
        var document = await app.Look(db => db.IssuedRecords.AsNoTracking().Where(r => r.JobCardNumber == visit.Number).Select(r => r.Document).SingleAsync(Ct));
        var older = JsonSerializer.SerializeToNode(document, WorkshopJson.Options)!.AsObject();
        Assert.All(["arrival", "cylinders", "plugs", "afterWork", "comebackOf"], added => Assert.True(older.Remove(added), added));

        var read = older.Deserialize<ServiceRecord>(WorkshopJson.Options)!;

        Assert.Equal((visit.Number, document.Clearances.Count), (read.JobCardNumber, read.Clearances.Count));
        Assert.Empty(read.Arrival.Select(a => a.What).Concat(read.AfterWork.Select(a => a.What)));
    }

    private static Task<string> Raw(HttpClient client, TestVisit visit) => client.GetStringAsync(new Uri($"{visit.Api}/record", UriKind.Relative), Ct);

    private async Task<string> PageText(TestVisit visit)
    {
        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open($"{visit.Pages}/record");
        return string.Concat(page.Html.QuerySelectorAll(".paper-head > div, .paper-table").Select(e => e.TextContent));
    }

    private Task<bool> Refit() => app.Look(async db =>
    {
        await Refits.Request(db, [TestWorkshop.EngineModel], app.Clock, Ct);
        await new ModelRefit(db, app.Clock, TestWorkshop.EngineModel).Run(Ct);
        return true;
    });
}
