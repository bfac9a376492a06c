using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Drift;

/// <summary>
/// The manager's threshold, and every engine model that has an engine with the fit that its forecasts rest on and how far a refit
/// of it is.
/// </summary>
public static class ListDriftFits
{
    public sealed record Request;

    /// <param name="ThresholdPercent">At which an engine is to be checked, whatever the interval says.</param>
    public sealed record Answer(decimal ThresholdPercent, IReadOnlyList<Row> Models);

    /// <param name="Version">Of the fit; absent where there never was one.</param>
    /// <param name="WhyNot">Why the last one came to nothing.</param>
    /// <param name="Refit">What is asked for or under way; absent where nothing ever was.</param>
    public sealed record Row(
        Guid EngineModelId, string Maker, string Name, int Engines, int? Version, Instant? ComputedAt, int? Readings, string? WhyNot,
        GetDriftFit.Progress? Refit);

    public sealed class Validator : AbstractValidator<Request>;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var threshold = await db.WorkshopProfiles.AsNoTracking().Select(p => p.DriftThreshold).SingleAsync(ct);
        var models = await (
            from model in db.EngineModels.AsNoTracking()
            join refit in db.DriftRefits on model.Id equals refit.EngineModelId into asked
            from refit in asked.DefaultIfEmpty()
            let fit = db.DriftFits.Where(f => f.EngineModelId == model.Id).OrderByDescending(f => f.Version)
                .Select(f => new { f.Version, f.ComputedAt, f.Readings, f.WhyNot }).FirstOrDefault()
            let engines = db.Engines.Count(e => e.EngineModelId == model.Id)
            where engines > 0
            orderby model.Maker, model.Name, model.Id
            select new { model.Id, model.Maker, model.Name, engines, fit, refit }).ToListAsync(ct);
        return new Answer(
            decimal.Round((decimal)(threshold * 100), 1),
            [.. models.Select(m => new Row(
                m.Id, m.Maker, m.Name, m.engines, m.fit?.Version, m.fit?.ComputedAt, m.fit?.Readings, m.fit?.WhyNot,
                m.refit is null ? null : GetDriftFit.ProgressOf(m.refit)))]);
    }
}
