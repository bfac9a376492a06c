using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Shims;

/// <summary>What a plan takes from the drift of an engine's valves; empty where nothing is known of its engine model.</summary>
/// <param name="Levels">The present clearance of lobes that were read at this visit, by their whole history.</param>
/// <param name="DriftMmPer10000Km">Of lobes whose drift is larger than its own standard deviation.</param>
/// <param name="Leaving">The probability of leaving the limits before the next check, once set to a clearance.</param>
/// <param name="Threshold">The manager's.</param>
internal sealed record PlanDrift(
    IReadOnlyDictionary<LobeKey, PresentLevel> Levels,
    IReadOnlyDictionary<LobeKey, decimal> DriftMmPer10000Km,
    Func<LobeKey, decimal, double?>? Leaving,
    double Threshold)
{
    public static async Task<PlanDrift> Read(WorkshopDbContext db, OpenCard open, double micrometerMm, CancellationToken ct)
    {
        var known = (await EngineDrift.Load(db, [open.Card.EngineId], ct)).Single();
        var version = await CurrentFits.Read(db, known.EngineModelId, ct);
        var threshold = await db.WorkshopProfiles.AsNoTracking().Select(p => p.DriftThreshold).SingleAsync(ct);
        if (version?.Fit is not { } fit)
        {
            return new PlanDrift(new Dictionary<LobeKey, PresentLevel>(), new Dictionary<LobeKey, decimal>(), null, threshold);
        }

        var forecast = EngineForecast.Of(known.Engine, fit);
        var found = known.Engine.Lobes.Select(l => forecast.Find(l.Lobe)).OfType<LobeForecast>().ToDictionary(f => f.Lobe);
        var ahead = open.Specification.ServiceItems.FirstOrDefault(i => i.Kind == ServiceItemKind.ValveClearanceCheck)?.Interval?.Every;
        return new PlanDrift(
            LevelsOf(open, known, found, fit.SigmaMm.Value),
            found.Values.Where(f => Math.Abs(f.DriftMm) > f.DriftDeviationMm).ToDictionary(f => f.Lobe, f => DriftFigures.Drift(f.DriftMm)!.Value),
            ahead is { } far ? LeavingWithin(forecast, found, known, micrometerMm, far) : null,
            threshold);
    }

    /// <summary>
    /// Only where the last reading is this visit's: the shim that it was taken with is the one that the plan knows. A reading that
    /// contradicts its history is believed as it stands: whoever measured it was asked to measure again.
    /// </summary>
    private static Dictionary<LobeKey, PresentLevel> LevelsOf(
        OpenCard open, EngineDrift known, Dictionary<LobeKey, LobeForecast> found, double sigmaMm) => known.Engine.Lobes
        .Where(l => found.ContainsKey(l.Lobe) && l is { CutSinceLastReading: null, Legs: [.., { Readings: [.., var last] }] }
            && last.Reading.JobCardNumber == open.Card.Number && last.ShimPartMm == l.ShimPartNowMm
            && Agrees(last.Reading, found[l.Lobe].PresentMm, sigmaMm))
        .ToDictionary(l => l.Lobe, l => new PresentLevel(
            DriftFigures.Mm(found[l.Lobe].PresentMm)!.Value, found[l.Lobe].PresentDeviationMm));

    /// <summary>The level lies in the bracket, or outside by no more than two standard deviations of a reading.</summary>
    private static bool Agrees(ClearanceReading reading, double levelMm, double sigmaMm) =>
        (reading.Go is not { } go || levelMm >= (double)go.Millimetres - (2 * sigmaMm))
        && (reading.NoGo is not { } noGo || levelMm <= (double)noGo.Millimetres + (2 * sigmaMm));

    private static Func<LobeKey, decimal, double?> LeavingWithin(
        EngineForecast forecast, Dictionary<LobeKey, LobeForecast> found, EngineDrift known, double micrometerMm, Distance ahead)
    {
        var settings = found.Keys.ToDictionary(lobe => lobe, lobe => (
            Outlook: forecast.SettingOf(lobe)!,
            Uncertainty: ShimUncertainty.AfterSwapMm(found[lobe].PresentDeviationMm, known.Engine.LimitsOf(lobe).LeverRatio, micrometerMm)));
        return (lobe, clearance) => settings.TryGetValue(lobe, out var setting)
            ? setting.Outlook.LeavesWithin((double)clearance, setting.Uncertainty, ahead)
            : null;
    }
}
