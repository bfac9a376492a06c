using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Shims;

/// <summary>Whether what was left on a card agrees with what was found and the shims.</summary>
internal static class Fitted
{
    public static async Task<IReadOnlyList<FittedDisagreement>> Doubts(
        WorkshopDbContext db, OpenCard open, CardMeasurements measured, CancellationToken ct)
    {
        if (open.Specification.Shims is null || measured.Readings.TrueForAll(r => r.Stage != Domain.Clearances.Stage.AsLeft))
        {
            return [];
        }

        var uncertainty = await MeasuringUncertainty.Of(db, measured, ct);
        return FittedCheck.Of(
            open.Specification, measured.Readings, measured.Shims, measured.Events, await EarlierShims.Read(db, open, ct),
            uncertainty.BladeMm, uncertainty.MicrometerMm);
    }
}
