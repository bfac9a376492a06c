using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>How the valves of one motorcycle drift: every lobe with its legs, its line and what is foretold of it.</summary>
public static class GetDrift
{
    /// <summary>Said wherever an estimate is shown.</summary>
    public const string Caution = "Estimate, no promise; replaces no check that the maker prescribes.";

    public sealed record Request(Guid MotorcycleId);

    /// <param name="EngineModel">Maker and name.</param>
    /// <param name="Shims">Its clearances are set by shims; by screws where not.</param>
    /// <param name="OdometerUnit">What the motorcycle's odometer counts in; distances here are kilometres of the engine.</param>
    public sealed record Answer(
        Guid MotorcycleId,
        string Registration,
        string Motorcycle,
        Guid EngineId,
        string EngineModel,
        bool Shims,
        OdometerUnit OdometerUnit,
        string Caution,
        IReadOnlyList<DriftOfLobe> Lobes);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.MotorcycleId).IsGiven("the id of a motorcycle");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var motorcycle = await db.Motorcycles.AsNoTracking().SingleOrDefaultAsync(m => m.Id == request.MotorcycleId, ct);
        if (motorcycle is null)
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        var fitted = await (
            from fitting in db.EngineFittings.AsNoTracking()
            join engine in db.Engines on fitting.EngineId equals engine.Id
            join model in db.EngineModels on engine.EngineModelId equals model.Id
            where fitting.MotorcycleId == motorcycle.Id && fitting.RemovedOn == null
            select new { engine.Id, model.Maker, model.Name }).SingleOrDefaultAsync(ct);
        if (fitted is null)
        {
            return Problem.Conflict("no-engine", $"{motorcycle.Registration} has no engine fitted, so there is no drift to show.");
        }

        var unit = await db.Odometers.AsNoTracking().Where(o => o.MotorcycleId == motorcycle.Id && o.RemovedOn == null)
            .Select(o => o.Unit).SingleOrDefaultAsync(ct);
        var time = await WorkshopTimes.Read(db, ct);
        var known = (await EngineDrift.Load(db, [fitted.Id], ct)).Single();
        return new Answer(
            motorcycle.Id,
            motorcycle.Registration,
            $"{motorcycle.Maker} {motorcycle.Model}",
            fitted.Id,
            $"{fitted.Maker} {fitted.Name}",
            known.Specification.Shims is not null,
            unit,
            Caution,
            [.. known.Lobes().Select(lobe => DriftOfLobe.Of(known, lobe, time))]);
    }
}
