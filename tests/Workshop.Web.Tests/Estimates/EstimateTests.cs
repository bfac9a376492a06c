using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Hosting;
using Workshop.Web.Tests.Motorcycles;
using Workshop.Web.Tests.Paper;
using Xunit;

namespace Workshop.Web.Tests.Estimates;

public sealed class EstimateTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly Dictionary<string, Likelihood> Oil = new() { [TestEngines.OilService] = Likelihood.Certain };

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_estimate_is_made_agreed_and_compared_with_what_the_visit_becomes()
    {
        await app.SetPrices();
        var (advisor, technician) = (await app.As(Roles.Advisor), await app.As(Roles.Technician));
        var visit = await app.CheckedIn(items: Oil);

        // 30 min at 90, a filter, 3.2 l at 12.50, a ring: 45 + 11.50 + 40 + 0.35 = 96.85; 20 % of it 19.37.
        var made = await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { validUntil = "2026-04-01" }, Ct);
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        var estimate = await made.Json();
        var sums = estimate.GetProperty("sums");
        Assert.Equal((96.85m, 19.37m, 116.22m), (sums.GetProperty("net").GetDecimal(), sums.GetProperty("tax").GetDecimal(), sums.GetProperty("gross").GetDecimal()));
        var id = estimate.GetProperty("id").GetGuid();
        (await advisor.PostAsJsonAsync($"/api/v1/estimates/{id}/answers", new { decision = "agreed", way = "telephone", bySomebodyElse = true, remark = "his wife" }, Ct)).EnsureSuccessStatusCode();

        var list = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/estimates", Ct);
        Assert.Equal(116.22m, list.GetProperty("agreed").GetProperty("gross").GetDecimal());
        Assert.Empty(list.GetProperty("changes").EnumerateArray());
        await app.Look(db =>
        {
            db.JobCardItems.Add(new JobCardItem { JobCardNumber = visit.Number, ServiceItemCode = TestEngines.ValveCheck, Likelihood = Likelihood.Certain });
            return db.SaveChangesAsync(Ct);
        });
        list = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/estimates", Ct);
        Assert.Equal(["Tank and head cover off", "Valve clearance check"], list.GetProperty("changes").EnumerateArray().Select(c => c.GetProperty("text").GetString()));

        // 40 and 90 minutes more at 90 an hour: 195 net, 234 with tax.
        Assert.Equal(116.22m + 234m, list.GetProperty("wouldNowBe").GetProperty("gross").GetDecimal());
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        Assert.Contains("Would now be", (await pages.Open(visit.Pages)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_that_was_recorded_meanwhile_is_shown_and_not_overtaken_unseen()
    {
        await app.SetPrices();
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.CheckedIn(items: Oil);
        var id = (await (await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { validUntil = "2026-04-01" }, Ct)).Json()).GetProperty("id").GetGuid();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var no = new Dictionary<string, string?>
        {
            ["Input.Decision"] = "Declined", ["Input.Way"] = "Telephone", ["Input.BySomebodyElse"] = "true", ["Input.Remark"] = "the brother", ["Input.AnswersSeen"] = "0",
        };

        // Two windows were open: the other one was sent first.
        (await advisor.PostAsJsonAsync($"/api/v1/estimates/{id}/answers", new { decision = "agreed", way = "inPerson", bySomebodyElse = true, remark = "the sister" }, Ct)).EnsureSuccessStatusCode();
        var refused = await pages.Send($"/estimates/{id}", no, "#answer");

        Assert.Contains("\"agreed\" was recorded at", Assert.Single(refused.Faults), StringComparison.Ordinal);
        Assert.Equal(("the brother", "1"), (refused.ValueOf("Input.Remark"), refused.ValueOf("Input.AnswersSeen")));
        Assert.Equal(EstimateDecision.Agreed, await Holds());

        app.Clock.Now += NodaTime.Duration.FromMinutes(1);
        no["Input.AnswersSeen"] = refused.ValueOf("Input.AnswersSeen");
        Assert.Empty((await pages.Send($"/estimates/{id}", no, "#answer")).Faults);
        Assert.Equal(EstimateDecision.Declined, await Holds());

        Task<EstimateDecision> Holds() => app.Look(db => db.EstimateAnswers.Where(a => a.EstimateId == id).OrderByDescending(a => a.RecordedAt).Select(a => a.Decision).FirstAsync(Ct));
    }

    [Fact]
    public async Task An_estimate_is_a_paper_for_the_owner_that_says_what_the_page_says_and_no_costs()
    {
        await app.SetPrices();
        var (advisor, manager) = (await app.As(Roles.Advisor), await app.As(Roles.Manager));
        var visit = await app.CheckedIn(items: Oil);
        var made = await (await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { validUntil = "2026-04-01" }, Ct)).Json();
        var id = made.GetProperty("id").GetGuid();

        using var pdf = new PdfReader(await manager.GetByteArrayAsync(new Uri($"/api/v1/estimates/{id}.pdf", UriKind.Relative), Ct));
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var file = await pages.Client.GetAsync(new Uri($"/estimates/{id}?handler=Pdf", UriKind.Relative), Ct);
        var missing = await manager.GetAsync(new Uri($"/api/v1/estimates/{visit.MotorcycleId}.pdf", UriKind.Relative), Ct);

        var text = string.Concat(pdf.Text().Where(c => !char.IsWhiteSpace(c)));
        Assert.All(["Engine oil and filter, labour", "90.00 per hour", "12.50 per litre", "96.85", "20 % of 96.85", "19.37", "116.22 EUR", "holds until 2026-04-01"],
            words => Assert.Contains(words.Replace(" ", "", StringComparison.Ordinal), text, StringComparison.Ordinal));
        Assert.DoesNotContain("margin", text, StringComparison.OrdinalIgnoreCase);
        Assert.Equal([$"http://localhost/estimates/{id}"], pdf.Codes(0));
        Assert.Equal(("application/pdf", HttpStatusCode.NotFound), (file.Content.Headers.ContentType!.MediaType, missing.StatusCode));
    }

    [Fact]
    public async Task What_has_no_price_is_said_and_typed_by_a_person()
    {
        await app.SetPrices();
        await app.Look(db => db.Parts.Where(p => p.Code == TestEngines.CoverGasket).ExecuteUpdateAsync(p => p.SetProperty(g => g.NetPrice, (decimal?)null), Ct));
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.CheckedIn(items: new Dictionary<string, Likelihood> { [TestEngines.ValveCheck] = Likelihood.Certain });
        var preview = await advisor.GetFromJsonAsync<JsonElement>($"{visit.Api}/estimates/preview", Ct);
        Assert.Contains($"No price is known of Head cover gasket ({TestEngines.CoverGasket}).", preview.GetProperty("missing").EnumerateArray().Select(m => m.GetString()));

        var refused = await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { }, Ct);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var made = await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new
        {
            lines = new object[] { new { key = $"part:{TestEngines.CoverGasket}|ifUsed", unitPrice = 24 }, new { key = $"part:{TestEngines.PlugWellRing}|ifUsed", dropped = true } },
        }, Ct);
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
    }

    [Fact]
    public async Task A_replaced_or_expired_estimate_is_not_agreed_to_and_a_changed_proposal_is_not_made()
    {
        await app.SetPrices();
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.CheckedIn(items: Oil);
        var first = (await (await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { }, Ct)).Json()).GetProperty("id").GetGuid();
        (await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { }, Ct)).EnsureSuccessStatusCode();
        var old = await advisor.PostAsJsonAsync($"/api/v1/estimates/{first}/answers", new { decision = "agreed", way = "letter", bySomebodyElse = true, remark = "letter" }, Ct);
        Assert.Equal((HttpStatusCode.Conflict, $"Estimate 1 of job card {visit.Number} was replaced by estimate 2; that is the one to answer."), (old.StatusCode, await old.Detail()));
        var stale = await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { basis = "0123456789abcdef" }, Ct);
        Assert.Equal(HttpStatusCode.PreconditionFailed, stale.StatusCode);
    }

    [Fact]
    public async Task Costs_are_the_managers_alone()
    {
        await app.SetPrices();
        var visit = await app.CheckedIn(items: Oil);
        var seen = await (await app.As(Roles.Manager)).GetFromJsonAsync<JsonElement>($"{visit.Api}/estimates/preview", Ct);
        var hidden = await (await app.As(Roles.Advisor)).GetFromJsonAsync<JsonElement>($"{visit.Api}/estimates/preview", Ct);

        Assert.Equal(JsonValueKind.Object, seen.GetProperty("margin").ValueKind);
        Assert.Equal(JsonValueKind.Null, hidden.GetProperty("margin").ValueKind);
    }

    [Fact]
    public async Task The_form_comes_back_filled_and_an_estimate_is_made_on_the_page()
    {
        await app.SetPrices();
        var visit = await app.CheckedIn(items: Oil);
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var address = $"{visit.Pages}/estimate";
        var refused = await pages.Send(address, new() { ["Input.Lines[0].UnitPrice"] = "80", ["Input.Others[1].Text"] = "Carriage" }, "#make");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Equal(("80", "Carriage"), (refused.ValueOf("Input.Lines[0].UnitPrice"), refused.ValueOf("Input.Others[1].Text")));
        var made = await pages.Send(refused, address, new() { ["Input.Lines[0].Reason"] = "as promised", ["Input.Others[1].UnitPrice"] = "12,50" }, "#make");

        Assert.StartsWith("/estimates/", made.Location, StringComparison.Ordinal);
        Assert.Contains("Carriage", (await pages.Open(made.Location!)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_erasure_blanks_what_was_said_to_estimates_and_keeps_their_figures()
    {
        await app.SetPrices();
        var (advisor, manager) = (await app.As(Roles.Advisor), await app.As(Roles.Manager));
        var visit = await app.CheckedIn(items: Oil);
        var owner = await app.Look(async db =>
        {
            var person = new Person { Id = Domain.NewId.At(app.Clock), Name = "Sieglinde Schweigsam" };
            db.People.Add(person);
            (await db.Motorcycles.SingleAsync(m => m.Id == visit.MotorcycleId, Ct)).OwnerId = person.Id;
            await db.SaveChangesAsync(Ct);
            return person.Id;
        });
        var made = await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new
        {
            lines = new[] { new { key = $"item:{TestEngines.OilService}", unitPrice = 80, reason = "Sieglinde is an old customer" } },
        }, Ct);
        var id = (await made.Json()).GetProperty("id").GetGuid();
        (await advisor.PostAsJsonAsync($"/api/v1/estimates/{id}/answers", new { decision = "agreed", way = "telephone", remark = "Sieglinde laughed" }, Ct)).EnsureSuccessStatusCode();
        (await manager.PostAsJsonAsync($"/api/v1/people/{owner}/erasure", new { confirmName = "Sieglinde Schweigsam" }, Ct)).EnsureSuccessStatusCode();

        var seen = await manager.GetFromJsonAsync<JsonElement>($"/api/v1/estimates/{id}", Ct);
        Assert.DoesNotContain("Sieglinde", seen.GetRawText(), StringComparison.Ordinal);
        Assert.Equal("agreed", seen.GetProperty("answers")[0].GetProperty("decision").GetString());
        Assert.False(await app.Look(db => db.Remarks.AnyAsync(r => r.Text.Contains("Sieglinde"), Ct)));
    }

    [Fact]
    public async Task An_estimate_that_was_made_is_never_changed()
    {
        await app.SetPrices();
        var visit = await app.CheckedIn(items: Oil);
        (await (await app.As(Roles.Advisor)).PostAsJsonAsync($"{visit.Api}/estimates", new { }, Ct)).EnsureSuccessStatusCode();

        foreach (var table in new[] { "estimates set gross = gross + 1", "estimate_lines set net = 0" })
        {
            await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct, $"update {table}", Ct));
        }
    }

    [Fact]
    public async Task Prices_and_rates_are_set_by_the_manager_with_versions_and_by_a_list()
    {
        var (manager, advisor) = (await app.As(Roles.Manager), await app.As(Roles.Advisor));
        Assert.Equal(HttpStatusCode.Forbidden, (await advisor.PostAsJsonAsync("/api/v1/tax-rates", new { code = "low", validFrom = "2026-01-01", name = "Low", percent = 5 }, Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await manager.PostAsJsonAsync("/api/v1/tax-rates", new { code = "low", validFrom = "2026-01-01", name = "Low", percent = 5 }, Ct)).StatusCode);
        var yen = await manager.Change("/api/v1/workshop/money", new { currency = "JPY" });
        Assert.Equal(HttpStatusCode.BadRequest, yen.StatusCode);
        Assert.Equal(HttpStatusCode.PreconditionRequired, (await manager.Put("/api/v1/workshop/money", new { currency = "EUR" }, null)).StatusCode);

        var wrong = await manager.PostAsJsonAsync("/api/v1/imports/part-prices", new { csv = $"part;price;tax\n{TestEngines.CoverGasket};24,90;low\nno-such;1;\n{TestEngines.PlugWellRing};-1;high\n" }, Ct);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Equal(3, (await wrong.Json()).GetProperty("errors").EnumerateObject().Count());
        var done = await manager.PostAsJsonAsync("/api/v1/imports/part-prices", new { csv = $"part;price;tax\n{TestEngines.CoverGasket};24,90;low\n" }, Ct);
        Assert.Equal(1, (await done.Json()).GetProperty("changes").GetArrayLength());
        var gasket = await app.Look(db => db.Parts.SingleAsync(p => p.Code == TestEngines.CoverGasket, Ct));
        Assert.Equal((24.90m, "low"), (gasket.NetPrice, gasket.TaxRateCode));
    }
}
