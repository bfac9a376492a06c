using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Shims;

namespace Workshop.Web.Features.Stores;

/// <summary>What comes into the stores, by whatever way: form, scanner, file or order.</summary>
internal sealed record GoodsIn(
    Part Part, StoragePlace Place, decimal Quantity, ShimThickness? Thickness, StockLot? Lot, decimal? UnitCost = null, Guid? OrderLineId = null)
{
    /// <summary>One movement; of shims one each.</summary>
    public IReadOnlyList<StockMovement> Movements(Actor actor, Instant now) => Thickness is { } measured
        ? ShimLedger.Receipt(Part.Id, Place.Id, measured, null, (int)Quantity, actor.PersonId, now, UnitCost, OrderLineId)
        :
        [
            new StockMovement
            {
                Id = NewId.At(now), PartId = Part.Id, PlaceId = Place.Id, LotId = Lot?.Id, Kind = MovementKind.Received,
                OnHandChange = Quantity, ReservedChange = 0, UnitCost = UnitCost, OrderLineId = OrderLineId,
                MovedBy = actor.PersonId, MovedAt = now,
            },
        ];

    /// <summary>The lot under which it comes in, new or known; the part's row is locked. A new one is added to <paramref name="db"/>.</summary>
    public static async Task<Outcome<StockLot?>> LotOf(
        WorkshopDbContext db, Part part, string? code, LocalDate? expiresOn, LocalDate today, Instant now, CancellationToken ct)
    {
        var given = string.IsNullOrWhiteSpace(code) ? null : code.Trim();
        var known = given is null ? null
            : db.StockLots.Local.SingleOrDefault(l => l.PartId == part.Id && l.Code == given)
                ?? await db.StockLots.SingleOrDefaultAsync(l => l.PartId == part.Id && l.Code == given, ct);
        var lot = LotRules.Of(part, given, expiresOn, known, NewId.At(now), today);
        if (lot.TryGet(out var found, out _) && found is not null && known is null)
        {
            db.StockLots.Add(found);
        }

        return lot;
    }
}
