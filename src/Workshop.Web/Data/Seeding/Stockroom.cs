using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;
using Workshop.Web.Features.Shims;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// The invented stores over the years: opened with a full stock, filled up again and again, and full once more on the
/// seeding day. Deliveries are rows of their own; what visits take goes through the use cases.
/// </summary>
internal sealed class Stockroom(WorkshopDbContext db, DemoWorkshop workshop, Guid storekeeper)
{
    // No shim box is ever complete: every seventh compartment is empty, so that a wanted size may be missing.
    private const int EmptyCompartment = 7;

    // So that a place may come between two others.
    private const int WalkStep = 10;

    private readonly Dictionary<string, Guid> parts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Guid> places = new(StringComparer.Ordinal);

    /// <summary>Parts, places and a full stock.</summary>
    public async Task Open(Instant now, CancellationToken ct)
    {
        foreach (var name in workshop.StoragePlaces)
        {
            places.Add(name, NewId.At(now));
            db.StoragePlaces.Add(new StoragePlace { Id = places[name], Name = name, WalkOrder = places.Count * WalkStep });
        }

        var rings = SeedFiles.SealingRings();
        var oRings = SeedFiles.ORings().Concat(SeedFiles.MetricORings()).ToDictionary(StringComparer.Ordinal);
        foreach (var demo in workshop.Parts)
        {
            var size = demo.Size is null ? null : demo.Kind == PartKind.ORing ? oRings[demo.Size] : rings[demo.Size];
            parts.Add(demo.Code, NewId.At(now));
            db.Parts.Add(new Part
            {
                Id = parts[demo.Code], Code = demo.Code, Name = demo.Name, Kind = demo.Kind, Unit = demo.Unit,
                InnerDiameterMm = size?.InnerMm, OuterDiameterMm = size?.OuterMm, SectionMm = size?.SectionMm,
                Material = demo.Material, Hardness = demo.Hardness, ShelfLifeMonths = demo.ShelfLifeMonths, PackQuantity = demo.PackQuantity,
                DeliveryDays = demo.DeliveryDays, Form = demo.Kind == PartKind.SealingRing ? "A" : null,
                FittedOnce = demo.Kind is PartKind.SealingRing or PartKind.FastenerUsedOnce,
                Designation = demo.Designation
                    ?? (demo.Size is null ? null : demo.Kind == PartKind.SealingRing ? $"DIN 7603 A {demo.Size}" : demo.Size),
            });
            if (demo.InsteadOf is { } other)
            {
                db.PartAlternatives.Add(new PartAlternative { PartId = parts[other], AlternativeId = parts[demo.Code], Note = demo.Note });
            }
        }

        db.PartScanCodes.AddRange(workshop.Packages.Select(p => new PartScanCode { Code = p.Code, PartId = parts[p.Part], Quantity = p.Quantity }));
        var series = SeedFiles.ShimSeries();
        db.ShimSeries.AddRange(workshop.ShimBoxes.Select(box =>
            series[box.PartCode].Of(parts[box.PartCode], places[box.Place], box.Columns)));
        await db.SaveChangesAsync(ct);
        await FillUp(now, ct);
    }

    /// <summary>Delivers whatever is below its full stock.</summary>
    public async Task FillUp(Instant now, CancellationToken ct)
    {
        var onHand = await db.StockBalances.AsNoTracking()
            .Where(b => b.Condition == StockCondition.New)
            .ToDictionaryAsync(b => (b.PartId, b.PlaceId, b.Thickness), b => b.OnHand, ct);
        void UpTo(decimal full, string part, string place, ShimThickness? thickness)
        {
            var missing = full - onHand.GetValueOrDefault((parts[part], places[place], thickness));
            if (missing > 0)
            {
                db.StockMovements.AddRange(Delivery(part, place, thickness, missing, now));
            }
        }

        foreach (var part in workshop.Parts)
        {
            UpTo(part.Stock, part.Code, part.Place, null);
        }

        var series = SeedFiles.ShimSeries();
        foreach (var box in workshop.ShimBoxes)
        {
            foreach (var (thickness, full) in Compartments(box, series[box.PartCode].StepMm))
            {
                UpTo(full, box.PartCode, box.Place, ShimThickness.FromMillimetres(thickness));
            }
        }

        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
    }

    /// <summary>Parts that are made no more say what took their place.</summary>
    public async Task Discontinue(CancellationToken ct)
    {
        foreach (var demo in workshop.Parts.Where(p => p.ReplacedBy is not null))
        {
            var part = await db.Parts.SingleAsync(p => p.Code == demo.Code, ct);
            (part.Discontinued, part.ReplacedById) = (true, parts[demo.ReplacedBy!]);
        }

        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
    }

    /// <summary>One shim that the box did not hold, ordered for a visit.</summary>
    public async Task Deliver(string partCode, ShimThickness thickness, Instant now, CancellationToken ct)
    {
        var place = workshop.ShimBoxes.Single(b => b.PartCode == partCode).Place;
        db.StockMovements.AddRange(Delivery(partCode, place, thickness, 1, now));
        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
    }

    private IReadOnlyList<StockMovement> Delivery(string part, string place, ShimThickness? thickness, decimal quantity, Instant now) =>
        thickness is { } size
            ? ShimLedger.Receipt(parts[part], places[place], size, size, (int)quantity, storekeeper, now)
            :
            [
                new StockMovement
                {
                    Id = NewId.At(now), PartId = parts[part], PlaceId = places[place], Kind = MovementKind.Received,
                    OnHandChange = quantity, ReservedChange = 0, MovedBy = storekeeper, MovedAt = now,
                },
            ];

    private static IEnumerable<(decimal Thickness, int Full)> Compartments(DemoShimBox box, decimal step)
    {
        var compartment = 0;
        for (var thickness = box.FromMm; thickness <= box.ToMm; thickness += step)
        {
            if (++compartment % EmptyCompartment != 0)
            {
                yield return (thickness, box.Each - (compartment % 2));
            }
        }
    }
}
