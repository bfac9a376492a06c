using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Web.Features.Imports;

/// <summary>
/// Decides what a file writes: judges its lines by the same rules as what is typed today, and makes the rows. Writes nothing
/// itself.
/// </summary>
internal sealed class WorksheetEntry(WorksheetBooks books, ReadingImport import, FileFaults faults)
{
    // A worksheet knows the day, not the hour: as found at noon, what went in and as left an hour later.
    private static readonly LocalTime Noon = new(12, 0);
    private static readonly Duration UntilLeft = Duration.FromHours(1);

    private readonly Dictionary<(Guid Engine, LobeKey Lobe, Stage Stage, LocalDate On), int> lines = [];

    public FileOdometers Odometers { get; } = new(import.ImportedBy, books.Now, faults);

    public List<ClearanceReading> Readings { get; } = [];

    public List<ShimObservation> Shims { get; } = [];

    public List<ValveEvent> Events { get; } = [];

    public List<ImportReadings.Visit> Visits { get; } = [];

    public Guid[] Engines => [.. Readings.Select(r => r.EngineId).Distinct()];

    public Guid[] Motorcycles => [.. Visits.Select(v => v.MotorcycleId).Distinct()];

    public void Take(IReadOnlyList<WorksheetRow> rows)
    {
        foreach (var ofOne in rows.Where(r => r.Motorcycle.Length > 0).GroupBy(r => r.Motorcycle))
        {
            if (books.Find(ofOne.Key) is { } motorcycle)
            {
                // In order of day, so that each odometer reading is judged by the ones before it in the file too.
                foreach (var day in ofOne.Where(r => r.Date is not null).GroupBy(r => r.Date!.Value).OrderBy(d => d.Key))
                {
                    TakeVisit(motorcycle, day.Key, [.. day]);
                }

                continue;
            }

            foreach (var row in ofOne.Where(r => r.Motorcycle.Length <= Http.Limits.Registration))
            {
                faults.Add(row.Line, WorksheetColumn.Motorcycle,
                    $"It is \"{row.Motorcycle}\": no motorcycle in the books has this registration; add it first, or write it as the books do.");
            }
        }
    }

    private void TakeVisit(MotorcycleInBooks motorcycle, LocalDate on, IReadOnlyList<WorksheetRow> rows)
    {
        var odometer = Odometers.Of(motorcycle, on, [.. rows.Select(r => (r.Line, r.Odometer))]);
        if (motorcycle.FittedOn(on) is not { } fitting)
        {
            if (odometer is not null)
            {
                faults.Add(rows[0].Line, WorksheetColumn.Date, $"It is {on:uuuu-MM-dd}: {motorcycle.Motorcycle.Registration} had no engine fitted on that day.");
            }

            return;
        }

        var known = rows.Where(r => IsKnown(r, fitting.EngineId, on)).ToList();
        var shims = known.GroupBy(r => (r.Lobe!.Value.Valve, Stage: r.Stage!.Value)).Select(g => (g.Key, Mm: ShimOf([.. g]))).ToList();
        if (!faults.None || odometer is null)
        {
            return;
        }

        var visit = new Visit(fitting.EngineId, odometer.Id, on.At(Noon).InZoneLeniently(books.Time.Zone).ToInstant());
        Readings.AddRange(known.Select(r => ReadingOf(visit, r)));
        var before = Shims.Count;
        foreach (var (key, mm) in shims)
        {
            TakeShim(visit, key.Valve, key.Stage, mm);
        }

        Visits.Add(new ImportReadings.Visit(
            motorcycle.Motorcycle.Id, motorcycle.Motorcycle.Registration, on, odometer.Count, odometer.Unit, rows.Count, Shims.Count - before));
    }

