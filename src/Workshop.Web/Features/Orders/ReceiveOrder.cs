using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>
/// Goods in against an order: all of it or a part, line by line. More than was ordered asks once. What is open stays expected; when
/// nothing is, the order is closed.
/// </summary>
public static class ReceiveOrder
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public int Number { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public IList<LineFields> Lines { get; init; } = [];

        /// <summary>More came than was ordered, it was counted, and all of it is kept.</summary>
        public bool KeepsSurplus { get; init; }
    }

    /// <summary>What came of one line. One without a quantity did not come.</summary>
    public sealed record LineFields
    {
        public Guid? LineId { get; init; }

        public decimal? Quantity { get; init; }

        /// <summary>Shims only: as the micrometer reads them; as ordered where it is not given.</summary>
        public decimal? ThicknessMm { get; init; }

        /// <summary>As the maker marks it; asked for of parts with a shelf life.</summary>
        public string? LotCode { get; init; }

        /// <summary>The last day of the lot; reckoned from the shelf life where it is not given.</summary>
        public LocalDate? ExpiresOn { get; init; }

        /// <summary>Where it is put.</summary>
        public Guid? PlaceId { get; init; }

        /// <summary>Of one unit, before tax, as the supplier charged it; what was ordered at where it is not given.</summary>
        public decimal? UnitCost { get; init; }
    }

    /// <param name="Received">Lines of which something came.</param>
    /// <param name="Open">Lines that are still expected.</param>
    /// <param name="DearerParts">Codes of parts that cost more than they were ordered at.</param>
    public sealed record Answer(
        int Number, PurchaseOrderState State, int Received, int Open, IReadOnlyList<string> DearerParts, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleForEach(r => r.Lines).ChildRules(line =>
        {
            line.RuleFor(l => l.LineId).IsGiven("the line of the order");
            line.RuleFor(l => l.Quantity).IsWithin(0, SupplyFieldsValidator.LargestQuantity, 4, "pieces or ml");
            line.RuleFor(l => l.ThicknessMm).IsShimThickness();
            line.RuleFor(l => l.LotCode).IsAtMost(QuantityRules.LongestLot);
            line.RuleFor(l => l.PlaceId).IsGiven("the place where it is put").When(l => l.Quantity > 0);
            line.RuleFor(l => l.UnitCost).IsWithin(0, SupplyFieldsValidator.DearestUnit, SupplyFieldsValidator.CostDecimals, "");
        });
    }

    private sealed record Arrival(LineFields Typed, PurchaseOrderLine Line, Part Part, StoragePlace Place, StockLot? Lot)
    {
        public decimal? UnitCost => Typed.UnitCost ?? Line.UnitCost;
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OrderLines.Lock(db, request.Number, ct)).TryGet(out var order, out var problem))
        {
            return problem;
        }

        if (OrderRules.RefuseReceipt(order) is { } refused)
        {
            return refused;
        }

        var lines = await db.PurchaseOrderLines.Where(l => l.OrderNumber == order.Number).ToDictionaryAsync(l => l.Id, ct);
        var now = clock.GetCurrentInstant();
        if (!(await Read(db, request, order, lines, now, ct)).TryGet(out var arrivals, out problem))
        {
            return problem;
        }

        var deliveries = (await db.ExpectedDeliveries.Where(d => d.OrderLineId != null && lines.Keys.Contains(d.OrderLineId.Value) && d.ClosedAt == null)
            .ToListAsync(ct)).ToLookup(d => d.OrderLineId!.Value);
        foreach (var arrival in arrivals)
        {
            db.StockMovements.AddRange(Movements(arrival, actor, now));
            arrival.Line.Received += arrival.Typed.Quantity!.Value;
            foreach (var delivery in deliveries[arrival.Line.Id])
            {
                var open = arrival.Line.Quantity - arrival.Line.Received;
                delivery.Quantity = open > 0 ? open : delivery.Quantity;
                delivery.ClosedAt = open > 0 ? null : now;
            }
        }

        var stillOpen = deliveries.SelectMany(d => d).Count(d => d.ClosedAt is null);
        if (stillOpen == 0)
        {
            order.State = PurchaseOrderState.Closed;
        }

        var dearer = await NoteCosts(db, order.SupplierId, arrivals, ct);
        return new Answer(order.Number, order.State, arrivals.Count, stillOpen, dearer, await Versions.Save(db, order, request.RowVersion!.Value, ct));
    }

    private static async Task<Outcome<IReadOnlyList<Arrival>>> Read(
        WorkshopDbContext db, Request request, PurchaseOrder order, Dictionary<Guid, PurchaseOrderLine> lines, Instant now, CancellationToken ct)
    {
        // Rows of parts are locked first, in one order, as whoever moves stock does.
        var ids = lines.Values.Select(l => l.PartId).Distinct().ToArray();
        await db.Database.ExecuteSqlAsync($"select 1 from parts where id = any({ids}) order by id for no key update", ct);
        var parts = await db.Parts.AsNoTracking().Where(p => ids.Contains(p.Id)).ToDictionaryAsync(p => p.Id, ct);
        var places = await db.StoragePlaces.AsNoTracking().ToDictionaryAsync(p => p.Id, ct);
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        var (arrivals, faults) = (new List<Arrival>(), new List<FieldFault>());
        foreach (var (index, typed) in request.Lines.Index().Where(l => l.Item.Quantity > 0))
        {
            var at = $"lines[{index}]";
            if (!lines.TryGetValue(typed.LineId!.Value, out var line))
            {
                faults.Add(new FieldFault($"{at}.lineId", $"{at}.lineId is {typed.LineId}, which is no line of order {order.Number}."));
                continue;
            }

            if (!places.TryGetValue(typed.PlaceId!.Value, out var place) || place.Retired)
            {
                faults.Add(new FieldFault($"{at}.placeId", place is null
                    ? $"{at}.placeId is {typed.PlaceId}: no place has it; choose one of GET /api/v1/stock/places."
                    : $"{at}.placeId is {place.Name}, which is retired; nothing is put there."));
            }

            var part = parts[line.PartId];
            faults.AddRange((ReceiptRules.Refuse(part, typed.Quantity!.Value, typed.ThicknessMm ?? line.Thickness?.Millimetres)?.Faults ?? [])
                .Select(f => new FieldFault($"{at}.{f.Field}", f.Sentence)));
            if (!request.KeepsSurplus && OrderRules.AskIfOver($"{at}.quantity", part, line, typed.Quantity.Value) is { } over)
            {
                faults.Add(over);
            }

            var lot = await GoodsIn.LotOf(db, part, typed.LotCode, typed.ExpiresOn, today, now, ct);
            faults.AddRange((lot.Problem?.Faults ?? []).Select(f => new FieldFault($"{at}.{f.Field}", f.Sentence)));
            if (place is not null && !lot.IsRefused)
            {
                arrivals.Add(new Arrival(typed, line, part, place, lot.Value));
            }
        }

        if (faults.Count == 0 && arrivals.Count == 0)
        {
            faults.Add(new FieldFault("lines", "lines holds nothing that came: give at least one line with a quantity."));
        }

        return faults.Count > 0 ? Problem.Impossible("receipt-unfit", faults) : arrivals;
    }

    private static IReadOnlyList<StockMovement> Movements(Arrival arrival, Actor actor, Instant now)
    {
        var (typed, line) = (arrival.Typed, arrival.Line);
        var measured = typed.ThicknessMm is { } read ? ShimThickness.FromMillimetres(read) : line.Thickness;
        return new GoodsIn(arrival.Part, arrival.Place, typed.Quantity!.Value, measured, arrival.Lot, arrival.UnitCost, line.Id).Movements(actor, now);
    }

    /// <summary>What the supplier charged is what it is known to ask from now on.</summary>
    private static async Task<IReadOnlyList<string>> NoteCosts(
        WorkshopDbContext db, Guid supplierId, IReadOnlyList<Arrival> arrivals, CancellationToken ct)
    {
        var charged = arrivals.Where(a => a.Typed.UnitCost is not null).GroupBy(a => a.Line.PartId).ToDictionary(g => g.Key, g => g.Last().Typed.UnitCost);
        foreach (var supply in await db.PartSupplies.Where(s => s.SupplierId == supplierId && charged.Keys.Contains(s.PartId)).ToListAsync(ct))
        {
            supply.UnitCost = charged[supply.PartId];
        }

        return [.. arrivals.Where(a => a.Typed.UnitCost > a.Line.UnitCost).Select(a => a.Part.Code).Order(StringComparer.Ordinal)];
    }
}
