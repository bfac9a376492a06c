using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Data;

/// <summary>The rules that the database keeps by itself, asked of the database itself, past all code of the service.</summary>
public sealed class DatabaseRulesTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly string[] AppendOnly =
    [
        "odometer_readings", "engine_model_versions", "done_items", "caution_acknowledgements", "sign_offs", "fastener_ticks",
        "clearance_readings", "valve_events", "part_changes", "reading_imports", "shim_observations", "stock_movements", "audit_rows",
    ];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static TheoryData<string> AppendOnlyTables => [.. AppendOnly];

    [Theory]
    [MemberData(nameof(AppendOnlyTables))]
    public async Task The_service_may_not_change_what_is_only_ever_added(string table)
    {
        foreach (var sql in new[] { $"update {table} set id = id", $"delete from {table}", $"truncate {table} cascade" })
        {
            var statement = table == "sign_offs" ? sql.Replace("set id = id", "set signed_by = signed_by") : sql;
            var refused = await Assert.ThrowsAsync<PostgresException>(() => Execute(app.Database.Connections.Service, statement));
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
        }
    }

    [Fact]
    public async Task Not_even_the_owner_changes_what_is_only_ever_added()
    {
        foreach (var sql in new[] { "update stock_movements set on_hand_change = 1", "delete from stock_movements", "truncate stock_movements" })
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() => Execute(app.Database.Connections.Direct, sql));
            Assert.Equal(PostgresErrorCodes.RestrictViolation, refused.SqlState);
            Assert.Contains("only ever added", refused.MessageText, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Every_table_that_only_lets_the_service_add_carries_the_refusing_trigger()
    {
        const string Unguarded =
            """
            select count(*) from pg_class t
            where t.relnamespace = 'public'::regnamespace and t.relkind = 'r'
              and has_table_privilege('workshop_service', t.oid, 'insert')
              and not has_table_privilege('workshop_service', t.oid, 'update')
              and not exists (select from pg_trigger g where g.tgrelid = t.oid and g.tgname = 'append_only')
            """;

        Assert.Equal(0L, await Scalar(app.Database.Connections.Direct, Unguarded));
    }

    [Fact]
    public async Task Two_live_spans_of_one_resource_never_overlap_and_touching_is_legal()
    {
        var number = await NewCard();
        await Execute(app.Database.Connections.Service, Occupy(number, "09:00", "11:00", live: true));
        await Execute(app.Database.Connections.Service, Occupy(number, "11:00", "12:00", live: true));
        await Execute(app.Database.Connections.Service, Occupy(number, "10:00", "12:00", live: false));

        var refused = await Assert.ThrowsAsync<PostgresException>(
            () => Execute(app.Database.Connections.Service, Occupy(number, "10:59", "11:30", live: true)));

        Assert.Equal(PostgresErrorCodes.ExclusionViolation, refused.SqlState);
        Assert.Equal("ex_occupancies_no_overlap", refused.ConstraintName);
    }

    [Fact]
    public async Task Stock_moves_with_its_ledger_and_never_goes_below_zero()
    {
        var part = NewId.At(app.Clock);
        await Execute(app.Database.Connections.Service,
            $"insert into parts (id, code, name, kind, unit, discontinued) values ('{part}', 'ledger-part', 'x', 'general', 'piece', false)");
        await Execute(app.Database.Connections.Service, Move(part, 3));
        await Execute(app.Database.Connections.Service, Move(part, -2));

        var refused = await Assert.ThrowsAsync<PostgresException>(
            () => Execute(app.Database.Connections.Service, Move(part, -2)));

        Assert.Equal("ck_stock_balances_not_below_zero", refused.ConstraintName);
        Assert.Equal(1m, await Scalar(app.Database.Connections.Service, $"select on_hand from stock_balances where part_id = '{part}'"));
        Assert.Equal(1m, await Scalar(app.Database.Connections.Service, $"select sum(on_hand_change) from stock_movements where part_id = '{part}'"));
    }

    [Fact]
    public async Task A_change_leaves_who_and_what_in_the_audit_but_never_a_name()
    {
        var person = NewId.At(app.Clock);
        await Execute(app.Database.Connections.Service,
            $"""
             begin;
             select set_config('workshop.person', '{TestWorkshop.Manager}', true);
             insert into people (id, name, is_staff) values ('{person}', 'Secret Name', false);
             update resources set name = 'Bay 2b' where id = '{TestWorkshop.Bay2}';
             commit;
             """);

        Assert.Equal(TestWorkshop.Manager, await Scalar(app.Database.Connections.Service,
            $"select person_id from audit_rows where table_name = 'resources' and changes -> 'name' = '[\"Bay 2\", \"Bay 2b\"]'"));
        Assert.Equal(1L, await Scalar(app.Database.Connections.Service,
            $"select count(*) from audit_rows where table_name = 'people' and row_key ->> 'id' = '{person}' and changes ? 'name'"));
        Assert.Equal(0L, await Scalar(app.Database.Connections.Service,
            "select count(*) from audit_rows where changes::text like '%Secret Name%'"));
    }

    [Fact]
    public async Task An_engine_is_in_one_motorcycle_at_a_time()
    {
        await Execute(app.Database.Connections.Direct,
            $"""
             insert into motorcycles (id, registration, maker, model, model_year, retired) values
               ('{Guid.Parse("00000000-0000-0000-0000-0000000000a1")}', 'RULE 1', 'x', 'x', 2020, false),
               ('{Guid.Parse("00000000-0000-0000-0000-0000000000a2")}', 'RULE 2', 'x', 'x', 2020, false);
             insert into engines (id, engine_model_id, serial_number)
               values ('{Guid.Parse("00000000-0000-0000-0000-0000000000b1")}', '{TestWorkshop.EngineModel}', 'e');
             """);
        await Execute(app.Database.Connections.Service, Fit("a1", "2020-01-01", "2022-01-01"));
        await Execute(app.Database.Connections.Service, Fit("a2", "2022-01-01", null));

        var refused = await Assert.ThrowsAsync<PostgresException>(
            () => Execute(app.Database.Connections.Service, Fit("a1", "2021-12-31", "2022-06-01")));

        Assert.Equal(PostgresErrorCodes.ExclusionViolation, refused.SqlState);
    }

    [Fact]
    public async Task The_model_has_no_change_without_a_migration() =>
        Assert.False(await app.Look(db => Task.FromResult(db.Database.HasPendingModelChanges())));

    private static string Fit(string motorcycle, string from, string? to) =>
        $"""
         insert into engine_fittings (id, engine_id, motorcycle_id, fitted_on, removed_on, motorcycle_metres, engine_metres)
         values (gen_random_uuid(), '00000000-0000-0000-0000-0000000000b1', '00000000-0000-0000-0000-0000000000{motorcycle}',
           '{from}', {(to is null ? "null" : $"'{to}'")}, 0, 0)
         """;

    private static string Occupy(int card, string from, string to, bool live) =>
        $"""
         insert into occupancies (id, job_card_number, phase, resource_id, span, live) values
         (gen_random_uuid(), {card}, 'work', '{TestWorkshop.Bay1}', tstzrange('2026-05-04 {from}Z', '2026-05-04 {to}Z'), {live})
         """;

    private static string Move(Guid part, int quantity) =>
        $"""
         insert into stock_movements (id, part_id, place_id, condition, kind, on_hand_change, reserved_change, moved_by, moved_at)
         values (gen_random_uuid(), '{part}', '{TestWorkshop.Shelf}', 'new', 'counted', {quantity}, 0, '{TestWorkshop.Manager}', now())
         """;

    private async Task<int> NewCard()
    {
        var (motorcycle, engine) = (NewId.At(app.Clock), NewId.At(app.Clock));
        await Execute(app.Database.Connections.Direct,
            $"""
             insert into motorcycles (id, registration, maker, model, model_year, retired) values ('{motorcycle}', 'OCC 1', 'x', 'x', 2020, false);
             insert into engines (id, engine_model_id, serial_number) values ('{engine}', '{TestWorkshop.EngineModel}', 'o');
             """);
        return (int)(await Scalar(app.Database.Connections.Service,
            $"""
             insert into job_cards (motorcycle_id, engine_id, engine_model_version_id, state, booked_by, booked_at, starts_at, ends_at)
             values ('{motorcycle}', '{engine}', '{TestWorkshop.EngineModelVersion}', 'booked', '{TestWorkshop.Advisor}', now(), now(), now() + interval '1 hour')
             returning number
             """))!;
    }

    private static async Task Execute(string connection, string sql)
    {
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(Ct);
    }

    private static async Task<object?> Scalar(string connection, string sql)
    {
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        return await command.ExecuteScalarAsync(Ct);
    }
}
