using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>
/// Takes over readings and shims from old worksheets, all or nothing: while one line is at fault nothing is written, and
/// every fault is named with line and column. A dry run decides everything and writes nothing.
/// </summary>
public static class ImportReadings
{
    public sealed record Request : IFileRequest
    {
        /// <summary>Where the text comes from; "pasted text" where it is not given.</summary>
        public string? FileName { get; init; }

        /// <summary>
        /// The whole text. Its first line names the columns motorcycle, date, odometer, valve, stage, go, no-go and, where
        /// there are shims, shim; commas or semicolons between cells, decimal point or decimal comma.
        /// </summary>
        public string? Csv { get; init; }

        /// <summary>Decide and answer, but write nothing.</summary>
        public bool DryRun { get; init; }
    }

    /// <param name="ImportId">Absent after a dry run.</param>
    /// <param name="Lines">Lines of the file that are readings.</param>
    /// <param name="OdometerReadings">New ones; a day whose reading is in the books already needs none.</param>
    /// <param name="ChangesUnknown">Valves measured as left with no shim given: changed or not is unknown, which cuts the leg.</param>
    public sealed record Answer(
        bool DryRun, Guid? ImportId, int Lines, int Motorcycles, int OdometerReadings, int Readings, int Shims, int ChangesUnknown,
        IReadOnlyList<Visit> Visits);

    /// <summary>One motorcycle on one day.</summary>
    public sealed record Visit(
        Guid MotorcycleId, string Registration, LocalDate On, int Odometer, OdometerUnit OdometerUnit, int Readings, int Shims);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => this.AddFileRules("the text of the worksheets");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var faults = new FileFaults(WorksheetColumn.All, "worksheets-at-fault");
        var rows = WorksheetFile.Read(request.Csv!, faults);
        var books = await WorksheetBooks.Read(db, rows, clock.GetCurrentInstant(), ct);
        var import = new ReadingImport
        {
            Id = NewId.At(clock),
            FileName = FileRules.NameOf(request),
            Rows = rows.Count,
            ImportedBy = actor.PersonId,
            ImportedAt = clock.GetCurrentInstant(),
        };
        var entry = new WorksheetEntry(books, import, faults);
        entry.Take(rows);
        if (!faults.None)
        {
            return faults.ToProblem();
        }

        if (!request.DryRun)
        {
            db.ReadingImports.Add(import);
            db.OdometerReadings.AddRange(entry.Odometers.Added);
            db.ClearanceReadings.AddRange(entry.Readings);
            db.ShimObservations.AddRange(entry.Shims);
            db.ValveEvents.AddRange(entry.Events);
            await ForecastRows.Rewrite(db, entry.Engines, clock, ct);
            await DueRows.Rewrite(db, entry.Motorcycles, clock, ct);
            await Refits.RequestFor(db, entry.Engines, clock, ct);
        }

        return new Answer(
            request.DryRun,
            request.DryRun ? null : import.Id,
            rows.Count,
            entry.Motorcycles.Length,
            entry.Odometers.Added.Count,
            entry.Readings.Count,
            entry.Shims.Count,
            entry.Events.Count,
            entry.Visits);
    }
}
