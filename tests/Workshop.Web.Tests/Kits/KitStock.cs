using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Kits;

/// <summary>Parts, places and lots as rows, and visits whose kit is one ring.</summary>
internal static class KitStock
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>A sealing ring that is booked in at a place; without quantity it is known and not there.</summary>
    public static Task<Guid> Ring(
        this WorkshopApp app, string code, decimal quantity = 0, Guid? place = null, string? lot = null, LocalDate? expiresOn = null) => app.Look(async db =>
    {
        var part = await db.Parts.SingleOrDefaultAsync(p => p.Code == code, Ct);
        if (part is null)
        {
            part = new Part { Id = Domain.NewId.At(app.Clock), Code = code, Name = $"Ring {code}", Kind = PartKind.SealingRing, Unit = PartUnit.Piece };
            db.Parts.Add(part);
        }

        StockLot? row = lot is null ? null : new StockLot
        {
            Id = Domain.NewId.At(app.Clock), PartId = part.Id, Code = lot, ExpiresOn = expiresOn, ReceivedOn = new LocalDate(2026, 1, 5),
        };
        db.StockLots.AddRange(row is null ? [] : [row]);
        if (quantity > 0)
        {
            db.StockMovements.Add(new StockMovement
            {
                Id = Domain.NewId.At(app.Clock), PartId = part.Id, PlaceId = place ?? TestWorkshop.Shelf, LotId = row?.Id, Kind = MovementKind.Received,
                OnHandChange = quantity, ReservedChange = 0, MovedBy = TestWorkshop.Manager, MovedAt = app.Clock.Now,
            });
        }

        await db.SaveChangesAsync(Ct);
        return part.Id;
    });

    public static Task<Guid> Place(this WorkshopApp app, string name, int walkOrder) => app.Look(async db =>
    {
        var place = new StoragePlace { Id = Domain.NewId.At(app.Clock), Name = name, WalkOrder = walkOrder };
        db.StoragePlaces.Add(place);
        await db.SaveChangesAsync(Ct);
        return place.Id;
    });

    public static Task<int> Alternatives(this WorkshopApp app, Guid part, Guid other, string? note = null) => app.Look(db =>
    {
        db.PartAlternatives.Add(new PartAlternative { PartId = part, AlternativeId = other, Note = note });
        return db.SaveChangesAsync(Ct);
    });

    /// <summary>A twin whose oil drain takes these parts and nothing else; what is opened is the drain plug.</summary>
    public static EngineSpecification Drain(params (string Code, decimal Quantity)[] seals) => TestEngines.Twin() with
    {
        Joints = [new Joint("sump-drain", "Oil drain", [TestEngines.DrainPlug], [.. seals.Select(s => new Seal(s.Code, s.Quantity, SealPolicy.ReplaceAlways))])],
        ServiceItems = [TestEngines.Twin().ServiceItems.Single(i => i.Code == TestEngines.OilService) with { Parts = [] }],
    };

    public static IReadOnlyDictionary<string, Likelihood> OilOnly { get; } =
        new Dictionary<string, Likelihood> { [TestEngines.OilService] = Likelihood.Certain };

    public static Task<TestVisit> DrainVisit(this WorkshopApp app, params (string Code, decimal Quantity)[] seals) =>
        app.CheckedIn(items: OilOnly, specification: Drain(seals));

    public static async Task<JsonElement> Body(this HttpResponseMessage answer) => await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);

    public static Task<HttpResponseMessage> Pick(this HttpClient client, TestVisit visit, object body) =>
        client.PostAsJsonAsync($"{visit.Api}/pick-list/picks", body, Ct);

    public static Task<JsonElement> Get(this HttpClient client, string address) => client.GetFromJsonAsync<JsonElement>(address, Ct);

    /// <summary>On hand and reserved of a part, over all places.</summary>
    public static Task<(decimal OnHand, decimal Reserved)> Balance(this WorkshopApp app, string code) => app.Look(async db =>
    {
        var rows = await (from b in db.StockBalances join p in db.Parts on b.PartId equals p.Id where p.Code == code select b).ToListAsync(Ct);
        return (rows.Sum(b => b.OnHand), rows.Sum(b => b.Reserved));
    });
}
