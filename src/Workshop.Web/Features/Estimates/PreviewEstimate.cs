using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Estimates;

/// <summary>What an estimate would say now: nothing is written. A line without a price says so.</summary>
public static class PreviewEstimate
{
    public sealed record Request(int Number, Guid? FindingId = null);

    /// <param name="Basis">Send it back when making the estimate: it is refused if anything has changed.</param>
    /// <param name="Sums">Of the lines charged in any case that have a price.</param>
    /// <param name="Options">What possible items would add, each alone; several together may cost less.</param>
    /// <param name="Missing">Lines charged in any case, or of options, without a price: each is typed, or dropped, before an estimate is made.</param>
    /// <param name="Margin">The manager's alone.</param>
    public sealed record Answer(
        int JobCardNumber, Guid? FindingId, string Currency, string Basis, IReadOnlyList<LineView> Lines, SumView Sums, IReadOnlyList<OptionView> Options,
        IReadOnlyList<string> Missing, EstimateMargin? Margin);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await EstimateCase.Read(db, request.Number, request.FindingId, [], clock, ct)).TryGet(out var at, out var problem))
        {
            return problem;
        }

        var charged = at.Proposed.Where(l => l is { Charge: EstimateCharge.Always, Option: null }).Select(l => l.Priced).OfType<PricedQuantity>().ToList();
        var options = at.Proposed.Where(l => l is { Charge: EstimateCharge.Always, Option: not null }).GroupBy(l => l.Option!)
            .Select(g => new OptionView(g.Key, NameOf(at.Open.Specification, g.Key)!,
                SumView.Of(EstimateSums.Of(g.Select(l => l.Priced).OfType<PricedQuantity>()))));
        var seesCosts = TodaysPrices.SeesCosts(actor);
        return new Answer(
            request.Number, request.FindingId, at.Prices.Currency, at.Basis, [.. at.Proposed.Select(l => View(l, at.Open.Specification, seesCosts))],
            SumView.Of(EstimateSums.Of(charged)), [.. options], [.. at.Proposed.Select(l => l.Missing).OfType<string>().Distinct()],
            seesCosts ? EstimateMargin.Of(charged) : null);
    }

    internal static string? NameOf(EngineSpecification specification, string? option) =>
        option is null ? null : VisitItems.Find(specification, option)?.Name ?? option;

    private static LineView View(ProposedLine line, EngineSpecification specification, bool seesCosts) => new(
        line.Key, line.Kind, line.Charge, line.Option, NameOf(specification, line.Option), line.Text, line.PartCode, line.Quantity, line.Unit,
        line.UnitPrice, line.Tax?.Code, line.Tax?.Percent, line.Priced?.Net, seesCosts ? line.UnitCost : null, line.Missing, Dropped: false, null, null);
}
