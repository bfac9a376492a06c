using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>How one part is ordered: of whom, how surely it is to be there, and what comes out of it today.</summary>
public static class GetOrdering
{
    public sealed record Request(string PartCode);

    /// <param name="ServiceLevel">The part's own; absent where the workshop's holds.</param>
    /// <param name="ReorderPoint">Set by hand; absent where it is reckoned.</param>
    /// <param name="Today">What the reckoning gives; absent of shims, which are told apart by thickness.</param>
    public sealed record Answer(
        string PartCode,
        string Name,
        PartUnit Unit,
        PartKind Kind,
        bool Discontinued,
        bool Stocked,
        double? ServiceLevel,
        double WorkshopServiceLevel,
        decimal? ReorderPoint,
        string Currency,
        IReadOnlyList<Sold> SoldBy,
        Reckoned? Today,
        uint RowVersion) : IHasVersion;

    public sealed record Sold(
        Guid Id,
        Guid SupplierId,
        string Supplier,
        bool SupplierRetired,
        string? SupplierCode,
        decimal PackQuantity,
        decimal? SmallestQuantity,
        decimal? UnitCost,
        int? DeliveryDays,
        int SupplierDeliveryDays,
        bool Preferred,
        uint RowVersion);

    /// <param name="PerDay">What went out, as a mean.</param>
    /// <param name="DayVariance">Its variance.</param>
    /// <param name="UsualQuantity">What an order brings that goes out at the reorder point.</param>
    /// <param name="FillRate">The share of what is asked for beyond booked visits that is met from the shelf; absent where nothing is expected.</param>
    /// <param name="ShortPerCycle">How much of it is expected to be missing from one order to the next.</param>
    /// <param name="Service">Both in words.</param>
    public sealed record Reckoned(
        decimal ReorderPoint, decimal OrderUpTo, decimal Quantity, DemandLaw Law, double PerDay, double DayVariance, int Weeks, string Why,
        decimal UsualQuantity, double? FillRate, double? ShortPerCycle, string? Service);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartsByCode.Read(db, [request.PartCode], ct)).TryGetValue(request.PartCode, out var part))
        {
            return Problem.NotFound($"Part {request.PartCode}");
        }

        var version = await db.Parts.AsNoTracking().Where(p => p.Id == part.Id).Select(p => EF.Property<uint>(p, MappingExtensions.RowVersion)).SingleAsync(ct);
        var sold = await (
            from supply in db.PartSupplies.AsNoTracking()
            join supplier in db.Suppliers on supply.SupplierId equals supplier.Id
            where supply.PartId == part.Id
            orderby supply.Preferred descending, supplier.Name
            select new Sold(
                supply.Id, supplier.Id, supplier.Name, supplier.Retired, supply.SupplierCode, supply.PackQuantity, supply.SmallestQuantity,
                supply.UnitCost, supply.DeliveryDays, supplier.DeliveryDays, supply.Preferred, EF.Property<uint>(supply, MappingExtensions.RowVersion))).ToListAsync(ct);
        var profile = await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct);
        return new Answer(
            part.Code, part.Name, part.Unit, part.Kind, part.Discontinued, part.Stocked, part.ServiceLevel, profile.ServiceLevel, part.ReorderPoint,
            profile.Currency, sold, part.Kind == PartKind.Shim ? null : await Reckon(db, clock, part, ct), version);
    }

    private static async Task<Reckoned> Reckon(WorkshopDbContext db, IClock clock, Part part, CancellationToken ct)
    {
        var proposal = (await OrderingOutlook.Read(db, clock, part, ct)).Propose(part, ProposeOrders.UsualLastsDays);
        return new Reckoned(
            proposal.ReorderPoint, proposal.OrderUpTo, proposal.Quantity, proposal.InLeadTime.Law, proposal.Of.Issues.PerDay,
            proposal.Of.Issues.DayVariance, proposal.Of.Issues.Weeks.Count, proposal.Why,
            proposal.UsualQuantity, proposal.Service?.FillRate, proposal.Service?.ShortPerCycle, proposal.ServiceWords);
    }
}
