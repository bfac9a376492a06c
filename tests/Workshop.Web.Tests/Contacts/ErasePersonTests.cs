using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain.Contacts;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Hosting;
using Workshop.Web.Tests.Motorcycles;
using Xunit;

namespace Workshop.Web.Tests.Contacts;

public sealed class ErasePersonTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_erased_person_is_nowhere_in_the_database_and_the_service_history_stays()
    {
        var (advisor, manager) = (await app.As(Roles.Advisor), await app.As(Roles.Manager));
        var (owner, motorcycle) = await advisor.AddOwner("Wilhelmine Vergissmich", "wilhelmine@example.org", ContactChannel.Email, ContactChannel.Letter);
        await advisor.Contact(owner, "reached", remark: "Wilhelmine is in hospital");
        await advisor.Queue(motorcycle, "For Wilhelmine", "Dear Wilhelmine");
        Assert.Equal(HttpStatusCode.Created, (await advisor.Write(motorcycle, "For Wilhelmine", "Dear Wilhelmine", "letter")).StatusCode);
        (await advisor.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/done-items",
            new { doneOn = "2026-02-01", odometer = 1_000, items = new[] { TestEngines.OilService } }, Ct)).EnsureSuccessStatusCode();
        (await advisor.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/put-offs",
            new { item = TestEngines.OilService, until = "2026-06-01", reason = "Wilhelmine cannot ride yet" }, Ct)).EnsureSuccessStatusCode();
        Assert.NotEmpty(await Holding("ilhelmine"));

        var wrong = await manager.PostAsJsonAsync($"/api/v1/people/{owner}/erasure", new { confirmName = "Wilhelmine" }, Ct);
        Assert.Equal(
            (HttpStatusCode.UnprocessableEntity, "confirmName is \"Wilhelmine\": type the name as it stands, \"Wilhelmine Vergissmich\", to erase that person for good."),
            (wrong.StatusCode, await wrong.Detail()));
        Assert.Equal(HttpStatusCode.Forbidden, (await advisor.PostAsJsonAsync($"/api/v1/people/{owner}/erasure", new { confirmName = "Wilhelmine Vergissmich" }, Ct)).StatusCode);
        var erased = await manager.PostAsJsonAsync($"/api/v1/people/{owner}/erasure", new { confirmName = "Wilhelmine Vergissmich" }, Ct);

        Assert.Equal(HttpStatusCode.OK, erased.StatusCode);
        var answer = await erased.Json();
        Assert.Equal((1, 1, 2), (answer.GetProperty("motorcycles").GetInt32(), answer.GetProperty("remarks").GetInt32(), answer.GetProperty("messages").GetInt32()));
        Assert.Empty(await Holding("ilhelmine"));
        Assert.Empty(await Holding("Vergissmich"));
        var left = await advisor.Motorcycle(motorcycle);
        Assert.Equal((JsonValueKind.Null, 1), (left.GetProperty("owner").ValueKind, left.GetProperty("doneItems").GetArrayLength()));
        Assert.Null(await advisor.CallOf(owner));
        var rows = await app.Look(db => db.OutboxMessages.AsNoTracking().Where(m => m.PersonId == owner).ToListAsync(Ct));
        Assert.All(rows, m => Assert.Equal((OutboxState.Discarded, "", "", ""), (m.State, m.To, m.Subject, m.Body)));
        Assert.All(
            await app.Look(db => db.Consents.AsNoTracking().Where(c => c.PersonId == owner).ToListAsync(Ct)),
            c => Assert.True(c.WithdrawnAt is not null && c.HowGiven.Length == 0));
        Assert.True(await app.Look(db => db.Contacts.AnyAsync(c => c.PersonId == owner, Ct)));

        var again = await manager.PostAsJsonAsync($"/api/v1/people/{owner}/erasure", new { confirmName = "x" }, Ct);
        Assert.Equal($"id is {owner}: that person was erased.", await again.Detail());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await advisor.Consent(owner, ContactChannel.Phone)).StatusCode);
    }

    [Fact]
    public async Task Who_works_here_is_locked_not_erased()
    {
        var answer = await (await app.As(Roles.Manager)).PostAsJsonAsync(
            $"/api/v1/people/{TestWorkshop.Technician}/erasure", new { confirmName = "Tek Nician" }, Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("Tek Nician", await app.Look(db => db.People.Where(p => p.Id == TestWorkshop.Technician).Select(p => p.Name).SingleAsync(Ct)));
    }

    [Fact]
    public async Task A_person_is_erased_on_the_owners_page_with_the_name_typed_once_more()
    {
        var (_, motorcycle) = await (await app.As(Roles.Advisor)).AddOwner("Konrad Kurz");
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var address = $"/motorcycles/{motorcycle}/owner";

        var refused = await pages.Send(address, new() { ["Erase.ConfirmName"] = "Konrad" }, "#erase-form");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Equal("Konrad", refused.ValueOf("Erase.ConfirmName"));
        var done = await pages.Send(address, new() { ["Erase.ConfirmName"] = "Konrad Kurz" }, "#erase-form");

        Assert.Equal(address, done.Location);
        Assert.Contains("No owner is on record", (await pages.Open(address)).MainText, StringComparison.Ordinal);
        Assert.Null((await (await TestPages.SignedIn(app, Roles.Advisor)).Open(address)).Html.QuerySelector("#erase-form"));
    }

    [Fact]
    public async Task Of_a_put_off_nothing_but_its_reason_can_be_blanked()
    {
        var advisor = await app.As(Roles.Advisor);
        var (_, motorcycle) = await advisor.AddOwner();
        (await advisor.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/put-offs",
            new { item = TestEngines.OilService, until = "2026-06-01", reason = "No time" }, Ct)).EnsureSuccessStatusCode();
        foreach (var (connection, sql) in new[]
        {
            (app.Database.Connections.Service, "update put_offs set reason = 'other'"),
            (app.Database.Connections.Service, "update put_offs set until = until + 1"),
            (app.Database.Connections.Direct, "update put_offs set reason = '', until = until + 1"),
            (app.Database.Connections.Direct, "delete from put_offs"),
        })
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(connection, sql, Ct));
            Assert.Contains(refused.SqlState, new[] { PostgresErrorCodes.RestrictViolation, PostgresErrorCodes.InsufficientPrivilege });
        }
    }

    /// <summary>The tables that hold a text anywhere, the audit and the stored answers among them.</summary>
    private async Task<List<string>> Holding(string text)
    {
        await using var source = NpgsqlDataSource.Create(app.Database.Connections.Direct);
        var tables = new List<string>();
        await using (var list = source.CreateCommand("select table_name from information_schema.tables where table_schema = 'public' and table_type = 'BASE TABLE'"))
        await using (var reader = await list.ExecuteReaderAsync(Ct))
        {
            while (await reader.ReadAsync(Ct))
            {
                tables.Add(reader.GetString(0));
            }
        }

        var holding = new List<string>();
        foreach (var table in tables)
        {
            await using var count = source.CreateCommand($"select count(*) from \"{table}\" t where t::text like '%' || $1 || '%'");
            count.Parameters.AddWithValue(text);
            if (await count.ExecuteScalarAsync(Ct) is > 0L)
            {
                holding.Add(table);
            }
        }

        return holding;
    }
}
