using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.People;

namespace Workshop.Web.Features.Imports;

/// <summary>
/// Decides what a file of older history writes: judges its lines by the same rules as what is typed today, recognises what is
/// there already, and makes the rows. Writes nothing itself.
/// </summary>
/// <param name="motorcycles">Those that the file names.</param>
/// <param name="inBooks">What of them is recorded as done: motorcycle, item and day, with the distance.</param>
internal sealed class HistoryEntry(
    NamedMotorcycles motorcycles, IReadOnlyDictionary<(Guid Motorcycle, string Item, LocalDate On), Distance> inBooks, HistoryImport import,
    FileFaults faults)
{
    private const int MostCodesNamed = 20;

    private readonly HashSet<(Guid Motorcycle, string Item, LocalDate On)> inFile = [];

    public FileOdometers Odometers { get; } = new(import.ImportedBy, motorcycles.Now, faults);

    public List<DoneItem> Done { get; } = [];

    public List<Remark> Remarks { get; } = [];

    public List<ImportHistory.Visit> Visits { get; } = [];

    /// <summary>Lines whose item is recorded for that day and distance already.</summary>
    public int InBooks { get; private set; }

    /// <summary>Lines that say what an earlier line of the file says.</summary>
    public int Duplicates { get; private set; }

    /// <summary>Those with something new.</summary>
    public Guid[] Touched => [.. Done.Select(d => d.MotorcycleId).Concat(Odometers.Added.Select(r => r.MotorcycleId)).Distinct()];

    public void Take(IReadOnlyList<HistoryRow> rows)
    {
        var named = rows.Where(r => r.Motorcycle.Length > 0).ToLookup(r => motorcycles.Find(r.Motorcycle));
        foreach (var row in named[null])
        {
            faults.Add(row.Line, HistoryColumn.Motorcycle,
                $"It is \"{CsvLine.Shorten(row.Motorcycle)}\": no motorcycle in the books has this registration or VIN; add it first, or write it as the books do.");
        }

        foreach (var ofOne in named.Where(n => n.Key is not null))
        {
            // In order of day, so that each odometer reading is judged by the ones before it in the file too.
            foreach (var day in ofOne.Where(r => r.Date is not null).GroupBy(r => r.Date!.Value).OrderBy(d => d.Key))
            {
                TakeDay(ofOne.Key!, day.Key, [.. day]);
            }
        }
    }

    private void TakeDay(MotorcycleInBooks motorcycle, LocalDate on, IReadOnlyList<HistoryRow> rows)
    {
        JudgeUnits(motorcycle, on, rows);
        var odometer = Odometers.Of(motorcycle, on, [.. rows.Select(r => (r.Line, r.Odometer))]);
        if (motorcycle.FittedOn(on) is not { } fitting)
        {
            if (odometer is not null)
            {
                faults.Add(rows[0].Line, HistoryColumn.Date, $"It is {on:uuuu-MM-dd}: {motorcycle.Motorcycle.Registration} had no engine fitted on that day.");
            }

            return;
        }

        var codes = motorcycles.SpecificationOf(fitting.EngineId).ServiceItems.Select(i => i.Code).ToList();
        var before = Done.Count;
        foreach (var row in rows.Where(r => r.Item.Length > 0))
        {
            if (!codes.Contains(row.Item))
            {
                faults.Add(row.Line, HistoryColumn.Item,
                    $"It is \"{CsvLine.Shorten(row.Item)}\": the engine model of {motorcycle.Motorcycle.Registration} has {string.Join(", ", codes.Take(MostCodesNamed))}.");
            }
            else if (odometer is not null)
            {
                TakeItem(motorcycle, row, odometer.Distance);
            }
        }

        if (odometer is not null)
        {
            Visits.Add(new ImportHistory.Visit(
                motorcycle.Motorcycle.Id, motorcycle.Motorcycle.Registration, on, odometer.Count, odometer.Unit,
                [.. Done.Skip(before).Select(d => d.ServiceItemCode)]));
        }
    }

    /// <summary>A count is never converted: whoever wrote the other unit meant another odometer, or made a mistake.</summary>
    private void JudgeUnits(MotorcycleInBooks motorcycle, LocalDate on, IReadOnlyList<HistoryRow> rows)
    {
        var instruments = motorcycle.Odometer.Instruments;
        var unit = (instruments.LastOrDefault(o => o.FittedOn <= on) ?? instruments[0]).Unit;
        foreach (var row in rows.Where(r => r.Unit is not null && r.Unit != unit))
        {
            faults.Add(row.Line, HistoryColumn.Unit,
                $"It is {row.Unit!.Value.Symbol()}: the odometer of {motorcycle.Motorcycle.Registration} counted {unit.Symbol()} on that day; give what it showed, in {unit.Symbol()}.");
        }
    }

    private void TakeItem(MotorcycleInBooks motorcycle, HistoryRow row, Distance distance)
    {
        var key = (motorcycle.Motorcycle.Id, row.Item, row.Date!.Value);
        if (inBooks.TryGetValue(key, out var recorded))
        {
            if (recorded == distance)
            {
                InBooks++;
                return;
            }

            var unit = row.Unit ?? OdometerUnit.Kilometres;
            faults.Add(row.Line, HistoryColumn.Odometer,
                $"It is {row.Odometer} {unit.Symbol()}: the books have {row.Item} on that day at {recorded.Kilometres:0.#} km from the first odometer on; give that, or take the line out.");
            return;
        }

        if (!inFile.Add(key))
        {
            Duplicates++;
            return;
        }

        var remark = row.Note.Length == 0 ? null : new Remark
        {
            Id = NewId.At(motorcycles.Now), Text = row.Note, WrittenBy = import.ImportedBy, WrittenAt = motorcycles.Now,
        };
        if (remark is not null)
        {
            Remarks.Add(remark);
        }

        Done.Add(new DoneItem
        {
            Id = NewId.At(motorcycles.Now),
            MotorcycleId = motorcycle.Motorcycle.Id,
            ServiceItemCode = row.Item,
            DoneOn = row.Date.Value,
            Distance = distance,
            DoneBy = import.ImportedBy,
            ImportId = import.Id,
            RemarkId = remark?.Id,
            EnteredAt = motorcycles.Now,
        });
    }
}
