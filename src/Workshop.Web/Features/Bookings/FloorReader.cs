using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using NodaTime;
using Npgsql;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// Reads what visits may take and when it is free. What is taken of each resource comes merged from the database, as one
/// multirange: a search asks when, not by whom.
/// </summary>
internal static class FloorReader
{
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
        var hours = (await db.WorkingHours.AsNoTracking().ToListAsync(ct)).ToLookup(h => h.ResourceId);
        var breaks = (await db.WorkBreaks.AsNoTracking().ToListAsync(ct)).ToLookup(b => b.ResourceId);
        var absences = (await db.Absences.FromSql($"select *, xmin from absences where withdrawn_at is null and span && {window}")
            .AsNoTracking().ToListAsync(ct)).ToLookup(a => a.ResourceId, a => a.Span);
        var taken = await Taken(db, window, exceptCards, only, ct);
        return new WorkshopFloor(opening, window,
            [.. resources.Select(r => ResourceTimeline.Of(
                r, opening, days, hours[r.Id], breaks[r.Id], absences[r.Id], taken.GetValueOrDefault(r.Id) ?? []))]);
    }

    private static async Task<Dictionary<Guid, Interval[]>> Taken(
        WorkshopDbContext db, Interval window, int[] exceptCards, Guid[]? only, CancellationToken ct)
    {
        await db.Database.OpenConnectionAsync(ct);
        try
        {
            await using var command = new NpgsqlCommand(TakenSql, (NpgsqlConnection)db.Database.GetDbConnection())
            {
                Transaction = (NpgsqlTransaction?)db.Database.CurrentTransaction?.GetDbTransaction(),
                Parameters = { new("window", window), new("except", exceptCards), new("only", (object?)only ?? DBNull.Value) },
            };
            await using DbDataReader rows = await command.ExecuteReaderAsync(ct);
            var taken = new Dictionary<Guid, Interval[]>();
            while (await rows.ReadAsync(ct))
            {
                taken.Add(rows.GetGuid(0), rows.GetFieldValue<Interval[]>(1));
            }

            return taken;
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }
}
