using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Records;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.TorqueSheets;

namespace Workshop.Web.Features.Records;

/// <summary>What was opened and tightened again, for the record of a visit. Of an item not done nothing was opened, so it is no tick that lacks.</summary>
internal static class RecordedFasteners
{
    public static async Task<IReadOnlyList<RecordedFastener>> Read(WorkshopDbContext db, OpenCard open, WorkshopTime time, CancellationToken ct)
    {
        var sheet = await GetTorqueSheet.Read(db, open, ct);
        var ticks = sheet.Lines.Select(l => l.Tick.Last).OfType<FastenerTick>().ToList();
        var wrenches = ticks.Select(t => t.WrenchId).OfType<Guid>().ToHashSet();
        var instruments = await InstrumentsThen.Read(db, wrenches, ct);
        var ids = ticks.Select(t => t.Id).ToHashSet();
        var witnessed = (await db.TickWitnesses.Where(w => ids.Contains(w.TickId)).Select(w => w.TickId).ToListAsync(ct)).ToHashSet();
        return [.. sheet.Sections.SelectMany(s => s.Lines.Where(l => l.IsTightened).Select(l => Of(s.Joint?.Name, l)))];

        RecordedFastener Of(string? joint, TorqueLine line)
        {
            var tick = line.Tick.Last!;
            var day = time.DayOf(tick.TickedAt);
            var wrench = tick.WrenchId is { } id ? instruments.StandingOf(id, day) : null;
            return new RecordedFastener(
                line.Fastener.Name, line.Fastener.Count, line.Fastener.Thread, joint, line.Fastener.Torque.NewtonMetres, Torque(line),
                day, wrench, witnessed.Contains(tick.Id));
        }
    }

    private static string Torque(TorqueLine line)
    {
        var fastener = line.Fastener;
        var steps = string.Join(", then ", line.Steps.Select(t => string.Create(CultureInfo.InvariantCulture, $"{t} ({t.PoundFeet:0.0} lbf.ft)")));
        var angle = FastenerWords.SpokenAngle(fastener.AngleDegrees, fastener.AngleToleranceDegrees) is { } degrees ? $", then {degrees} further" : "";
        return $"{steps}{angle}; thread {fastener.Treatment.Spoken()}{(fastener.ThreadCompound is { } compound ? $": {compound}" : "")}";
    }
}
