using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using SkiaSharp;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Http;
using Workshop.Web.Tests.Estimates;
using Workshop.Web.Tests.JobCards;
using Workshop.Web.Tests.Photos;
using Xunit;

namespace Workshop.Web.Tests.Records;

/// <summary>Visits that are signed off, so that they have a record.</summary>
internal static class RecordedVisits
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>The check alone, which takes nothing out of the stores.</summary>
    public static Dictionary<string, Likelihood> CheckOnly { get; } = new() { [TestEngines.ValveCheck] = Likelihood.Certain };

    public static async Task<TestVisit> SignedOff(this WorkshopApp app, IReadOnlyDictionary<string, Likelihood>? items = null, int odometerKm = 24_000)
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(odometerKm, items ?? CheckOnly);
        await app.Finish(visit, technician);
        await SignOff(technician, visit, odometerKm);
        return visit;
    }

    /// <summary>Measured, one valve set and left too wide, an agreed estimate, and a finding with a photo that the owner declined.</summary>
    public static async Task<(TestVisit Visit, Guid Finding, Guid Photo)> RichlySignedOff(this WorkshopApp app)
    {
        await app.SetPrices();
        var (technician, advisor) = (await app.As(Roles.Technician), await app.As(Roles.Advisor));
        var visit = await app.CheckedIn();
        await Agree(app, advisor, visit);
        await app.MeasureAll(visit);
        await app.Begin(visit, TestEngines.Adjustment);
        await app.FitShim(visit, TestEngines.Intake(1));
        await FinishedVisits.TickAll(technician, visit);
        await FinishedVisits.InspectSeals(technician, visit);
        await FinishedVisits.ReadCautions(technician, visit);
        await app.Measure(visit, new LobeKey(TestEngines.Intake(1)), Stage.AsLeft, 0.15m);
        await app.Measure(visit, new LobeKey(TestEngines.Intake(1), 2), Stage.AsLeft, 0.23m);
        await app.Measure(visit, new LobeKey(TestEngines.Intake(2)), Stage.AsLeft, 0.15m);
        await app.Measure(visit, new LobeKey(TestEngines.Intake(2), 2), Stage.AsLeft, 0.15m);
        var (finding, photo) = await Find(technician, advisor, visit);
        (await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new
        {
            odometer = 24_012, acceptsOutsideLimits = true, remark = "Next shim ordered.",
            notDone = new[] { new { code = TestEngines.OilService, reason = "The owner does it himself." } },
        }, Ct)).EnsureSuccessStatusCode();
        return (visit, finding, photo);
    }

    public static async Task SignOff(HttpClient technician, TestVisit visit, int odometer) =>
        (await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer }, Ct)).EnsureSuccessStatusCode();

    /// <summary>The address of a new link to the record of a card, and its id.</summary>
    public static async Task<(string Path, Guid Id)> Link(this HttpClient advisor, TestVisit visit, int? days = null)
    {
        var made = await advisor.PostAsJsonAsync($"{visit.Api}/record/links", new { days }, Ct);
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        var link = await made.Content.ReadFromJsonAsync<JsonElement>(Ct);
        return (link.GetProperty("path").GetString()!, link.GetProperty("id").GetGuid());
    }

    /// <summary>Gives the motorcycle of a visit an owner.</summary>
    public static Task<Guid> GiveOwner(this WorkshopApp app, TestVisit visit, string name, string? email = null) => app.Look(async db =>
    {
        var person = new Person { Id = NewId.At(app.Clock), Name = name, Email = email };
        db.People.Add(person);
        (await db.Motorcycles.SingleAsync(m => m.Id == visit.MotorcycleId, Ct)).OwnerId = person.Id;
        await db.SaveChangesAsync(Ct);
        return person.Id;
    });

    /// <summary>A photo of a finding.</summary>
    public static async Task<Guid> AddPhoto(this HttpClient technician, TestVisit visit, Guid finding, string caption)
    {
        using var form = TestPictures.Form(("worn.png", TestPictures.Plain(SKEncodedImageFormat.Png)));
        form.Add(new StringContent(finding.ToString()), "findingId");
        form.Add(new StringContent(caption), "caption");
        using var request = new HttpRequestMessage(HttpMethod.Post, $"{visit.Api}/photos") { Content = form };
        request.Headers.Add(Caller.KeyHeader, $"photo of {finding}");
        var sent = await technician.SendAsync(request, Ct);
        sent.EnsureSuccessStatusCode();
        return (await sent.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("photos")[0].GetProperty("id").GetGuid();
    }

    public static async Task<Guid> Find(this HttpClient technician, TestVisit visit, string gravity)
    {
        var found = await technician.PostAsJsonAsync($"{visit.Api}/findings", new { place = "Front wheel bearing", text = "Play and noise.", gravity }, Ct);
        found.EnsureSuccessStatusCode();
        return (await found.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("id").GetGuid();
    }

    private static async Task<(Guid Finding, Guid Photo)> Find(HttpClient technician, HttpClient advisor, TestVisit visit)
    {
        var id = await technician.Find(visit, "unsafe");
        var photo = await technician.AddPhoto(visit, id, "Worn race");
        (await advisor.PostAsJsonAsync($"/api/v1/findings/{id}/answers", new
        {
            decision = "declined", way = "telephone", bySomebodyElse = true, remark = "her brother", toldOfDanger = true,
        }, Ct)).EnsureSuccessStatusCode();
        return (id, photo);
    }

    /// <summary>An agreed estimate of one typed line: 1 hour at 90, with 20 % tax 108.</summary>
    private static async Task Agree(WorkshopApp app, HttpClient advisor, TestVisit visit)
    {
        var made = await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new
        {
            others = new object[] { new { text = "All of it", minutes = 60 } },
            lines = await Dropped(advisor, visit),
        }, Ct);
        made.EnsureSuccessStatusCode();
        var id = (await made.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("id").GetGuid();
        (await advisor.PostAsJsonAsync($"/api/v1/estimates/{id}/answers", new { decision = "agreed", way = "inPerson", bySomebodyElse = true, remark = "her brother" }, Ct)).EnsureSuccessStatusCode();
    }

    private static async Task<object[]> Dropped(HttpClient advisor, TestVisit visit)
    {
        var preview = await advisor.GetFromJsonAsync<JsonElement>($"{visit.Api}/estimates/preview", Ct);
        return [.. preview.GetProperty("lines").EnumerateArray().Select(l => new { key = l.GetProperty("key").GetString(), dropped = true })];
    }
}
