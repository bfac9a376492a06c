using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using NodaTime;
using Npgsql;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// Reads what visits may take and when it is free, in two trips to the database. What is taken of each resource, and when it is absent,
/// comes merged from there, as one multirange each: a search asks when, not by whom.
/// </summary>
internal static class FloorReader
{
    private const string HoursSql = "select resource_id, weekday, starts_at, ends_at from working_hours";
    private const string BreaksSql = "select resource_id, weekday, starts_at, ends_at from work_breaks";

    private const string AbsentSql =
        "select resource_id, range_agg(span) from absences where withdrawn_at is null and span && @window group by resource_id";

    private const string TakenSql =
        """
        select resource_id, range_agg(span) from occupancies
        where live and span && @window and job_card_number <> all (@except) and (@only::uuid[] is null or resource_id = any (@only))
        group by resource_id
        """;

    /// <summary>Of all resources that are not retired, or of some of them.</summary>
    /// <param name="from">Before it nothing is read.</param>
    /// <param name="until">What is planned ends before.</param>
    /// <param name="exceptCards">Visits that are to be planned anew: what they hold counts as free.</param>
    /// <param name="only">Absent: all.</param>
    public static async Task<WorkshopFloor> Read(
        WorkshopDbContext db, OpeningCalendar calendar, Instant from, Instant until, int[] exceptCards, Guid[]? only, CancellationToken ct)
    {
        var window = new Interval(from, until);
        var days = new DateInterval(calendar.Time.DayOf(from), calendar.Time.DayOf(until));
        var opening = new OpeningDays(calendar, days);
        var resources = await db.Resources.AsNoTracking().Where(r => !r.Retired && (only == null || only.Contains(r.Id))).ToListAsync(ct);
        var times = await ReadTimes(db, window, exceptCards, only, ct);
        return new WorkshopFloor(opening, window,
            [.. resources.Select(r => ResourceTimeline.Of(
                r, opening, days, times.Hours[r.Id], times.Breaks[r.Id], times.Absent.GetValueOrDefault(r.Id) ?? [], times.Taken.GetValueOrDefault(r.Id) ?? []))]);
    }

    private sealed record Times(
        ILookup<Guid, WorkingHours> Hours, ILookup<Guid, WorkBreak> Breaks, Dictionary<Guid, Interval[]> Absent, Dictionary<Guid, Interval[]> Taken);

    private static async Task<Times> ReadTimes(
        WorkshopDbContext db, Interval window, int[] exceptCards, Guid[]? only, CancellationToken ct)
    {
        await db.Database.OpenConnectionAsync(ct);
        try
        {
            await using var batch = new NpgsqlBatch((NpgsqlConnection)db.Database.GetDbConnection())
            {
                Transaction = (NpgsqlTransaction?)db.Database.CurrentTransaction?.GetDbTransaction(),
                BatchCommands =
                {
                    new(HoursSql),
                    new(BreaksSql),
                    new(AbsentSql) { Parameters = { new NpgsqlParameter("window", window) } },
                    new(TakenSql)
                    {
                        Parameters =
                        {
                            new NpgsqlParameter("window", window), new NpgsqlParameter("except", exceptCards),
                            new NpgsqlParameter("only", (object?)only ?? DBNull.Value),
                        },
                    },
                },
            };
            await using var rows = await batch.ExecuteReaderAsync(ct);
            var hours = await All(rows, r => new WorkingHours
            {
                ResourceId = r.GetGuid(0), Weekday = (IsoDayOfWeek)r.GetInt32(1), StartsAt = r.GetFieldValue<LocalTime>(2), EndsAt = r.GetFieldValue<LocalTime>(3),
            }, ct);
            var breaks = await All(rows, r => new WorkBreak
            {
                Id = Guid.Empty, ResourceId = r.GetGuid(0), Weekday = (IsoDayOfWeek)r.GetInt32(1),
                StartsAt = r.GetFieldValue<LocalTime>(2), EndsAt = r.GetFieldValue<LocalTime>(3),
            }, ct);
            var absent = await All(rows, Merged, ct);
            var taken = await All(rows, Merged, ct);
            return new Times(
                hours.ToLookup(h => h.ResourceId), breaks.ToLookup(b => b.ResourceId),
                absent.ToDictionary(a => a.Id, a => a.Spans), taken.ToDictionary(t => t.Id, t => t.Spans));
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }

    private static (Guid Id, Interval[] Spans) Merged(NpgsqlDataReader row) => (row.GetGuid(0), row.GetFieldValue<Interval[]>(1));

    /// <summary>All rows of one answer, and on to the next.</summary>
    private static async Task<List<T>> All<T>(NpgsqlDataReader rows, Func<NpgsqlDataReader, T> read, CancellationToken ct)
    {
        var all = new List<T>();
        while (await rows.ReadAsync(ct))
        {
            all.Add(read(rows));
        }

        await rows.NextResultAsync(ct);
        return all;
    }
}
