using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Domain.Intervals;
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
    /// <param name="Fit">The fit of the engine model that all rests on; absent where there never was one.</param>
    /// <param name="NextCheck">The next valve clearance check as Due says it, by interval or drift; absent where the maker wants none.</param>
    /// <param name="OutsideAtNextCheck">The probability that any valve is outside its limits then.</param>
    /// <param name="Threshold">The manager's, at which the engine is to be checked whatever the interval says.</param>
    /// <param name="PassesThresholdKm">Where the probability that any valve has left its limits passes it.</param>
    /// <param name="RateBasis">What the dates rest on.</param>
    /// <param name="Visits">At which the engine was read, latest first.</param>
    public sealed record Answer(
        Guid MotorcycleId,
        string Registration,
        string Motorcycle,
        Guid EngineId,
        string EngineModel,
        bool Shims,
        OdometerUnit OdometerUnit,
        string Caution,
        FitBehind? Fit,
        Check? NextCheck,
        double? OutsideAtNextCheck,
        double Threshold,
        Distance? PassesThresholdKm,
        LocalDate? PassesThresholdOn,
        RateBasis? RateBasis,
        IReadOnlyList<DriftOfLobe> Lobes,
        IReadOnlyList<DriftVisit> Visits);

    /// <param name="Source">Whose readings it rests on.</param>
    /// <param name="Warnings">In plain words.</param>
    public sealed record FitBehind(
        Guid EngineModelId, int Version, Instant ComputedAt, int Readings, FitSource? Source, IReadOnlyList<DriftWarning> Warnings);

    /// <param name="On">The day on which it is expected, by distance or by date, whichever first.</param>
    /// <param name="EngineKm">What the engine will have done; what it has done, where the check is overdue.</param>
    /// <param name="DueAtKm">What the motorcycle's odometers will have counted where it is due; absent where the calendar alone decides.</param>
    /// <param name="DueOn">The day by the calendar, where the interval has months.</param>
    /// <param name="ByForecast">The distance is that of the drift, which comes before the interval's.</param>
    /// <param name="Spoken">In the words of Due.</param>
    public sealed record Check(LocalDate On, Distance EngineKm, Distance? DueAtKm, LocalDate? DueOn, bool ByForecast, string Spoken);

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
        var version = await CurrentFits.Read(db, known.EngineModelId, ct);
        var line = (await Drift.NextCheck.Lines(db, [motorcycle.Id], time.DayOf(clock.GetCurrentInstant()), ct)).GetValueOrDefault(motorcycle.Id);
        var next = line is null ? null : Drift.NextCheck.Of(known, line);
        var threshold = await db.WorkshopProfiles.AsNoTracking().Select(p => p.DriftThreshold).SingleAsync(ct);
        var forecast = version?.Fit is { } fit ? EngineForecast.Of(known.Engine, fit) : null;
        var passes = forecast?.AnyPasses(threshold);
        return new Answer(
            motorcycle.Id,
            motorcycle.Registration,
            $"{motorcycle.Maker} {motorcycle.Model}",
            fitted.Id,
            $"{fitted.Maker} {fitted.Name}",
            known.Engine.Specification.Shims is not null,
            unit,
            Caution,
            version is null ? null : new FitBehind(
                known.EngineModelId, version.Version, version.ComputedAt, version.Readings, version.Fit?.Source, version.Fit?.Warnings ?? []),
            next is null ? null : new Check(next.On, next.EngineAt, line!.DueAt, line.DueOn, line.ByForecast, DriftWords.NextCheck(line)),
            next is null ? null : DriftFigures.Probability(forecast?.AnyOutsideBy(next.EngineAt)),
            threshold,
            passes,
            known.DayOf(passes),
            known.RateBasis,
            [.. known.Engine.Lobes.AsParallel().AsOrdered().Select(lobe => DriftOfLobe.Of(known, lobe, forecast, version, next, time))],
            await DriftVisit.Load(db, known, time, ct));
    }
}
