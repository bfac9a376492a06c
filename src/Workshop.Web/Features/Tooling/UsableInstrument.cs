using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Tooling;

/// <summary>An instrument that is named must exist, be of its kind, in use, and in calibration on the day.</summary>
internal static class UsableInstrument
{
    /// <summary>Nothing where it may be used, or none is named.</summary>
    public static async Task<FieldFault?> FaultOf(
        WorkshopDbContext db, string field, Guid? id, InstrumentKind kind, LocalDate day, CancellationToken ct)
    {
        if (id is null)
        {
            return null;
        }

        var instrument = await db.Instruments.AsNoTracking().SingleOrDefaultAsync(i => i.Id == id, ct);
        var word = kind.Spoken();
        var wanted = "aeiou".Contains(word[0], StringComparison.Ordinal) ? $"an {word}" : $"a {word}";
        return instrument switch
        {
            null => new FieldFault(field, $"{field} is {id}: no instrument has it; choose {wanted} of the tooling."),
            _ when instrument.Kind != kind =>
                new FieldFault(field, $"{field} is {instrument.Name}, {instrument.SerialNumber}: it is no {word}; choose {wanted}."),
            _ when instrument.State != InstrumentState.InUse =>
                new FieldFault(field, $"{field} is {instrument.Name}, {instrument.SerialNumber}: it is not in use; choose {wanted} that is."),
            _ when !instrument.MayBeUsedOn(day) =>
                new FieldFault(field, $"{field} is {instrument.Name}, {instrument.SerialNumber}: its calibration was due on {instrument.CalibrationDueOn:uuuu-MM-dd}; "
                    + $"choose {wanted} that is in calibration on {day:uuuu-MM-dd}."),
            _ => null,
        };
    }
}
