using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Features.EngineModels;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;

namespace Workshop.Web.Features.Estimates;

/// <summary>What an estimate of a visit, or of one of its findings, rests on: the items, the prices, what they propose.</summary>
/// <param name="Finding">Absent for the visit itself.</param>
internal sealed record EstimateCase(OpenCard Open, Finding? Finding, PriceBook Prices, IReadOnlyList<ProposedLine> Proposed)
{
    private const int BasisBytes = 8;

    /// <summary>Changes whenever what is proposed does: what a person looked at is what is made.</summary>
    public string Basis => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', Proposed.Select(l =>
        FormattableString.Invariant($"{l.Key}\t{l.Text}\t{l.Quantity:0.####}\t{l.UnitPrice:0.####}\t{l.Tax?.Percent:0.###}"))))).AsSpan(0, BasisBytes));

    /// <param name="alsoParts">Further parts whose prices are asked for.</param>
    public static async Task<Outcome<EstimateCase>> Read(
        WorkshopDbContext db, int number, Guid? findingId, IEnumerable<string> alsoParts, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        Finding? finding = null;
        if (findingId is { } id)
        {
            finding = await db.Findings.AsNoTracking().SingleOrDefaultAsync(f => f.Id == id && f.JobCardNumber == number, ct);
            if (finding is null)
            {
                return Problem.NotFound($"Finding {id} of job card {number}");
            }
        }

        var more = finding?.ServiceItemCode is { } code ? VisitItems.Find(open.Specification, code) : null;
        var items = ItemsOf(open);
        var prices = await PricesFor(db, open, more, alsoParts, clock, ct);
        IReadOnlyList<ProposedLine> proposed = finding is null ? EstimateProposal.Of(open.Specification, items, prices)
            : more is null ? [] : EstimateProposal.OfOneMore(open.Specification, items, more, prices);
        return new EstimateCase(open, finding, prices, proposed);
    }

    /// <summary>The prices of all that the card's kit may hold; what stands in for a part has its own price.</summary>
    /// <param name="more">An item beside those of the card.</param>
    public static async Task<PriceBook> PricesFor(
        WorkshopDbContext db, OpenCard open, ServiceItem? more, IEnumerable<string> alsoParts, IClock clock, CancellationToken ct)
    {
        var known = await NamedParts.Read(db, open.Specification, ct);
        var items = ItemsOf(open).Select(i => i.Item);
        var kit = Kit.Of(open.Specification, more is null ? items : items.Append(more), [], known);
        var instead = (await KitCase.Substitutions(db, [open.Card.Number], ct))[open.Card.Number].ToDictionary(s => s.Original, s => s.StandIn.Part);
        var standIns = kit.Lines.Where(l => l.Part is not null && instead.ContainsKey(l.Part.Id)).ToDictionary(l => l.PartCode, l => instead[l.Part!.Id].Code, StringComparer.Ordinal);
        return (await TodaysPrices.Read(db, [.. kit.Lines.Select(l => l.PartCode).Union(alsoParts)], clock, ct, standIns)) with { Known = known };
    }

    /// <summary>The items of the card; a begun one is certain.</summary>
    public static IReadOnlyList<ChosenItem> ItemsOf(OpenCard open) =>
        [.. open.Items.Select(i => new ChosenItem(open.ItemOf(i), i.StartedAt is null ? i.Likelihood : Likelihood.Certain))];
}
