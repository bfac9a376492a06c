using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Motorcycles;

namespace Workshop.Web.Features.Intervals;

/// <summary>
/// Writes anew what is due of a motorcycle, and the visit that is proposed: from the current version of its engine model, what was
/// done, what was put off, and the odometer readings that count. Called by every use case that changes one of them.
/// </summary>
internal static class DueRows
{
    public const int BatchSize = 1000;

    public static Task Rewrite(WorkshopDbContext db, Guid motorcycleId, IClock clock, CancellationToken ct) =>
        Rewrite(db, [motorcycleId], clock, ct);

    /// <summary>
    /// Rewrites the rows of these motorcycles. Saves what the use case has pending first, because it reads what stands in the
    /// database; two rewrites of one motorcycle wait for each other.
    /// </summary>
    public static async Task Rewrite(
        WorkshopDbContext db, IReadOnlyCollection<Guid> motorcycles, IClock clock, CancellationToken ct)
    {
        await db.SaveChangesAsync(ct);
        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        foreach (var batch in motorcycles.Order().Chunk(BatchSize))
        {
            await MotorcycleLock.Take(db, batch, ct);
            var histories = await DueHistory.Load(db, batch, ct);
            await DueRowsTable.Replace(db, batch, Decide(histories, today, now), ct);
        }
    }

    private static (List<DueItem> Items, List<DueVisit> Visits) Decide(
        IReadOnlyList<DueHistory> histories, LocalDate today, Instant now)
    {
        var (items, visits) = (new List<DueItem>(), new List<DueVisit>(histories.Count));
        foreach (var history in histories)
        {
            if (VisitProposal.Of(history.Subject, DueEntry.Of(history.Subject), today) is { } proposal)
            {
                items.AddRange(proposal.Items.Select(item => RowOf(history, item, now)));
                visits.Add(new DueVisit
                {
                    MotorcycleId = history.MotorcycleId,
                    EngineModelId = history.EngineModelId,
                    ComesOn = proposal.ComesOn,
                    Left = proposal.Items.Where(i => i.IsNow && i.Entry.Next.At is not null)
                        .Min(i => i.Entry.Next.At - history.Subject.Track.Last.Distance),
                    LabourMinutes = proposal.LabourMinutes,
                    SavesMinutes = proposal.SavesMinutes,
                    SpecialTools = [.. proposal.SpecialTools],
                    ComputedAt = now,
                });
            }
        }

        return (items, visits);
    }

    private static DueItem RowOf(DueHistory history, ProposedItem proposed, Instant now)
    {
        var (entry, due) = (proposed.Entry, proposed.Entry.Next);
        return new DueItem
        {
            MotorcycleId = history.MotorcycleId,
            ServiceItemCode = entry.Item.Code,
            Name = entry.Item.Name,
            DueOn = due.On,
            DueAt = due.At,
            Left = due.At - history.Subject.Track.Last.Distance,
            ExpectedOn = due.ExpectedOn,
            EarliestOn = due.Span?.First,
            LatestOn = due.IsOpenEnded ? null : due.Span?.Last,
            RateBasis = due.At is null ? null : history.Subject.Rate.Basis,
            LastDoneOn = entry.LastDone?.On,
            LastDoneAt = entry.LastDone?.Distance,
            ByForecast = due.ByForecast,
            ComesOn = entry.ComesOn,
            PutOffId = entry.PutOff?.Id,
            IncludedIn = entry.IncludedIn,
            Advice = proposed.Advice,
            SavesMinutes = proposed.SavesMinutes,
            ComputedAt = now,
        };
    }
}
