using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Records;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Records;

/// <summary>
/// Instruments of a visit, and how the calibration of each stood on a day: by the calibration that was the last one then. Which piece
/// it was is the workshop's business.
/// </summary>
internal sealed class InstrumentsThen
{
    private readonly Dictionary<Guid, Instrument> instruments;
    private readonly ILookup<Guid, Calibration> calibrations;

    private InstrumentsThen(Dictionary<Guid, Instrument> instruments, ILookup<Guid, Calibration> calibrations) =>
        (this.instruments, this.calibrations) = (instruments, calibrations);

    public IEnumerable<Instrument> InOrder => instruments.Values.OrderBy(i => i.Kind).ThenBy(i => i.Name, StringComparer.Ordinal);

    public static async Task<InstrumentsThen> Read(WorkshopDbContext db, IReadOnlyCollection<Guid> which, CancellationToken ct)
    {
        if (which.Count == 0)
        {
            return new InstrumentsThen([], Array.Empty<Calibration>().ToLookup(c => c.InstrumentId));
        }

        return new InstrumentsThen(
            await db.Instruments.AsNoTracking().Where(i => which.Contains(i.Id)).ToDictionaryAsync(i => i.Id, ct),
            (await db.Calibrations.AsNoTracking().Where(c => which.Contains(c.InstrumentId)).ToListAsync(ct)).ToLookup(c => c.InstrumentId));
    }

    /// <summary>"calibrated on 2026-01-05, holds until 2028-01-05".</summary>
    public string StandingOf(Guid id, LocalDate day)
    {
        var instrument = instruments[id];
        var (on, due) = calibrations[id].Where(c => c.DoneOn <= day).MaxBy(c => c.DoneOn) is { } then
            ? (then.DoneOn, then.DueOn)
            : (instrument.CalibratedOn, InstrumentStanding.DueOn(instrument));
        return (on, due) switch
        {
            ({ } since, { } until) when since <= day && day <= until => $"calibrated on {RecordWords.Day(since)}, holds until {RecordWords.Day(until)}",
            ({ } since, null) when since <= day => $"calibrated on {RecordWords.Day(since)}",
            ({ } since, _) when since > day => "in calibration when it was used",
            (null, { } until) when day <= until => $"calibration holds until {RecordWords.Day(until)}",
            _ when InstrumentStanding.IsReleased(instrument, day) => "released by the workshop's manager beyond its calibration",
            _ => "no calibration that holds is on record",
        };
    }
}
