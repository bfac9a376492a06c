using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>What to order of whom, and why. Nothing is ordered by it: a person makes an order of it, or does not.</summary>
public static class ProposeOrders
{
    /// <summary>An order is to last so long beyond its delivery; our own choice.</summary>
    public const int UsualLastsDays = 30;

    public const int MostLastsDays = 366;

    /// <param name="LastsDays">How long an order is to last beyond its delivery.</param>
    /// <param name="Shims">With shims by thickness, from what is foretold of the valves.</param>
    public sealed record Request(int? LastsDays = null, bool? Shims = null);

    /// <param name="WithoutSupplier">Wanted, but nobody sells it as far as the stores know.</param>
    public sealed record Answer(
        LocalDate Today, int LastsDays, double ServiceLevel, string Currency, IReadOnlyList<ToSupplier> Suppliers, IReadOnlyList<Line> WithoutSupplier);

    /// <param name="UsableFrom">When work can count on an order of today, by the supplier's own days.</param>
    /// <param name="NetSum">Of the lines whose cost is known.</param>
    /// <param name="MissingToSmallest">How far that is below the smallest order; absent where it is not.</param>
    /// <param name="Additions">What could be added, soonest wanted first, where the sum is below the smallest order.</param>
    public sealed record ToSupplier(
        Guid SupplierId,
        string Name,
        LocalDate UsableFrom,
        decimal? SmallestOrder,
        decimal NetSum,
        decimal? MissingToSmallest,
        IReadOnlyList<Line> Lines,
        IReadOnlyList<Line> Additions);

    /// <param name="ThicknessMm">Shims only.</param>
    /// <param name="Quantity">In whole packages of the supplier.</param>
    /// <param name="InDrafts">Orders that are drafts and hold the part already.</param>
    /// <param name="Why">In words, with the figures.</param>
    public sealed record Line(
        string PartCode,
        string Name,
        PartUnit Unit,
        decimal? ThicknessMm,
        decimal Quantity,
        decimal? UnitCost,
        decimal? NetCost,
        decimal OnHand,
        decimal Reserved,
        decimal OnOrder,
        decimal? ReorderPoint,
        decimal OrderUpTo,
        IReadOnlyList<int> InDrafts,
        string Why);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.LastsDays).IsWhole(0, MostLastsDays);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var lasts = request.LastsDays ?? UsualLastsDays;
        var outlook = await OrderingOutlook.Read(db, clock, only: null, ct);
        var proposals = outlook.Parts.Select(p => outlook.Propose(p, lasts)).ToLookup(p => p.Of.Supply.SupplierId);
        var drafts = await Drafts(db, ct);
        var shims = request.Shims == true
            ? (await ShimsToOrder.Read(db, actor, clock, outlook, lasts, drafts, ct)).ToLookup(s => s.SupplierId, s => s.Line)
            : Enumerable.Empty<Line>().ToLookup(_ => Guid.Empty);
        return new Answer(
            outlook.Today, lasts, outlook.Profile.ServiceLevel, outlook.Profile.Currency,
            [.. outlook.Suppliers.Values.OrderBy(s => s.Name, StringComparer.Ordinal)
                .Select(s => Of(s, [.. proposals[s.Id]], [.. shims[s.Id]], outlook, drafts))
                .Where(s => s.Lines.Count > 0)],
            [.. proposals[Guid.Empty].Where(p => p.Quantity > 0).Select(p => LineOf(p, p.Quantity, drafts))]);
    }

    private static ToSupplier Of(
        Supplier supplier, IReadOnlyList<OrderProposal> proposals, IReadOnlyList<Line> shims, OrderingOutlook outlook, ILookup<Guid, int> drafts)
    {
        Line[] lines = [.. proposals.Where(p => p.Quantity > 0).Select(p => LineOf(p, p.Quantity, drafts)), .. shims];
        var sum = lines.Sum(l => l.NetCost ?? 0);
        var below = supplier.SmallestOrder is { } smallest && sum < smallest ? smallest - sum : (decimal?)null;
        return new ToSupplier(
            supplier.Id, supplier.Name, PartsOnHand.UsableFrom(outlook.Calendar, outlook.Today.PlusDays(supplier.DeliveryDays), outlook.Today),
            supplier.SmallestOrder, sum, below, lines,
            below is null || lines.Length == 0 ? []
                : [.. OrderTopUp.Suggest(proposals, supplier.SmallestOrder!.Value - shims.Sum(s => s.NetCost ?? 0)).Select(a => LineOf(a.Of, a.Quantity, drafts))]);
    }

    private static Line LineOf(OrderProposal proposal, decimal quantity, ILookup<Guid, int> drafts)
    {
        var (of, part) = (proposal.Of, proposal.Of.Part);
        return new Line(
            part.Code, part.Name, part.Unit, null, quantity, of.Supply.UnitCost, OrderSums.OfLine(quantity, of.Supply.UnitCost),
            of.OnHand, of.Reserved, of.OnOrder, proposal.ReorderPoint, proposal.OrderUpTo, [.. drafts[part.Id]], proposal.Why);
    }

    private static async Task<ILookup<Guid, int>> Drafts(WorkshopDbContext db, CancellationToken ct) =>
        (await (
            from line in db.PurchaseOrderLines.AsNoTracking()
            join order in db.PurchaseOrders on line.OrderNumber equals order.Number
            where order.State == PurchaseOrderState.Draft
            select new { line.PartId, line.OrderNumber }).Distinct().ToListAsync(ct)).ToLookup(d => d.PartId, d => d.OrderNumber);
}
