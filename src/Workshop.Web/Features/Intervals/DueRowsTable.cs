using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;
using NpgsqlTypes;
using Workshop.Domain.Intervals;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>
/// Puts the rows of some motorcycles in place of those that stand, in two statements however many they are: a column is an array, and
/// a row that says what it said before is not written again. What is gone is told by a list of keys, which PostgreSQL looks up by hash
/// whatever it believes about the size of the tables.
/// </summary>
internal static class DueRowsTable
{
    private const string ReplaceItems =
        """
        with fresh as (
          select * from unnest(@motorcycle, @code, @name, @due_on, @due_at, @left, @expected_on, @earliest_on, @latest_on, @basis,
              @done_on, @done_at, @forecast, @comes_on, @put_off, @included, @advice, @saves)
            as f (motorcycle_id, service_item_code, name, due_on, due_at_metres, left_metres, expected_on, earliest_on, latest_on,
              rate_basis, last_done_on, last_done_at_metres, by_forecast, comes_on, put_off_id, included_in, advice, saves_minutes)),
        gone as (
          delete from due_items d where d.motorcycle_id = any (@fleet) and d.motorcycle_id || ' ' || d.service_item_code <> all (@keys))
        insert into due_items as d (motorcycle_id, service_item_code, name, due_on, due_at_metres, left_metres, expected_on, earliest_on,
          latest_on, rate_basis, last_done_on, last_done_at_metres, by_forecast, comes_on, put_off_id, included_in, advice, saves_minutes,
          computed_at)
        select f.*, @now from fresh f
        on conflict (motorcycle_id, service_item_code) do update set
          name = excluded.name, due_on = excluded.due_on, due_at_metres = excluded.due_at_metres, left_metres = excluded.left_metres,
          expected_on = excluded.expected_on, earliest_on = excluded.earliest_on, latest_on = excluded.latest_on,
          rate_basis = excluded.rate_basis, last_done_on = excluded.last_done_on, last_done_at_metres = excluded.last_done_at_metres,
          by_forecast = excluded.by_forecast, comes_on = excluded.comes_on, put_off_id = excluded.put_off_id,
          included_in = excluded.included_in, advice = excluded.advice, saves_minutes = excluded.saves_minutes,
          computed_at = excluded.computed_at
        where (d.name, d.due_on, d.due_at_metres, d.left_metres, d.expected_on, d.earliest_on, d.latest_on, d.rate_basis, d.last_done_on,
            d.last_done_at_metres, d.by_forecast, d.comes_on, d.put_off_id, d.included_in, d.advice, d.saves_minutes)
          is distinct from (excluded.name, excluded.due_on, excluded.due_at_metres, excluded.left_metres, excluded.expected_on,
            excluded.earliest_on, excluded.latest_on, excluded.rate_basis, excluded.last_done_on, excluded.last_done_at_metres,
            excluded.by_forecast, excluded.comes_on, excluded.put_off_id, excluded.included_in, excluded.advice, excluded.saves_minutes)
        """;

    private const string ReplaceVisits =
        """
        with fresh as (
          select f.motorcycle_id, f.engine_model_id, f.comes_on, f.left_metres, f.labour_minutes, f.saves_minutes,
              string_to_array(f.tools, @between) special_tools
            from unnest(@motorcycle, @model, @comes_on, @left, @labour, @saves, @tools)
              as f (motorcycle_id, engine_model_id, comes_on, left_metres, labour_minutes, saves_minutes, tools)),
        gone as (
          delete from due_visits v where v.motorcycle_id = any (@fleet) and v.motorcycle_id <> all (@motorcycle))
        insert into due_visits as v (motorcycle_id, engine_model_id, comes_on, left_metres, labour_minutes, saves_minutes, special_tools,
          computed_at)
        select f.*, @now from fresh f
        on conflict (motorcycle_id) do update set
          engine_model_id = excluded.engine_model_id, comes_on = excluded.comes_on, left_metres = excluded.left_metres,
          labour_minutes = excluded.labour_minutes, saves_minutes = excluded.saves_minutes, special_tools = excluded.special_tools,
          computed_at = excluded.computed_at
        where (v.engine_model_id, v.comes_on, v.left_metres, v.labour_minutes, v.saves_minutes, v.special_tools)
          is distinct from (excluded.engine_model_id, excluded.comes_on, excluded.left_metres, excluded.labour_minutes,
            excluded.saves_minutes, excluded.special_tools)
        """;

    /// <summary>Two tools of one visit stand apart by what is in no word.</summary>
    private const string Between = "\n";

