using FluentValidation;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>What a visit is likely to find at each valve, from what was known before it.</summary>
public static class GetCardForecast
{
    public sealed record Request(int Number);

    /// <param name="EngineKm">What the engine has done at the visit: by the check-in, or expected for the day that is booked.</param>
    /// <param name="Summary">In a sentence.</param>
    /// <param name="AnyOutside">The probability that any valve is outside its limits.</param>
    public sealed record Answer(
        int Number, Distance? EngineKm, string Summary, double? AnyOutside, IReadOnlyList<Expected> Lobes, string Caution);

    /// <param name="FromMm">Lower end of the 90 % span of the clearance.</param>
    /// <param name="Outside">The probability that it is outside its limits.</param>
    /// <param name="WhyNot">Why nothing is expected, where that is so.</param>
    public sealed record Expected(
        ValveKey Valve, int Lobe, string Spoken, decimal? FromMm, decimal? ToMm, double? Outside, string? WhyNot);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Number).GreaterThan(0);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var history = await VisitHistory.Load(db, open, ct);
        var forecast = history?.Fit is { } fit ? EngineForecast.Of(history.Known.Engine, fit) : null;
        var lobes = ReadingRules.LobesOf(open.Specification).Select(lobe => Expect(lobe, history, forecast)).ToList();
        var outside = lobes.Where(l => l.Outside is not null).ToDictionary(l => new LobeKey(l.Valve, l.Lobe), l => l.Outside!.Value);
        return new Answer(
            request.Number,
            history?.EngineAt,
            VisitOutlook.Say(open.Specification, outside),
            DriftFigures.Probability(forecast?.AnyOutsideBy(history!.EngineAt)),
            lobes,
            GetDrift.Caution);
    }

    private static Expected Expect(LobeKey lobe, VisitHistory? history, EngineForecast? forecast)
    {
        var whyNot = forecast is null
            ? DriftWords.WhyNot(NoForecastReason.NoFit, history?.WhyNot)
            : forecast.WhyNot.TryGetValue(lobe, out var reason) ? DriftWords.WhyNot(reason, null) : null;
        if (whyNot is not null)
        {
            return new Expected(lobe.Valve, lobe.Lobe, lobe.Spoken, null, null, null, whyNot);
        }

        var span = forecast!.Fan(lobe, [history!.EngineAt])[0].Mm;
        return new Expected(
            lobe.Valve,
            lobe.Lobe,
            lobe.Spoken,
            DriftFigures.Mm(Math.Max(0, span[0])),
            DriftFigures.Mm(Math.Max(0, span[^1])),
            DriftFigures.Probability(forecast.OutsideBy(lobe, history.EngineAt)),
            null);
    }
}
