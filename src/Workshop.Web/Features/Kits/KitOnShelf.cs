using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// A kit beside what the stores have of it, for a card or for a visit that is only being thought of. Shown by
/// <c>&lt;partial name="_KitLines" model="..." /&gt;</c>.
/// </summary>
/// <param name="Compounds">What goes on threads; not counted.</param>
public sealed record KitOnShelf(IReadOnlyList<KitOnShelf.Line> Lines, IReadOnlyList<KitCompound> Compounds)
{
    /// <param name="Name">Absent where the stores do not know the part.</param>
    /// <param name="OnHand">In the stores, whoever has reserved it.</param>
    /// <param name="Reserved">Held for this card.</param>
    /// <param name="ShortBy">How much of needed and have ready together the card cannot count on; 0 once the card is closed.</param>
    /// <param name="Taken">Taken out of the stores at sign-off.</param>
    /// <param name="Reasons">Why, in words.</param>
    public sealed record Line(
        string PartCode,
        string? Name,
        PartUnit Unit,
        decimal Needed,
        decimal HaveReady,
        decimal OnHand,
        decimal Reserved,
        decimal ShortBy,
        decimal Taken,
        IReadOnlyList<string> Reasons)
    {
        /// <summary>Short of what is used in any case, not only of what lies ready.</summary>
        public bool IsShortOfNeeded => ShortBy > HaveReady;
    }

    /// <summary>Somebody looked and something is missing.</summary>
    public bool IsShort => Lines.Any(l => l.ShortBy > 0);

    /// <summary>Looks a kit up in the stores.</summary>
    /// <param name="cardNumber">Absent for a visit that is not booked yet.</param>
    /// <param name="closed">The card is signed off or cancelled: it wants nothing any more.</param>
    public static async Task<KitOnShelf> Read(
        WorkshopDbContext db, Kit kit, int? cardNumber, bool closed, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(kit);
        var parts = await Shelves.Read(db, [.. kit.Lines.Select(l => l.PartCode)], cardNumber, ct);
        var taken = await Shelves.OfCard(db, cardNumber)
            .Where(m => m.Kind == MovementKind.Issued)
            .Join(db.Parts, m => m.PartId, p => p.Id, (m, p) => new { p.Code, p.Name, p.Unit, m.OnHandChange })
            .GroupBy(m => new { m.Code, m.Name, m.Unit })
            .Select(g => new { g.Key, Quantity = -g.Sum(m => m.OnHandChange) })
            .ToListAsync(ct);
        var takenByCode = taken.ToDictionary(t => t.Key.Code, t => t.Quantity, StringComparer.Ordinal);

        var lines = kit.Lines.Select(line =>
        {
            var part = parts.GetValueOrDefault(line.PartCode);
            var unit = part?.Part.Unit ?? PartUnit.Piece;
            return new Line(
                line.PartCode, part?.Part.Name, unit, line.Needed, line.HaveReady, part?.OnHand ?? 0, part?.ReservedForCard ?? 0,
                closed ? 0 : StockAllocation.ShortOf(line.Needed + line.HaveReady, part?.Shelves ?? []),
                takenByCode.GetValueOrDefault(line.PartCode),
                [.. line.Reasons.Select(r => r.InWords(unit))]);
        });

        // What a technician took beside the kit is shown with it.
        var beside = taken
            .Where(t => kit.Lines.All(l => l.PartCode != t.Key.Code))
            .Select(t => new Line(t.Key.Code, t.Key.Name, t.Key.Unit, 0, 0, 0, 0, 0, t.Quantity, ["taken beside the kit"]));
        return new KitOnShelf([.. lines, .. beside], kit.Compounds);
    }
}
