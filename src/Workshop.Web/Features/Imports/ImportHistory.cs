using System.Security.Cryptography;
using System.Text;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Features.Imports;

/// <summary>
/// Takes over what was done before the motorcycles came into the books, all or nothing: while one line is at fault nothing is
/// written, and every fault is named with line and column. A dry run decides everything and writes nothing; a file that was taken
/// over before, known by its content, is answered with what it wrote then.
/// </summary>
public static class ImportHistory
{
    public sealed record Request : IFileRequest
    {
        /// <summary>Where the text comes from; "pasted text" where it is not given.</summary>
        public string? FileName { get; init; }

        /// <summary>
        /// The whole text. Its first line names the columns motorcycle, item, date, odometer, unit and, where there are notes, note;
        /// commas or semicolons between cells.
        /// </summary>
        public string? Csv { get; init; }

        /// <summary>Decide and answer, but write nothing.</summary>
        public bool DryRun { get; init; }
    }

    /// <param name="ImportId">Absent after a dry run.</param>
    /// <param name="AlreadyImported">The same file was taken over before; the figures are of then, and nothing was written now.</param>
    /// <param name="Lines">Lines of the file below its column names.</param>
    /// <param name="Motorcycles">With something new.</param>
    /// <param name="OdometerReadings">New ones; a day whose reading is in the books already needs none.</param>
    /// <param name="DoneItems">New ones.</param>
    /// <param name="InBooksAlready">Lines whose item was recorded for that day and distance already.</param>
    /// <param name="Duplicates">Lines that repeat an earlier line of the file.</param>
    public sealed record Answer(
        bool DryRun, Guid? ImportId, bool AlreadyImported, int Lines, int Motorcycles, int OdometerReadings, int DoneItems,
        int InBooksAlready, int Duplicates, IReadOnlyList<Visit> Visits);

    /// <summary>One motorcycle on one day.</summary>
    /// <param name="Items">The new ones, by code.</param>
    public sealed record Visit(
        Guid MotorcycleId, string Registration, LocalDate On, int Odometer, OdometerUnit OdometerUnit, IReadOnlyList<string> Items);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => this.AddFileRules("the text of the history");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(request.Csv!));
        if (await Earlier(db, hash, request.DryRun, ct) is { } earlier)
        {
            return earlier;
        }

        var faults = new FileFaults(HistoryColumn.All, "history-at-fault");
        var rows = HistoryRow.Read(request.Csv!, faults);
        var now = clock.GetCurrentInstant();
        var motorcycles = await NamedMotorcycles.Read(db, [.. rows.Select(r => r.Motorcycle)], byVin: true, now, ct);
        var import = new HistoryImport
        {
            Id = NewId.At(clock), FileName = FileRules.NameOf(request), Lines = rows.Count, ContentHash = hash,
            ImportedBy = actor.PersonId, ImportedAt = now,
        };
        var entry = new HistoryEntry(motorcycles, await InBooks(db, motorcycles, ct), import, faults);
        entry.Take(rows);
        if (!faults.None)
        {
            return faults.ToProblem();
        }

        var answer = new Answer(
            request.DryRun, request.DryRun ? null : import.Id, AlreadyImported: false, rows.Count, entry.Touched.Length,
            entry.Odometers.Added.Count, entry.Done.Count, entry.InBooks, entry.Duplicates, entry.Visits);
        if (!request.DryRun)
        {
            db.HistoryImports.Add(import);
            db.Remarks.AddRange(entry.Remarks);
            db.OdometerReadings.AddRange(entry.Odometers.Added);
            db.DoneItems.AddRange(entry.Done);
            await Rewrite(db, entry.Touched, clock, ct);
        }

        return answer;
    }

    /// <summary>Once for each motorcycle that has something new, however many lines it has.</summary>
    private static async Task Rewrite(WorkshopDbContext db, Guid[] touched, IClock clock, CancellationToken ct)
    {
        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
        var engines = await db.EngineFittings.Where(f => touched.Contains(f.MotorcycleId)).Select(f => f.EngineId).Distinct().ToListAsync(ct);
        await ForecastRows.RewriteSoon(db, engines, clock, ct);
        await DueRows.Rewrite(db, touched, clock, ct);
    }

    private static async Task<Dictionary<(Guid, string, LocalDate), Distance>> InBooks(
        WorkshopDbContext db, NamedMotorcycles motorcycles, CancellationToken ct)
    {
        var ids = motorcycles.All.Select(m => m.Motorcycle.Id).ToList();
        var done = await db.DoneItems.AsNoTracking().Where(d => ids.Contains(d.MotorcycleId))
            .Select(d => new { d.MotorcycleId, d.ServiceItemCode, d.DoneOn, d.Distance, d.EnteredAt }).ToListAsync(ct);
        return done.GroupBy(d => (d.MotorcycleId, d.ServiceItemCode, d.DoneOn))
            .ToDictionary(g => g.Key, g => g.OrderBy(d => d.EnteredAt).Last().Distance);
    }

    private static async Task<Answer?> Earlier(WorkshopDbContext db, byte[] hash, bool dryRun, CancellationToken ct)
    {
        var import = await db.HistoryImports.AsNoTracking().SingleOrDefaultAsync(i => i.ContentHash == hash, ct);
        if (import is null)
        {
            return null;
        }

        var done = await db.DoneItems.AsNoTracking().Where(d => d.ImportId == import.Id)
            .GroupBy(d => d.MotorcycleId).Select(g => g.Count()).ToListAsync(ct);
        return new Answer(dryRun, import.Id, AlreadyImported: true, import.Lines, done.Count, 0, done.Sum(), 0, 0, []);
    }
}
