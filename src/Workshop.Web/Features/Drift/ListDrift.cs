using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>
/// The manager's list: motorcycles by the earliest day on which a valve is expected to leave its limits, soonest first; those
/// of which nothing is foretold last, with the reason. A page at a time: the next one starts after the last row of this one.
/// </summary>
public static class ListDrift
{
    public const int MostMonths = 240;

    private const string Never = "never";

    /// <param name="Within">Months from today; absent for all, those without a forecast included.</param>
    /// <param name="EngineModelId">Engines of this model alone.</param>
    /// <param name="Side">"intake" or "exhaust": the valves of that side alone.</param>
    public sealed record Request(
        int? Within = null, Guid? EngineModelId = null, string? Side = null, string? After = null, int? Take = null);

    /// <param name="Valve">The lobe that is first, spoken.</param>
    /// <param name="On">The day by the odometer's own rate on which it has left its limits with a probability of 50 %.</param>
    /// <param name="AtKm">What the motorcycle will have done then.</param>
    /// <param name="EarliestAtKm">The same for 10 %.</param>
    /// <param name="LatestAtKm">The same for 90 %; absent where not within 200,000 km of its last reading.</param>
    /// <param name="PassesThresholdOn">
    /// The day on which the probability that any valve of the engine has left its limits passes the manager's threshold.
    /// </param>
    /// <param name="PassesThresholdKm">What the motorcycle will have done then.</param>
    /// <param name="NextCheckOn">The day on which the next valve clearance check is expected, as Due says it: by interval or drift.</param>
    /// <param name="NextCheckKm">Where the motorcycle's distance makes it due; absent where the calendar alone decides.</param>
    /// <param name="NextCheck">The same in the words of Due.</param>
    /// <param name="OutsideAtNextCheck">
    /// The probability that any valve asked for is outside its limits then; today's, where the check is overdue.
    /// </param>
    /// <param name="Foretold">Lobes with a forecast, of those asked for.</param>
    /// <param name="Lobes">Lobes that the engine has, of those asked for.</param>
    /// <param name="Reason">Why nothing is foretold, where that is so.</param>
    public sealed record Row(
        Guid MotorcycleId, string Registration, string Motorcycle, OdometerUnit OdometerUnit, string? Valve,
        LocalDate? On, Distance? AtKm, LocalDate? EarliestOn, Distance? EarliestAtKm, LocalDate? LatestOn, Distance? LatestAtKm,
        decimal? PresentMm, decimal? DriftMmPer10000Km, LocalDate? PassesThresholdOn, Distance? PassesThresholdKm,
        LocalDate? NextCheckOn, Distance? NextCheckKm, string? NextCheck, double? OutsideAtNextCheck, int Foretold, int Lobes, string? Reason);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Within).IsWhole(1, MostMonths);
            RuleFor(r => r.Side).IsWordOf<Request, Side>();
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.After).Must(a => string.IsNullOrEmpty(a) || TryRead(a, out _))
                .WithMessage((_, a) => $"{{PropertyName}} is \"{a}\": give back what an answer named as next.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var side = Words.Read<Side>(request.Side);
        var rows = from fitting in db.EngineFittings.AsNoTracking()
                   join motorcycle in db.Motorcycles on fitting.MotorcycleId equals motorcycle.Id
                   join engine in db.Engines on fitting.EngineId equals engine.Id
                   join outlook in db.EngineOutlooks on fitting.EngineId equals outlook.EngineId into found
                   from outlook in found.DefaultIfEmpty()
                   where fitting.RemovedOn == null && !motorcycle.Retired
                       && (request.EngineModelId == null || engine.EngineModelId == request.EngineModelId)
                   select new
                   {
                       motorcycle, fitting, outlook,
                       On = side == null ? outlook.SoonestOn : side == Side.Intake ? outlook.SoonestIntakeOn : outlook.SoonestExhaustOn,
                   };
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        if (request.Within is { } months)
        {
            var until = today.PlusMonths(months);
            rows = rows.Where(r => r.On <= until);
        }

        if (request.After is { Length: > 0 } after && TryRead(after, out var last))
        {
            rows = last.On is { } on
                ? rows.Where(r => r.On == null || r.On > on || (r.On == on && r.motorcycle.Id > last.Id))
                : rows.Where(r => r.On == null && r.motorcycle.Id > last.Id);
        }

        var slice = await rows.OrderBy(r => r.On == null).ThenBy(r => r.On).ThenBy(r => r.motorcycle.Id)
            .ToSlice(request.Take, r => Write(r.On, r.motorcycle.Id), ct);
        var engines = slice.Rows.Select(r => r.fitting.EngineId).ToList();
        var motorcycles = slice.Rows.Select(r => r.motorcycle.Id).ToList();
        var forecasts = (await db.ClearanceForecasts.AsNoTracking().Where(f => engines.Contains(f.EngineId)).ToListAsync(ct))
            .Where(f => side is null || f.Valve.Side == side).ToLookup(f => f.EngineId);
        var units = await db.Odometers.AsNoTracking().Where(o => motorcycles.Contains(o.MotorcycleId) && o.RemovedOn == null)
            .ToDictionaryAsync(o => o.MotorcycleId, o => o.Unit, ct);
        var checks = await Features.Drift.NextCheck.Lines(db, motorcycles, today, ct);
        return new Slice<Row>(
            [.. slice.Rows.Select(r => RowOf(
                r.motorcycle, r.fitting, r.outlook, checks.GetValueOrDefault(r.motorcycle.Id), side, units.GetValueOrDefault(r.motorcycle.Id), [.. forecasts[r.fitting.EngineId]]))],
            slice.Next);
    }

    private static Row RowOf(
        Domain.Motorcycles.Motorcycle motorcycle, Domain.Motorcycles.EngineFitting fitting, EngineOutlook? outlook, DueLine? check, Side? side,
        OdometerUnit unit, IReadOnlyList<ClearanceForecast> forecasts)
    {
        var first = forecasts.Where(f => f.LeavesLimitsAt is not null)
            .OrderBy(f => f.LeavesLimitsOn ?? LocalDate.MaxIsoValue).ThenBy(f => f.LeavesLimitsAt)
            .ThenBy(f => f.Valve).ThenBy(f => f.Lobe).FirstOrDefault();
        var foretold = forecasts.Count(f => f.Reason is null);
        return new Row(
            motorcycle.Id,
            motorcycle.Registration,
            $"{motorcycle.Maker} {motorcycle.Model}",
            unit,
            first is null ? null : new LobeKey(first.Valve, first.Lobe).Spoken,
            first?.LeavesLimitsOn,
            OfMotorcycle(first?.LeavesLimitsAt),
            first?.LeavesLimitsEarliestOn,
            OfMotorcycle(first?.LeavesLimitsEarliestAt),
            first?.LeavesLimitsLatestOn,
            OfMotorcycle(first?.LeavesLimitsLatestAt),
            first?.PresentMm,
            first?.DriftMmPer10000Km,
            outlook?.PassesThresholdOn,
            OfMotorcycle(outlook?.PassesThresholdAt),
            check?.ExpectedOn,
            check?.DueAt,
            check is null ? null : DriftWords.NextCheck(check),
            side switch
            {
                null => outlook?.OutsideAtNextCheck,
                Side.Intake => outlook?.IntakeOutsideAtNextCheck,
                _ => outlook?.ExhaustOutsideAtNextCheck,
            },
            foretold,
            forecasts.Count,
            first is not null ? null : foretold == 0 ? ReasonOf(forecasts)
                : $"No valve leaves its limits within {EngineForecast.Reach} of its last reading, more likely than not.");

        Distance? OfMotorcycle(Distance? engine) => engine is { } at ? fitting.MotorcycleDistanceAt(at) : null;
    }

    /// <summary>The reason of the lobe of which most is known.</summary>
    private static string ReasonOf(IReadOnlyList<ClearanceForecast> forecasts) =>
        forecasts.Where(f => f.Reason is not null).OrderByDescending(f => f.Readings).ThenBy(f => f.Valve).ThenBy(f => f.Lobe)
            .Select(f => f.Readings == 0 ? f.Reason : $"{new LobeKey(f.Valve, f.Lobe).Spoken}: {f.Reason}").FirstOrDefault()
        ?? "No valve of it was measured yet.";

    private static string Write(LocalDate? on, Guid id) =>
        $"{(on is { } day ? LocalDatePattern.Iso.Format(day) : Never)}_{id:N}";

    private static bool TryRead(string after, out (LocalDate? On, Guid Id) last)
    {
        last = default;
        if (after.Split('_') is not [var day, var id] || !Guid.TryParseExact(id, "N", out var motorcycle))
        {
            return false;
        }

        var on = LocalDatePattern.Iso.Parse(day);
        last = (on.Success ? on.Value : null, motorcycle);
        return on.Success || day == Never;
    }
}
