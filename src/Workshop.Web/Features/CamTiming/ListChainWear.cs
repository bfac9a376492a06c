using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.CamTiming;

/// <summary>How the chains of an engine model wear: all together where enough were read, and each engine's.</summary>
public static class ListChainWear
{
    public sealed record Request(Guid EngineModelId);

    /// <param name="Drives">How a drive's chains wear all together.</param>
    /// <param name="Engines">Engines of which a chain was read.</param>
    public sealed record Answer(Guid EngineModelId, string Caution, IReadOnlyList<Drive> Drives, IReadOnlyList<Engine> Engines);

    /// <param name="PerTenThousandKm">Mean growth; absent where <paramref name="WhyNot"/> says why.</param>
    /// <param name="BetweenChains">Standard deviation of the growth from chain to chain.</param>
    public sealed record Drive(
        string Code, string Name, WearMeasure Measure, decimal Limit, int Chains, decimal? PerTenThousandKm, decimal? BetweenChains, string? WhyNot);

    /// <param name="MotorcycleId">Absent where the engine is in none.</param>
    public sealed record Engine(Guid EngineId, string SerialNumber, Guid? MotorcycleId, string? Registration, IReadOnlyList<ChainWearView.Chain> Chains);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var version = await (
            from model in db.EngineModels.AsNoTracking()
            join v in db.EngineModelVersions on new { model.Id, Version = model.CurrentVersion } equals new { Id = v.EngineModelId, v.Version }
            where model.Id == request.EngineModelId
            select v).SingleOrDefaultAsync(ct);
        if (version is null)
        {
            return Problem.NotFound($"Engine model {request.EngineModelId}");
        }

        var engines = await ChainsOfEngine.Load(db, await ChainsOfEngine.EnginesRead(db, request.EngineModelId, ct), ct);
        var ids = engines.Select(e => e.Engine.Engine.EngineId).ToList();
        var named = await (
            from engine in db.Engines.AsNoTracking()
            where ids.Contains(engine.Id)
            select new
            {
                engine.Id, engine.SerialNumber,
                Motorcycle = db.EngineFittings.Where(f => f.EngineId == engine.Id && f.RemovedOn == null)
                    .Join(db.Motorcycles, f => f.MotorcycleId, m => m.Id, (f, m) => new { m.Id, m.Registration }).FirstOrDefault(),
            }).ToDictionaryAsync(e => e.Id, ct);
        var models = ChainModels.Of(engines, ct);
        return new Answer(
            request.EngineModelId, ChainWearView.Caution,
            [.. version.Specification.CamDrives.SelectMany(d => Enum.GetValues<WearMeasure>().Where(m => ChainsOfEngine.LimitOf(d, m) is > 0).Select(m =>
            {
                var lives = engines.SelectMany(e => e.Lives(d, m)).ToArray();
                var fit = ChainWear.Fit(lives, m, ct);
                return new Drive(
                    d.Code, d.Name, m, (decimal)ChainsOfEngine.LimitOf(d, m)!.Value, lives.Length,
                    fit.HasValue ? decimal.Round((decimal)fit.Value.Slope, 3) : null, fit.HasValue ? decimal.Round((decimal)fit.Value.SlopeDeviation, 3) : null,
                    fit.WhyNot?.Explanation);
            }))],
            [.. engines.Select(e => new Engine(
                e.Engine.Engine.EngineId, named[e.Engine.Engine.EngineId].SerialNumber, named[e.Engine.Engine.EngineId].Motorcycle?.Id,
                named[e.Engine.Engine.EngineId].Motorcycle?.Registration, ChainWearView.Of(e, models, OdometerUnit.Kilometres)))
                .OrderBy(e => e.Registration, StringComparer.Ordinal)]);
    }
}
