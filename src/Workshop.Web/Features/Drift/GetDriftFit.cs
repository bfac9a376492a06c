using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>The fit of an engine model that counts, with how far a refit is and how the slopes of its valves lie.</summary>
public static class GetDriftFit
{
    /// <summary>So many of the last versions are answered.</summary>
    public const int LongestHistory = 20;

    public sealed record Request(Guid EngineModelId);

    /// <param name="Version">Of the fit; absent where there never was one.</param>
    /// <param name="Fit">Its figures in mm, drifts in mm per 10,000 km; absent where there is none.</param>
    /// <param name="WhyNot">Why there is none.</param>
    /// <param name="Refit">What is asked for or under way; absent where nothing ever was.</param>
    /// <param name="Slopes">Every valve's drift as it is known now, in order.</param>
    /// <param name="History">The last versions, latest first.</param>
    public sealed record Answer(
        Guid EngineModelId, string Maker, string Name, ValveTrainKind ValveTrain, int? Version, Instant? ComputedAt, Figures? Fit,
        string? WhyNot, Progress? Refit, IReadOnlyList<Slope> Slopes, IReadOnlyList<Edition> History);

    /// <param name="WhyNot">Why it came to nothing, where that is so.</param>
    public sealed record Edition(int Version, Instant ComputedAt, int Readings, double? LogLikelihood, string? WhyNot);

    /// <param name="MuA">Mean level less the clearance aimed at, by side and kind of start, with tau_a.</param>
    /// <param name="MuB">Mean drift by side, with tau_b.</param>
    /// <param name="SigmaMm">Standard deviation of one reading.</param>
    /// <param name="BetweenEnginesMm">tau_c: what an engine's valves share.</param>
    public sealed record Figures(
        FitSource Source, IReadOnlyList<LevelFigures> MuA, IReadOnlyList<SlopeFigures> MuB, FittedFigure SigmaMm,
        FittedFigure BetweenEnginesMm, double? LogLikelihood, int Readings, int Valves, int Engines, LeverRatioFigures? LeverRatio,
        double? VisitEffectMm, IReadOnlyList<DriftWarning> Warnings);

    /// <param name="Wanted">Readings changed that no fit has seen yet.</param>
    /// <param name="UnderWay">A fit is being worked out, or forecasts are being written by it.</param>
    /// <param name="EnginesWritten">Engines whose forecasts rest on it, of <paramref name="Engines"/>.</param>
    public sealed record Progress(
        bool Wanted, bool UnderWay, Instant RequestedAt, Instant? StartedAt, Instant? FinishedAt, int Engines, int EnginesWritten);

    /// <param name="Mm">Mean of the valve's drift, with its standard deviation.</param>
    /// <param name="Readings">Readings of it.</param>
    public sealed record Slope(Side Side, decimal Mm, decimal DeviationMm, int Readings);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.EngineModelId).IsGiven("the id of an engine model");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var model = await (
            from m in db.EngineModels.AsNoTracking()
            join version in db.EngineModelVersions on new { m.Id, Version = m.CurrentVersion }
                equals new { Id = version.EngineModelId, version.Version }
            where m.Id == request.EngineModelId
            select new { m.Id, m.Maker, m.Name, version.Specification }).SingleOrDefaultAsync(ct);
        if (model is null)
        {
            return Problem.NotFound($"Engine model {request.EngineModelId}");
        }

        var fitted = await CurrentFits.Read(db, model.Id, ct);
        var refit = await db.DriftRefits.AsNoTracking().SingleOrDefaultAsync(r => r.EngineModelId == model.Id, ct);
        var slopes = await db.ClearanceForecasts.AsNoTracking()
            .Where(f => f.DriftMmPer10000Km != null && db.Engines.Any(e => e.Id == f.EngineId && e.EngineModelId == model.Id))
            .OrderBy(f => f.DriftMmPer10000Km).ThenBy(f => f.EngineId).ThenBy(f => f.Valve).ThenBy(f => f.Lobe)
            .Select(f => new { f.Valve, f.DriftMmPer10000Km, f.DriftDeviation, f.Readings }).ToListAsync(ct);
        var history = await db.DriftFits.AsNoTracking().Where(f => f.EngineModelId == model.Id)
            .OrderByDescending(f => f.Version).Take(LongestHistory)
            .Select(f => new Edition(f.Version, f.ComputedAt, f.Readings, f.LogLikelihood, f.WhyNot)).ToListAsync(ct);
        return new Answer(
            model.Id,
            model.Maker,
            model.Name,
            model.Specification.ValveTrain,
            fitted?.Version,
            fitted?.ComputedAt,
            fitted?.Fit is { } fit ? FiguresOf(fit) : null,
            fitted?.WhyNot,
            refit is null ? null : ProgressOf(refit),
            [.. slopes.Select(s => new Slope(s.Valve.Side, s.DriftMmPer10000Km!.Value, s.DriftDeviation!.Value, s.Readings))],
            history);
    }

    internal static Progress ProgressOf(DriftRefit refit) => new(
        refit.WantedSince is not null, refit.UnderWay, refit.RequestedAt, refit.StartedAt, refit.FinishedAt, refit.Engines, refit.EnginesWritten);

    private static Figures FiguresOf(DriftFit fit) => new(
        fit.Source, fit.Levels, fit.Slopes, fit.SigmaMm, fit.BetweenEnginesMm, fit.LogLikelihood, fit.Readings, fit.Valves,
        fit.Engines, fit.LeverRatio, fit.VisitEffectMm, fit.Warnings);
}
