using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using SkiaSharp;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Http;
using Workshop.Web.Tests.Estimates;
using Workshop.Web.Tests.JobCards;
using Workshop.Web.Tests.Motorcycles;
using Workshop.Web.Tests.Photos;
using Xunit;

namespace Workshop.Web.Tests.Findings;

public sealed class FindingTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_finding_waits_for_its_price_and_answer_holds_the_sign_off_and_is_done()
    {
        await app.SetPrices();
        var (advisor, technician) = (await app.As(Roles.Advisor), await app.As(Roles.Technician));
        var visit = await app.Finish(await app.CheckedIn(), technician);
        var finding = await Record(technician, visit, "unsafe");
        Assert.Equal("Front wheel bearing: found, but neither priced nor answered by the owner.", await InTheWay(technician, visit));
        Assert.Equal("waitsForPrice", (await Waiting(advisor, finding))!.Value.GetProperty("state").GetString());

        var early = await Answer(advisor, finding, new { decision = "agreed", way = "telephone", bySomebodyElse = true, remark = "her brother" });
        Assert.Equal((HttpStatusCode.Conflict, "Front wheel bearing: nobody has said yet what it costs; price it first, so that the owner knows what is agreed."), (early.StatusCode, await early.Detail()));
        var priced = await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new
        {
            findingId = finding, others = new object[] { new { text = "Renew the bearing", minutes = 60 }, new { text = "Bearing", unitPrice = 30, quantity = 1 } },
        }, Ct);
        Assert.Equal(HttpStatusCode.Created, priced.StatusCode);
        Assert.Equal("Front wheel bearing: the owner has not said yes or no yet.", await InTheWay(technician, visit));
        Assert.Equal(144m, (await Waiting(advisor, finding))!.Value.GetProperty("gross").GetDecimal());

        (await Answer(advisor, finding, new { decision = "agreed", way = "telephone", bySomebodyElse = true, remark = "her brother" })).EnsureSuccessStatusCode();
        Assert.Null(await Waiting(advisor, finding));
        Assert.Equal("Front wheel bearing: the owner agreed, but nobody has said that it is done.", await InTheWay(technician, visit));
        Assert.Equal(HttpStatusCode.OK, (await technician.Change($"/api/v1/findings/{finding}/done", new { }, $"/api/v1/findings/{finding}")).StatusCode);
        Assert.Null(await InTheWay(technician, visit));
    }

    [Fact]
    public async Task A_yes_begins_the_service_item_and_a_no_to_danger_says_that_the_owner_was_told()
    {
        await app.SetPrices();
        var (advisor, technician) = (await app.As(Roles.Advisor), await app.As(Roles.Technician));
        var visit = await app.CheckedIn(items: new Dictionary<string, Domain.JobCards.Likelihood> { [TestEngines.ValveCheck] = Domain.JobCards.Likelihood.Certain });
        var oil = await Record(technician, visit, "soon", TestEngines.OilService);
        (await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { findingId = oil }, Ct)).EnsureSuccessStatusCode();
        var yes = await Answer(advisor, oil, new { decision = "agreed", way = "inPerson", bySomebodyElse = true, remark = "at the counter" });
        Assert.Equal("Engine oil and filter", (await yes.Json()).GetProperty("begun").GetString());
        Assert.NotNull(await app.Look(db => db.JobCardItems.Where(i => i.JobCardNumber == visit.Number && i.ServiceItemCode == TestEngines.OilService).Select(i => i.StartedAt).SingleAsync(Ct)));

        var bearing = await Record(technician, visit, "unsafe");
        var untold = await Answer(advisor, bearing, new { decision = "declined", way = "telephone", bySomebodyElse = true, remark = "her brother" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, untold.StatusCode);
        Assert.StartsWith("toldOfDanger is false: Front wheel bearing is not safe.", await untold.Detail(), StringComparison.Ordinal);
        (await Answer(advisor, bearing, new { decision = "declined", way = "telephone", bySomebodyElse = true, remark = "her brother", toldOfDanger = true })).EnsureSuccessStatusCode();

        var pages = await TestPages.SignedIn(app, Roles.Technician);
        Assert.Contains("Not to be ridden like this: Front wheel bearing", (await pages.Open(visit.Pages)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Photos_are_sent_together_once_served_to_the_signed_in_and_taken_out_by_the_manager()
    {
        var (technician, manager) = (await app.As(Roles.Technician), await app.As(Roles.Manager));
        var visit = await app.CheckedIn();
        var finding = await Record(technician, visit, "watch");
        var first = await Send(technician, visit, finding, "photos-1", ("a.jpg", TestPictures.JpegWithExif(6)), ("b.webp", TestPictures.WebPWithExif()));
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        var again = await Send(technician, visit, finding, "photos-1", ("a.jpg", TestPictures.JpegWithExif(6)), ("b.webp", TestPictures.WebPWithExif()));
        Assert.Equal(await first.Content.ReadAsStringAsync(Ct), await again.Content.ReadAsStringAsync(Ct));
        Assert.Equal(2, await app.Look(db => db.Photos.CountAsync(p => p.JobCardNumber == visit.Number, Ct)));
        var other = await Send(technician, visit, finding, "photos-1", ("a.jpg", TestPictures.Plain(SKEncodedImageFormat.Jpeg)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);

        var id = (await first.Json()).GetProperty("photos")[0].GetProperty("id").GetGuid();
        var served = await technician.GetAsync(new Uri($"/api/v1/photos/{id}/content", UriKind.Relative), Ct);
        Assert.Equal(("image/jpeg", "nosniff", "default-src 'none'; sandbox; frame-ancestors 'none'"),
            (served.Content.Headers.ContentType!.MediaType, served.Headers.GetValues("X-Content-Type-Options").Single(), served.Headers.GetValues("Content-Security-Policy").Single()));
        Assert.True(served.Headers.CacheControl!.NoStore);
        Assert.NotEqual(HttpStatusCode.OK, (await app.Anonymous().GetAsync(new Uri($"/photos/{id}", UriKind.Relative), Ct)).StatusCode);

        var version = (await (await technician.GetAsync(new Uri($"/api/v1/findings/{finding}", UriKind.Relative), Ct)).Json()).GetProperty("photos")[0].GetProperty("rowVersion").GetUInt32();
        Assert.Equal(HttpStatusCode.Forbidden, (await technician.Put($"/api/v1/photos/{id}/removal", new { reason = "a face" }, $"\"{version}\"")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await manager.Put($"/api/v1/photos/{id}/removal", new { reason = "a face" }, $"\"{version}\"")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await technician.GetAsync(new Uri($"/api/v1/photos/{id}/content", UriKind.Relative), Ct)).StatusCode);
        Assert.Equal(0, await app.Look(db => db.Photos.Where(p => p.Id == id).Select(p => p.Content.Length + p.Thumbnail.Length).SingleAsync(Ct)));
    }

    [Fact]
    public async Task One_bad_file_keeps_all_of_them_out()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn();
        var answer = await Send(technician, visit, null, "photos-2", ("a.jpg", TestPictures.Plain(SKEncodedImageFormat.Jpeg)), ("b.jpg", "no picture"u8.ToArray()));

        Assert.Equal((HttpStatusCode.UnprocessableEntity, "files[1] is no picture: JPEG, PNG and WebP are allowed, whatever the file is called."), (answer.StatusCode, await answer.Detail()));
        Assert.Equal(0, await app.Look(db => db.Photos.CountAsync(p => p.JobCardNumber == visit.Number, Ct)));
    }

    private static async Task<Guid> Record(HttpClient technician, TestVisit visit, string gravity, string? serviceItem = null)
    {
        var answer = await technician.PostAsJsonAsync($"{visit.Api}/findings", new { place = "Front wheel bearing", text = "Play and noise.", gravity, serviceItem }, Ct);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return (await answer.Json()).GetProperty("id").GetGuid();
    }

    private static Task<HttpResponseMessage> Answer(HttpClient advisor, Guid finding, object body) =>
        advisor.PostAsJsonAsync($"/api/v1/findings/{finding}/answers", body, Ct);

    private static async Task<string?> InTheWay(HttpClient client, TestVisit visit) =>
        (await client.GetFromJsonAsync<JsonElement>($"{visit.Api}/sign-off", Ct)).GetProperty("reasons").EnumerateArray()
            .Where(r => r.GetProperty("place").GetString() == "findings").Select(r => r.GetProperty("sentence").GetString()).SingleOrDefault();

    private static async Task<JsonElement?> Waiting(HttpClient advisor, Guid finding)
    {
        var rows = (await advisor.GetFromJsonAsync<JsonElement>("/api/v1/findings/waiting", Ct)).GetProperty("rows").EnumerateArray()
            .Where(r => r.GetProperty("findingId").ValueKind == JsonValueKind.String && r.GetProperty("findingId").GetGuid() == finding).ToList();
        return rows.Count == 0 ? null : Assert.Single(rows);
    }

    private static async Task<HttpResponseMessage> Send(HttpClient client, TestVisit visit, Guid? finding, string key, params (string, byte[])[] files)
    {
        using var form = TestPictures.Form(files);
        if (finding is { } id)
        {
            form.Add(new StringContent(id.ToString()), "findingId");
        }

        using var request = new HttpRequestMessage(HttpMethod.Post, $"{visit.Api}/photos") { Content = form };
        request.Headers.Add(Caller.KeyHeader, key);
        return await client.SendAsync(request, Ct);
    }
}