    public static async Task Replace(
        WorkshopDbContext db, Guid[] motorcycles, (List<DueItem> Items, List<DueVisit> Visits) rows, CancellationToken ct)
    {
        await using var items = Command(db, ReplaceItems, motorcycles);
        WriteItems(items.Parameters, rows.Items);
        await using var visits = Command(db, ReplaceVisits, motorcycles);
        WriteVisits(visits.Parameters, rows.Visits);
        await db.Database.OpenConnectionAsync(ct);
        try
        {
            await items.ExecuteNonQueryAsync(ct);
            await visits.ExecuteNonQueryAsync(ct);
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }

    private static void WriteItems(NpgsqlParameterCollection columns, List<DueItem> rows)
    {
        Add(columns, "motorcycle", NpgsqlDbType.Uuid, rows, r => r.MotorcycleId);
        Add(columns, "code", NpgsqlDbType.Text, rows, r => r.ServiceItemCode);
        Add(columns, "keys", NpgsqlDbType.Text, rows, r => $"{r.MotorcycleId} {r.ServiceItemCode}");
        Add(columns, "name", NpgsqlDbType.Text, rows, r => r.Name);
        Add(columns, "due_on", NpgsqlDbType.Date, rows, r => r.DueOn);
        Add(columns, "due_at", NpgsqlDbType.Numeric, rows, r => r.DueAt?.Metres);
        Add(columns, "left", NpgsqlDbType.Numeric, rows, r => r.Left?.Metres);
        Add(columns, "expected_on", NpgsqlDbType.Date, rows, r => r.ExpectedOn);
        Add(columns, "earliest_on", NpgsqlDbType.Date, rows, r => r.EarliestOn);
        Add(columns, "latest_on", NpgsqlDbType.Date, rows, r => r.LatestOn);
        Add(columns, "basis", NpgsqlDbType.Text, rows, r => r.RateBasis is { } basis ? ValueConversions.WordOf(basis) : null);
        Add(columns, "done_on", NpgsqlDbType.Date, rows, r => r.LastDoneOn);
        Add(columns, "done_at", NpgsqlDbType.Numeric, rows, r => r.LastDoneAt?.Metres);
        Add(columns, "forecast", NpgsqlDbType.Boolean, rows, r => r.ByForecast);
        Add(columns, "comes_on", NpgsqlDbType.Date, rows, r => r.ComesOn);
        Add(columns, "put_off", NpgsqlDbType.Uuid, rows, r => r.PutOffId);
        Add(columns, "included", NpgsqlDbType.Text, rows, r => r.IncludedIn);
        Add(columns, "advice", NpgsqlDbType.Text, rows, r => ValueConversions.WordOf(r.Advice));
        Add(columns, "saves", NpgsqlDbType.Integer, rows, r => r.SavesMinutes);
        columns.AddWithValue("now", NpgsqlDbType.TimestampTz, rows.Count > 0 ? rows[0].ComputedAt : default);
    }

    private static void WriteVisits(NpgsqlParameterCollection columns, List<DueVisit> rows)
    {
        Add(columns, "motorcycle", NpgsqlDbType.Uuid, rows, r => r.MotorcycleId);
        Add(columns, "model", NpgsqlDbType.Uuid, rows, r => r.EngineModelId);
        Add(columns, "comes_on", NpgsqlDbType.Date, rows, r => r.ComesOn);
        Add(columns, "left", NpgsqlDbType.Numeric, rows, r => r.Left?.Metres);
        Add(columns, "labour", NpgsqlDbType.Integer, rows, r => r.LabourMinutes);
        Add(columns, "saves", NpgsqlDbType.Integer, rows, r => r.SavesMinutes);
        Add(columns, "tools", NpgsqlDbType.Text, rows, r => string.Join(Between, r.SpecialTools));
        columns.AddWithValue("between", NpgsqlDbType.Text, Between);
        columns.AddWithValue("now", NpgsqlDbType.TimestampTz, rows.Count > 0 ? rows[0].ComputedAt : default);
    }

    private static NpgsqlCommand Command(WorkshopDbContext db, string sql, Guid[] motorcycles)
    {
        var connection = (NpgsqlConnection)db.Database.GetDbConnection();
        var command = new NpgsqlCommand(sql, connection, (NpgsqlTransaction?)db.Database.CurrentTransaction?.GetDbTransaction());
        command.Parameters.AddWithValue("fleet", NpgsqlDbType.Array | NpgsqlDbType.Uuid, motorcycles);
        return command;
    }

    private static void Add<TRow, TCell>(
        NpgsqlParameterCollection columns, string name, NpgsqlDbType type, List<TRow> rows, Func<TRow, TCell> cell) =>
        columns.AddWithValue(name, NpgsqlDbType.Array | type, rows.ConvertAll(row => cell(row)).ToArray());
}
