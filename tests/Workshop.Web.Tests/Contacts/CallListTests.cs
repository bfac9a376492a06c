using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Motorcycles;
using Xunit;

namespace Workshop.Web.Tests.Contacts;

/// <summary>At the test's clock it is 2 March 2026; every motorcycle has been due since 2024.</summary>
public sealed class CallListTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_number_is_shown_only_while_its_consent_stands()
    {
        var advisor = await app.As(Roles.Advisor);
        var (owner, _) = await advisor.AddOwner();
        var none = (await advisor.CallOf(owner))!.Value;
        Assert.Equal((0, JsonValueKind.Null), (none.GetProperty("channels").GetArrayLength(), none.GetProperty("phone").ValueKind));

        await advisor.Consent(owner, ContactChannel.Phone);
        var call = (await advisor.CallOf(owner))!.Value;
        Assert.Equal(["phone"], call.GetProperty("channels").EnumerateArray().Select(c => c.GetString()));
        Assert.StartsWith("000 ", call.GetProperty("phone").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, call.GetProperty("email").ValueKind);
        Assert.Equal("overdue", call.GetProperty("motorcycles")[0].GetProperty("items")[0].GetProperty("state").GetString());

        var twice = await advisor.Consent(owner, ContactChannel.Phone);
        Assert.Equal((HttpStatusCode.Conflict, "The consent to be reached by telephone stands already; withdraw it before another is entered."), (twice.StatusCode, await twice.Detail()));
    }

    [Fact]
    public async Task Several_motorcycles_of_one_owner_are_one_call()
    {
        var advisor = await app.As(Roles.Advisor);
        var (owner, first) = await advisor.AddOwner();
        var added = await advisor.PostAsJsonAsync("/api/v1/motorcycles", new
        {
            registration = "SECOND 1", maker = "Testwerk", model = "Twin 600", modelYear = 2024, engineModelId = TestWorkshop.EngineModel,
            odometerUnit = "kilometres", inServiceSince = "2024-02-01", ownerId = owner,
        }, Ct);
        var second = (await added.Json()).GetProperty("id").GetGuid();

        var call = (await advisor.CallOf(owner))!.Value;

        Assert.Equal([second, first], call.GetProperty("motorcycles").EnumerateArray().Select(m => m.GetProperty("id").GetGuid()));
    }

    [Fact]
    public async Task Who_was_spoken_to_is_left_in_peace_for_two_weeks_unless_a_call_back_was_asked_for()
    {
        var advisor = await app.As(Roles.Advisor);
        var (reached, _) = await advisor.AddOwner();
        var (missed, _) = await advisor.AddOwner();
        var (wants, _) = await advisor.AddOwner();
        var (later, _) = await advisor.AddOwner();
        await advisor.Contact(reached, "reached", remark: "Thinks about it");
        await advisor.Contact(missed, "notReached");
        await advisor.Contact(wants, "callsBack", remark: "After work");
        await advisor.Contact(later, "callsBack", callBackOn: "2026-03-05");
        var start = app.Clock.Now;
        try
        {
            Assert.Null(await advisor.CallOf(reached));
            Assert.Null(await advisor.CallOf(missed));
            Assert.Null(await advisor.CallOf(later));
            var call = (await advisor.CallOf(wants))!.Value;
            Assert.True(call.GetProperty("isCallBack").GetBoolean());
            Assert.Equal(("callsBack", "After work", "Ada Visor"), (
                call.GetProperty("lastContact").GetProperty("outcome").GetString(), call.GetProperty("lastContact").GetProperty("remark").GetString(),
                call.GetProperty("lastContact").GetProperty("by").GetString()));
            app.Clock.Now = start + Duration.FromDays(3);
            Assert.NotNull(await advisor.CallOf(missed));
            Assert.NotNull(await advisor.CallOf(later));
            Assert.Null(await advisor.CallOf(reached));
            Assert.NotNull(await advisor.CallOf(reached, "&quietDays=3"));
            app.Clock.Now = start + Duration.FromDays(14);
            Assert.NotNull(await advisor.CallOf(reached));
        }
        finally
        {
            app.Clock.Now = start;
        }
    }

    [Fact]
    public async Task Who_has_a_visit_booked_or_put_everything_off_or_gave_the_motorcycle_up_is_not_called()
    {
        var advisor = await app.As(Roles.Advisor);
        var (off, motorcycle) = await advisor.AddOwner();
        var (gone, retired) = await advisor.AddOwner();
        var (coming, booked) = await advisor.AddOwner();
        foreach (var line in (await advisor.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{motorcycle}/due", Ct)).GetProperty("rows").EnumerateArray())
        {
            if (line.GetProperty("includedIn").ValueKind == JsonValueKind.Null)
            {
                (await advisor.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/put-offs",
                    new { item = line.GetProperty("code").GetString(), until = "2026-03-20", reason = "Wants it after the journey" }, Ct)).EnsureSuccessStatusCode();
            }
        }

        await app.Look(db => db.Motorcycles.Where(m => m.Id == retired).ExecuteUpdateAsync(set => set.SetProperty(m => m.Retired, true), Ct));
        var visit = await app.Booked();
        await app.Look(db => db.Motorcycles.Where(m => m.Id == visit.MotorcycleId).ExecuteUpdateAsync(set => set.SetProperty(m => m.OwnerId, coming), Ct));
        await app.Look(db => db.Motorcycles.Where(m => m.Id == booked).ExecuteUpdateAsync(set => set.SetProperty(m => m.OwnerId, (Guid?)null), Ct));

        Assert.Null(await advisor.CallOf(off));
        Assert.Null(await advisor.CallOf(gone));
        Assert.Null(await advisor.CallOf(coming));
        var start = app.Clock.Now;
        app.Clock.Now = start + Duration.FromDays(18);
        var comes = await advisor.CallOf(off);
        app.Clock.Now = start;
        Assert.NotNull(comes);
    }

    [Fact]
    public async Task Pages_of_calls_follow_each_other_without_gap_or_repetition()
    {
        var advisor = await app.As(Roles.Advisor);
        for (var i = 0; i < 4; i++)
        {
            await advisor.AddOwner();
        }

        var (seen, next) = (new List<Guid>(), (string?)"");
        while (next is not null)
        {
            var page = await advisor.GetFromJsonAsync<JsonElement>($"/api/v1/calls?take=2&after={Uri.EscapeDataString(next)}", Ct);
            seen.AddRange(page.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("ownerId").GetGuid()));
            next = page.GetProperty("next").GetString();
        }

        Assert.True(seen.Count >= 4);
        Assert.Equal(seen.Distinct(), seen);
    }

    [Theory]
    [InlineData("/api/v1/calls?withinWeeks=53", "withinWeeks is 53: a whole number from 0 to 52 is allowed.")]
    [InlineData("/api/v1/calls?quietDays=-1", "quietDays is -1: a whole number from 0 to 365 is allowed.")]
    [InlineData("/api/v1/calls?after=x", "after is \"x\": send what an earlier page gave as next.")]
    [InlineData("/api/v1/messages?state=lost", "state is \"lost\": one of waiting, beingSent, sent, failed, uncertain, copied, discarded is allowed.")]
    [InlineData("/api/v1/contacts", "personId is empty: give who was spoken to.")]
    public async Task Bad_input_names_field_value_and_what_is_allowed(string address, string sentence)
    {
        var answer = await (await app.As(Roles.Advisor)).GetAsync(new Uri(address, UriKind.Relative), Ct);

        Assert.Equal((HttpStatusCode.BadRequest, sentence), (answer.StatusCode, await answer.Detail()));
    }

    [Fact]
    public async Task A_contact_is_neither_later_than_now_nor_a_call_back_that_nobody_asked_for()
    {
        var advisor = await app.As(Roles.Advisor);
        var (owner, _) = await advisor.AddOwner();

        var past = await advisor.Contact(owner, "callsBack", "2026-03-01");
        Assert.Equal("callBackOn is 2026-03-01: today, 2026-03-02, or a later day is allowed.", await past.Detail());
        Assert.Equal(HttpStatusCode.BadRequest, (await advisor.Contact(owner, "reached", "2026-03-05")).StatusCode);
        var later = await advisor.PostAsJsonAsync("/api/v1/contacts", new { personId = owner, channel = "phone", outcome = "reached", at = "2026-03-02T09:00:00Z" }, Ct);
        Assert.Equal("at is 2026-03-02 10:00: a time not after now, 2026-03-02 09:00, is allowed.", await later.Detail());
        var staff = await advisor.Contact(TestWorkshop.Technician, "reached");
        Assert.Equal($"personId is {TestWorkshop.Technician}: Tek Nician works here and is no customer.", await staff.Detail());
    }

    [Fact]
    public async Task Technicians_see_no_contact_data()
    {
        var (technician, advisor) = (await app.As(Roles.Technician), await app.As(Roles.Advisor));
        var (owner, motorcycle) = await advisor.AddOwner(channels: [ContactChannel.Phone]);
        foreach (var address in new[] { "/api/v1/calls", $"/api/v1/contacts?personId={owner}", $"/api/v1/consents?personId={owner}", "/api/v1/messages", "/api/v1/message-templates" })
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await technician.GetAsync(new Uri(address, UriKind.Relative), Ct)).StatusCode);
        }

        var seen = (await technician.Motorcycle(motorcycle)).GetProperty("owner");
        Assert.Equal((JsonValueKind.Null, JsonValueKind.Null), (seen.GetProperty("phone").ValueKind, seen.GetProperty("email").ValueKind));
        Assert.Equal("Jörg Müßig", seen.GetProperty("name").GetString());
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        Assert.DoesNotContain("telephone", (await pages.Open($"/motorcycles/{motorcycle}")).MainText, StringComparison.Ordinal);
        foreach (var page in new[] { "/due/calls", "/messages", "/messages/template", $"/messages/new?motorcycle={motorcycle}", $"/motorcycles/{motorcycle}/owner" })
        {
            Assert.Contains((await pages.Open(page)).Status, new[] { HttpStatusCode.Forbidden, HttpStatusCode.Redirect });
        }
    }

    [Fact]
    public async Task What_was_recorded_of_a_contact_is_only_ever_added_to()
    {
        var advisor = await app.As(Roles.Advisor);
        var (owner, _) = await advisor.AddOwner();
        await advisor.Contact(owner, "reached");

        await Assert.ThrowsAnyAsync<Exception>(() => app.Look(db => db.Contacts.Where(c => c.PersonId == owner).ExecuteDeleteAsync(Ct)));
    }
}
