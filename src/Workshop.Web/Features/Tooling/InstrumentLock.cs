using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Tooling;

/// <summary>Holds an instrument until the transaction ends, so that its row and its history say the same.</summary>
internal static class InstrumentLock
{
    public static async Task<Outcome<Instrument>> Take(WorkshopDbContext db, Guid id, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from instruments where id = {id} for update", ct);
        return await db.Instruments.SingleOrDefaultAsync(i => i.Id == id, ct) is { } instrument ? instrument : Problem.NotFound($"Instrument {id}");
    }

    /// <summary>The row is written in any case, so that its version covers calibrations and events, which are rows of their own.</summary>
    public static async Task<uint> Save(WorkshopDbContext db, Instrument instrument, uint version, CancellationToken ct)
    {
        var row = db.Entry(instrument);
        row.State = EntityState.Modified;
        var property = row.Property<uint>(MappingExtensions.RowVersion);
        property.OriginalValue = version;
        await db.SaveChangesAsync(ct);
        return property.CurrentValue;
    }

    /// <summary>The refusal where another of that kind has the serial number.</summary>
    public static async Task<Problem?> SerialTaken(WorkshopDbContext db, Instrument instrument, CancellationToken ct)
    {
        var other = await db.Instruments.AsNoTracking().SingleOrDefaultAsync(
            i => i.Kind == instrument.Kind && i.SerialNumber == instrument.SerialNumber && i.Id != instrument.Id, ct);
        var sentence = $"serialNumber is \"{instrument.SerialNumber}\": another {instrument.Kind.Spoken()}, {other?.Name}, has that; choose another.";
        return other is null ? null : Problem.Conflict("serial-taken", sentence) with { Faults = [new FieldFault("serialNumber", sentence)] };
    }
}
