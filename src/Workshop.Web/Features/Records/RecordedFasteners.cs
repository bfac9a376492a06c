using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Records;
using Workshop.Domain.Tooling;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.TorqueSheets;

namespace Workshop.Web.Features.Records;

/// <summary>What was opened and tightened again, for the record of a visit.</summary>
internal static class RecordedFasteners
{
    public static async Task<IReadOnlyList<RecordedFastener>> Read(WorkshopDbContext db, OpenCard open, WorkshopTime time, CancellationToken ct)
    {
        var sheet = await GetTorqueSheet.Read(db, open, ct);
        var ticks = sheet.Lines.Select(l => l.Tick.Last).OfType<FastenerTick>().ToList();
        var wrenches = ticks.Select(t => t.WrenchId).OfType<Guid>().ToHashSet();
        var instruments = await db.Instruments.AsNoTracking().Where(i => wrenches.Contains(i.Id)).ToDictionaryAsync(i => i.Id, ct);
        var ids = ticks.Select(t => t.Id).ToHashSet();
        var witnessed = (await db.TickWitnesses.Where(w => ids.Contains(w.TickId)).Select(w => w.TickId).ToListAsync(ct)).ToHashSet();
        return [.. sheet.Sections.SelectMany(s => s.Lines.Select(l => Of(s.Joint?.Name, l)))];

        RecordedFastener Of(string? joint, TorqueLine line)
        {
            var tick = line.IsTightened ? line.Tick.Last : null;
            var day = tick is null ? (LocalDate?)null : time.DayOf(tick.TickedAt);
            var wrench = tick?.WrenchId is { } id && instruments.TryGetValue(id, out var known) ? StandingOf(known, day) : null;
            return new RecordedFastener(
                line.Fastener.Name, line.Fastener.Count, line.Fastener.Thread, joint, line.Fastener.Torque.NewtonMetres, Torque(line),
                day, wrench, tick is not null && witnessed.Contains(tick.Id));
        }
    }

    /// <summary>How an instrument stood on a day, without its name: "calibrated on 2026-01-05, holds until 2028-01-05".</summary>
    public static string StandingOf(Instrument instrument, LocalDate? day)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return (instrument.CalibratedOn, InstrumentStanding.DueOn(instrument)) switch
        {
            ({ } on, { } due) when day is null || due >= day => $"calibrated on {RecordWords.Day(on)}, holds until {RecordWords.Day(due)}",
            ({ } on, null) => $"calibrated on {RecordWords.Day(on)}",
            (_, { } due) when day is null || due >= day => $"calibration holds until {RecordWords.Day(due)}",
            _ when day is { } d && InstrumentStanding.IsReleased(instrument, d) => "released by the workshop's manager beyond its calibration",
            _ => "no calibration that holds is on record",
        };
    }

    private static string Torque(TorqueLine line)
    {
        var fastener = line.Fastener;
        var steps = string.Join(", then ", line.Steps.Select(t => string.Create(CultureInfo.InvariantCulture, $"{t} ({t.PoundFeet:0.0} lbf.ft)")));
        var angle = FastenerWords.SpokenAngle(fastener.AngleDegrees, fastener.AngleToleranceDegrees) is { } degrees ? $", then {degrees} further" : "";
        return $"{steps}{angle}; thread {fastener.Treatment.Spoken()}{(fastener.ThreadCompound is { } compound ? $": {compound}" : "")}";
    }
}
