using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Web.Features.Motorcycles;

namespace Workshop.Web.Features.Imports;

/// <summary>The odometer readings of a file: one a motorcycle and day, judged by the same rules as what is typed today.</summary>
internal sealed class FileOdometers(Guid importedBy, Instant now, FileFaults faults)
{
    /// <summary>The columns of every file that has odometer readings.</summary>
    public const string Date = "date";
    public const string Odometer = "odometer";

    private readonly Actor actor = new(importedBy, new HashSet<string>());

    /// <summary>Rows to be written; a day whose reading is in the books already needs none.</summary>
    public List<OdometerReading> Added { get; } = [];

    /// <summary>The reading of a day, whose lines must agree; nothing where one is at fault.</summary>
    /// <param name="motorcycle">Its days come in order, so that each is judged by those before it in the file too.</param>
    /// <param name="on">The day.</param>
    /// <param name="rows">The lines of that day, with what could be read of their odometer.</param>
    public OdometerReading? Of(MotorcycleInBooks motorcycle, LocalDate on, IReadOnlyList<(int Line, int? Count)> rows)
    {
        var first = rows.FirstOrDefault(r => r.Count is { } count && count <= OdometerCount.Largest);
        if (first.Count is not { } shown)
        {
            return null;
        }

        foreach (var (line, count) in rows.Where(r => r.Count is not null && r.Count != shown))
        {
            faults.Add(line, Odometer,
                $"It is {count}, but line {first.Line} of the same day says {shown}: one motorcycle has one reading a day here.");
        }

        var typed = new OdometerEntry.Typed("it", shown, on) { DayField = Date };
        if (!OdometerEntry.Decide(motorcycle.Odometer, typed, actor, now).TryGet(out var reading, out var problem))
        {
            faults.Add(first.Line, Odometer, problem);
            return null;
        }

        if (!motorcycle.Odometer.Standing.Contains(reading))
        {
            motorcycle.Odometer.Standing.Add(reading);
            Added.Add(reading);
        }

        return reading;
    }
}
