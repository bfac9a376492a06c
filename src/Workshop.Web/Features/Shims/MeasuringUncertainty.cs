using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;

namespace Workshop.Web.Features.Shims;

/// <summary>
/// Standard uncertainties of the blades and micrometers that a visit was measured with, mm: of each kind the largest that the
/// tooling notes, or the usual where it notes none.
/// </summary>
internal sealed record MeasuringUncertainty(decimal BladeMm, decimal MicrometerMm)
{
    public static async Task<MeasuringUncertainty> Of(WorkshopDbContext db, CardMeasurements measured, CancellationToken ct)
    {
        var sets = measured.Readings.Select(r => r.InstrumentId).OfType<Guid>().ToHashSet();
        var micrometers = measured.Shims.Select(s => s.MicrometerId).OfType<Guid>().ToHashSet();
        Guid[] used = [.. sets, .. micrometers];
        var noted = await db.Instruments.AsNoTracking().Where(i => used.Contains(i.Id) && i.Unit == "mm" && i.Uncertainty != null)
            .Select(i => new { i.Id, i.Uncertainty }).ToListAsync(ct);
        return new MeasuringUncertainty(
            noted.Where(i => sets.Contains(i.Id)).Max(i => i.Uncertainty) ?? ShimUncertainty.UsualBladeMm,
            noted.Where(i => micrometers.Contains(i.Id)).Max(i => i.Uncertainty) ?? ShimUncertainty.UsualMicrometerMm);
    }
}
