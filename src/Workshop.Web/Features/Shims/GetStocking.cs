using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>
/// Which shims to hold for the coming months: what the forecasts and the visits that are booked or due ask for, size by size,
/// the level that is enough with the service level's probability, and what to order.
/// </summary>
public static class GetStocking
{
    public const int UsualMonths = 6;
    public const decimal UsualServiceLevel = 0.95m;

    /// <summary>Of the checks that fall due, so many come in time. Common practice, no source.</summary>
    public const decimal UsualShareThatComes = 0.8m;

    private const int MostMonths = 36;
    private const double SmallestShown = 0.0005;

    /// <summary>The steps in which series are sold.</summary>
    private static readonly decimal[] Steps = [0.01m, 0.02m, 0.025m, 0.04m, 0.05m];

    /// <param name="PartCode">The box; the first where it is not given.</param>
    /// <param name="Months">From today.</param>
    /// <param name="ServiceLevel">The probability, size by size, that nobody asks in vain.</param>
    /// <param name="MissingCosts">Of a shim that is missing; with <paramref name="LeftCosts"/> in place of a service level.</param>
    /// <param name="LeftCosts">Of a shim that lies there unused, in the same unit.</param>
    /// <param name="ShareThatComes">Of the checks that fall due; what is booked comes for certain.</param>
    public sealed record Request(
        string? PartCode = null, int? Months = null, decimal? ServiceLevel = null, decimal? MissingCosts = null, decimal? LeftCosts = null,
        decimal? ShareThatComes = null);

    /// <param name="Motorcycles">With a check booked or due until then.</param>
    /// <param name="ValvesForetold">Of their valves, those with a forecast and a shim that is known.</param>
    /// <param name="ValvesWithoutForecast">Of which nothing is foretold: what they will ask for is not in the figures.</param>
    /// <param name="ValvesWithoutShim">Foretold, but the shim in them was never measured: which size they will want is not known.</param>
    /// <param name="Beyond">Valves expected to want a thickness that their engine does not permit: inspection, no shim.</param>
    /// <param name="Sizes">That anybody may ask for, or that lie in the box.</param>
    /// <param name="Steps">The same valves with assortments in other steps.</param>
    public sealed record Answer(
        string PartCode,
        string Name,
        int Months,
        LocalDate Until,
        double ServiceLevel,
        double ShareThatComes,
        int Motorcycles,
        int ValvesForetold,
        int ValvesWithoutForecast,
        int ValvesWithoutShim,
        double ExpectedDemand,
        double Beyond,
        decimal StepMm,
        IReadOnlyList<SizeToHold> Sizes,
        IReadOnlyList<StepOutcome> Steps);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsAtMost(Limits.Code);
            RuleFor(r => r.Months).IsWhole(1, MostMonths);
            RuleFor(r => r.ServiceLevel).IsWithin(0.5m, 0.999m, 4, "");
            RuleFor(r => r.ShareThatComes).IsWithin(0, 1, 4, "");
            RuleFor(r => r.MissingCosts).IsWithin(0.01m, 1_000_000, 2, "")
                .Must((r, cost) => cost is null == r.LeftCosts is null)
                .WithMessage("missingCosts and leftCosts belong together: give both, or neither.")
                .Must((r, cost) => cost is null || r.ServiceLevel is null)
                .WithMessage("missingCosts and leftCosts take the place of serviceLevel: give the costs, or the level.");
            RuleFor(r => r.LeftCosts).IsWithin(0.01m, 1_000_000, 2, "");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var code = request.PartCode is { Length: > 0 } given
            ? given
            : await (from series in db.ShimSeries join part in db.Parts on series.PartId equals part.Id orderby part.Code select part.Code)
                .FirstOrDefaultAsync(ct) ?? "";
        if (!(await ShimBoxes.Named(db, code, ct)).TryGet(out var box, out var problem))
        {
            return problem;
        }

        var months = request.Months ?? UsualMonths;
        var time = await WorkshopTimes.Read(db, ct);
        var today = time.DayOf(clock.GetCurrentInstant());
        var share = (double)(request.ShareThatComes ?? UsualShareThatComes);
        var level = request is { MissingCosts: { } missing, LeftCosts: { } left }
            ? Newsvendor.ServiceLevel((double)left, (double)missing)
            : (double)(request.ServiceLevel ?? UsualServiceLevel);
        var outlook = await StockingOutlook.Read(db, code, time, today, today.PlusMonths(months), share, ct);
        var map = BoxMap.Of(box.Series);
        var demand = ShimDemand.Of(outlook.Valves, map);
        var proposed = Stocking.Propose(demand, await OnHand(db, box, map, ct), level);
        return new Answer(
            code, box.Part.Name, months, today.PlusMonths(months), level, share, outlook.Motorcycles,
            outlook.Valves.Count, outlook.WithoutForecast, outlook.WithoutShim,
            demand.Sizes.Sum(s => s.Expected), Math.Max(demand.Beyond, 0), box.Series.StepMm,
            [.. proposed.Where(s => s.Expected >= SmallestShown || s.OnHand > 0)],
            [.. Steps.Select(step => StepComparison.For(outlook.Valves, step)).OfType<StepOutcome>()]);
    }

    /// <summary>By the size of the compartment where they lie, those that a plan may take only for their own machine left out.</summary>
    private static async Task<IReadOnlyDictionary<ShimThickness, int>> OnHand(
        WorkshopDbContext db, FoundBox box, BoxMap map, CancellationToken ct)
    {
        var (part, anyMachine) = (box.Part.Id, await db.UsedShimPolicy(ct) == UsedShimPolicy.Yes);
        var thicknesses = await db.Shims.AsNoTracking()
            .Where(s => s.PartId == part && s.PlaceId != null && (s.Condition == StockCondition.New || anyMachine))
            .Select(s => s.Thickness).ToListAsync(ct);
        return thicknesses.Select(map.For).OfType<Compartment>().GroupBy(c => c.Nominal).ToDictionary(g => g.Key, g => g.Count());
    }
}