    /// <summary>The engine has the lobe, and it was not read at this stage of this day before.</summary>
    private bool IsKnown(WorksheetRow row, Guid engine, LocalDate on)
    {
        if (row.Lobe is not { } lobe || row.Stage is not { } stage)
        {
            return false;
        }

        var specification = books.SpecificationOf(engine);
        if ((ReadingRules.FaultOfValve("it", lobe.Valve, specification)
            ?? ReadingRules.FaultOfLobe("the lobe", lobe.Valve, lobe.Lobe, specification)) is { } fault)
        {
            faults.Add(row.Line, WorksheetColumn.Valve, char.ToUpperInvariant(fault.Sentence[0]) + fault.Sentence[1..]);
            return false;
        }

        if (row.ShimMm is not null && specification.Shims is null)
        {
            faults.Add(row.Line, WorksheetColumn.Shim, $"It is {row.ShimMm} mm, but the engine has screws, no shims: leave it empty.");
        }

        if (!lines.TryAdd((engine, lobe, stage, on), row.Line))
        {
            faults.Add(row.Line, WorksheetColumn.Valve, $"It is {lobe}, which line {lines[(engine, lobe, stage, on)]} gives for the same day and stage: once is allowed.");
            return false;
        }

        if (books.HasReading(engine, lobe, stage, on))
        {
            faults.Add(row.Line, WorksheetColumn.Valve, $"It is {lobe}, whose reading of that day and stage is in the books already: take the line out.");
            return false;
        }

        return true;
    }

    /// <summary>One shim a valve and stage, on whichever of its lobes' lines it stands.</summary>
    private decimal? ShimOf(IReadOnlyList<WorksheetRow> ofValveAndStage)
    {
        var measured = ofValveAndStage.FirstOrDefault(r => r.ShimMm is not null);
        foreach (var other in ofValveAndStage.Where(r => r.ShimMm is not null && r.ShimMm != measured!.ShimMm))
        {
            faults.Add(other.Line, WorksheetColumn.Shim,
                $"It is {other.ShimMm} mm, but line {measured!.Line} gives {measured.ShimMm} mm for the same valve: one shim serves both lobes.");
        }

        return measured?.ShimMm;
    }

    /// <summary>As left without a shim, nobody knows whether it was changed.</summary>
    private void TakeShim(Visit visit, ValveKey valve, Stage stage, decimal? mm)
    {
        if (mm is { } thickness)
        {
            Shims.Add(ShimOf(visit, valve, stage, ShimThickness.FromMillimetres(thickness)));
        }
        else if (stage == Stage.AsLeft)
        {
            Events.Add(UnknownChangeOf(visit, valve));
        }
    }

    private ClearanceReading ReadingOf(Visit visit, WorksheetRow row) => new()
    {
        Id = NewId.At(books.Now),
        EngineId = visit.Engine,
        ImportId = import.Id,
        Valve = row.Lobe!.Value.Valve,
        Lobe = row.Lobe.Value.Lobe,
        Stage = row.Stage!.Value,
        Attempt = 1,
        Kind = row.Kind,
        Go = row.GoMm is { } go ? Clearance.FromMillimetres(go) : null,
        NoGo = row.NoGoMm is { } noGo ? Clearance.FromMillimetres(noGo) : null,
        OdometerReadingId = visit.OdometerReading,
        MeasuredAt = visit.At(row.Stage.Value),
        MeasuredBy = import.ImportedBy,
        EnteredBy = import.ImportedBy,
        EnteredAt = books.Now,
    };

    private ShimObservation ShimOf(Visit visit, ValveKey valve, Stage stage, ShimThickness thickness) => new()
    {
        Id = NewId.At(books.Now),
        EngineId = visit.Engine,
        ImportId = import.Id,
        Valve = valve,
        Stage = stage,
        Thickness = thickness,
        OdometerReadingId = visit.OdometerReading,
        MeasuredAt = visit.At(stage),
        MeasuredBy = import.ImportedBy,
        EnteredBy = import.ImportedBy,
        EnteredAt = books.Now,
    };

    private ValveEvent UnknownChangeOf(Visit visit, ValveKey valve) => new()
    {
        Id = NewId.At(books.Now),
        EngineId = visit.Engine,
        ImportId = import.Id,
        Valve = valve,
        Kind = ValveEventKind.ChangeUnknown,
        OdometerReadingId = visit.OdometerReading,
        HappenedAt = visit.At(Stage.AsLeft),
        EnteredBy = import.ImportedBy,
        EnteredAt = books.Now,
    };

    private sealed record Visit(Guid Engine, Guid OdometerReading, Instant Noon)
    {
        public Instant At(Stage stage) => stage == Stage.AsFound ? Noon : Noon + UntilLeft;
    }
}
