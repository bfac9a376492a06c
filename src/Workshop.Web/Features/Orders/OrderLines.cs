using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>A line of an order as typed. One without a quantity is dropped.</summary>
public sealed record OrderLineFields
{
    public string? PartCode { get; init; }

    /// <summary>Shims only, and always of shims.</summary>
    public decimal? ThicknessMm { get; init; }

    /// <summary>In the part's unit, whole packages of the supplier.</summary>
    public decimal? Quantity { get; init; }

    /// <summary>Of one unit, before tax; what the supplier is known to ask where it is not given.</summary>
    public decimal? UnitCost { get; init; }

    /// <summary>Why it is ordered; a proposal's words where it comes from one.</summary>
    public string? Reason { get; init; }
}

internal sealed class OrderLineFieldsValidator : AbstractValidator<OrderLineFields>
{
    public OrderLineFieldsValidator()
    {
        RuleFor(l => l.PartCode).IsAtMost(Limits.Code);
        RuleFor(l => l.PartCode).IsGiven("the stores' code of what is ordered").When(l => l.Quantity > 0);
        RuleFor(l => l.Quantity).IsWithin(0, SupplyFieldsValidator.LargestQuantity, 4, "pieces or ml");
        RuleFor(l => l.ThicknessMm).IsShimThickness();
        RuleFor(l => l.UnitCost).IsWithin(0, SupplyFieldsValidator.DearestUnit, SupplyFieldsValidator.CostDecimals, "");
        RuleFor(l => l.Reason).IsAtMost(Limits.Remark);
    }
}

/// <summary>A line that was looked up: the part is there, and the supplier sells so much at once.</summary>
internal sealed record CheckedLine(Guid Id, Part Part, ShimThickness? Thickness, decimal Quantity, decimal? UnitCost, string? Reason)
{
    public PurchaseOrderLine Row(int order) => new()
    {
        Id = Id, OrderNumber = order, PartId = Part.Id, Thickness = Thickness, Quantity = Quantity, UnitCost = UnitCost, Reason = Reason,
    };
}

internal static class OrderLines
{
    /// <summary>Looks every line up; all that is wrong is said at once, by the line's place in the list.</summary>
    public static async Task<Outcome<IReadOnlyList<CheckedLine>>> Read(
        WorkshopDbContext db, Guid supplierId, IList<OrderLineFields> typed, Instant now, CancellationToken ct)
    {
        var parts = await PartsByCode.Read(db, [.. typed.Select(l => l.PartCode?.Trim()).OfType<string>().Distinct()], ct);
        var ids = parts.Values.Select(p => p.Id).ToList();
        var supplies = await db.PartSupplies.AsNoTracking().Where(s => s.SupplierId == supplierId && ids.Contains(s.PartId)).ToDictionaryAsync(s => s.PartId, ct);
        var (lines, faults, seen) = (new List<CheckedLine>(), new List<FieldFault>(), new HashSet<(Guid, decimal?)>());
        foreach (var (index, line) in typed.Index().Where(l => l.Item.Quantity > 0))
        {
            var at = $"lines[{index}]";
            if (!parts.TryGetValue(line.PartCode!.Trim(), out var part))
            {
                faults.Add(new FieldFault($"{at}.partCode", $"{at}.partCode is \"{line.PartCode}\": no part has it; choose one of GET /api/v1/stock."));
                continue;
            }

            var supply = supplies.GetValueOrDefault(part.Id);
            faults.AddRange(FaultsOf(at, part, line, supply, seen.Add((part.Id, line.ThicknessMm))));
            lines.Add(new CheckedLine(
                NewId.At(now), part, line.ThicknessMm is { } mm ? ShimThickness.FromMillimetres(mm) : null, line.Quantity!.Value,
                line.UnitCost ?? supply?.UnitCost, string.IsNullOrWhiteSpace(line.Reason) ? null : line.Reason.Trim()));
        }

        return faults.Count > 0 ? Problem.Impossible("order-unfit", faults) : lines;
    }

    private static IEnumerable<FieldFault> FaultsOf(string at, Part part, OrderLineFields line, PartSupply? supply, bool isFirst)
    {
        if (part.Discontinued)
        {
            yield return new FieldFault($"{at}.partCode", $"{at}.partCode is \"{part.Code}\", which is discontinued; nothing is ordered of it.");
        }

        if (!isFirst)
        {
            yield return new FieldFault($"{at}.partCode", $"{at}.partCode is \"{part.Code}\", which stands in another line; put both quantities into one.");
        }

        if (part.Kind == PartKind.Shim != line.ThicknessMm is not null)
        {
            yield return new FieldFault($"{at}.thicknessMm", part.Kind == PartKind.Shim
                ? $"{at}.thicknessMm is empty: {part.Name} is ordered by thickness."
                : $"{at}.thicknessMm is given, but {part.Name} is no shim; leave it empty.");
        }

        if (PackageSizes.Refuse($"{at}.quantity", part, line.Quantity!.Value, supply) is { } fault)
        {
            yield return fault;
        }
    }

    /// <summary>Holds an order until the transaction ends, so that two changes of it never pass each other.</summary>
    public static async Task<Outcome<PurchaseOrder>> Lock(WorkshopDbContext db, int number, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from purchase_orders where number = {number} for update", ct);
        return await db.PurchaseOrders.SingleOrDefaultAsync(o => o.Number == number, ct) is { } order ? order : Problem.NotFound($"Order {number}");
    }
}
