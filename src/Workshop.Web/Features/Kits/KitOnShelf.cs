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
    /// <param name="PartCode">As the stores name it; as the specification does where they do not know it.</param>
    /// <param name="Name">Absent where the stores do not know the part.</param>
    /// <param name="OnHand">In the stores, whoever has reserved it; of what stands in for it, where something does.</param>
    /// <param name="Reserved">Held for this card.</param>
    /// <param name="ShortBy">
    /// How much of needed and have ready together the card cannot count on: of a card what is not there with all visits to come counted, of
    /// a visit that is only thought of what is not free; 0 once the card is closed.
    /// </param>
    /// <param name="Taken">Out of the stores for this card, less what came back.</param>
    /// <param name="Reasons">Why, in words, reason by reason.</param>
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
        /// <summary>Why, in one sentence: "two sealing rings 14 x 18: level plug and oil drain plug".</summary>
        public string Sentence { get; init; } = "";

        /// <summary>In whole packages, with what is left over; absent where it comes singly.</summary>
        public string? Packages { get; init; }

        /// <summary>By its standard: a plug's number, an oil's grade.</summary>
        public string? Designation { get; init; }

        /// <summary>Of what is on hand, past its day when the visit takes place: never taken.</summary>
        public decimal Expired { get; init; }

        /// <summary>Of what lies there, what expires before the visit, in words; absent where all of it lasts.</summary>
        public string? Ends { get; init; }

        /// <summary>It is made no more; a replacement stands first among the alternatives.</summary>
        public bool Discontinued { get; init; }

        /// <summary>What is taken for it on this card.</summary>
        public OtherPart? Instead { get; init; }

        /// <summary>What may stand in for it, replacements first.</summary>
        public IReadOnlyList<OtherPart> Alternatives { get; init; } = [];

        /// <summary>All that lies ready is for old seals that may not go back in: their inspections say what was taken.</summary>
        public bool ReadyForSeals { get; init; }

        /// <summary>Short of what is used in any case, not only of what lies ready.</summary>
        public bool IsShortOfNeeded => ShortBy > HaveReady;
    }

    /// <param name="Note">What is to be kept in mind, or why it was chosen.</param>
    /// <param name="Free">Reserved for nobody.</param>
    /// <param name="Replaces">It took the place of a part that is made no more.</param>
    public sealed record OtherPart(string PartCode, string Name, string? Note, decimal Free, bool Replaces);

    /// <summary>Somebody looked and something is missing.</summary>
    public bool IsShort => Lines.Any(l => l.ShortBy > 0);

    /// <summary>Looks a kit up in the stores.</summary>
    /// <param name="cardNumber">Absent for a visit that is not booked yet.</param>
    /// <param name="closed">The card is signed off or cancelled: it wants nothing any more.</param>
    /// <param name="lacking">What the card lacks with all visits to come counted; absent for a visit that is not among them as it is asked for.</param>
    internal static async Task<KitOnShelf> Read(
        WorkshopDbContext db, KitCase visit, int? cardNumber, bool closed, ListShortages.Answer? lacking, CancellationToken ct)
    {
        var touched = cardNumber is { } number ? await Shelves.TouchedBy(db, number, ct) : [];
        var parts = await Shelves.Read(db, [.. visit.Wanted.Keys.Union(touched)], cardNumber, visit.UsedOn, ct);
        var own = visit.Kit.Lines.Where(l => l.Part is not null).Select(l => l.Part!.Id).ToHashSet();
        var alternatives = await Alternatives.Read(db, own, visit.UsedOn, ct);
        var lacks = lacking?.Parts.ToDictionary(p => p.PartCode, p => p.ShortBy + p.ReadyShortBy, StringComparer.Ordinal);
        var counted = new Dictionary<Guid, decimal>();

        // How much of so much is missing, of the part that is taken.
        decimal ShortOf(decimal wanted, PartOnShelves? part) =>
            part is null ? wanted
            : lacks is null ? StockAllocation.ShortOf(wanted, part.Shelves)
            : Math.Max(0, wanted - (visit.Wanted[part.Part.Id] - lacks.GetValueOrDefault(part.Part.Code)));

        var lines = visit.Kit.Lines.Select(line =>
        {
            var part = visit.TakenFor(line) is { } taken ? parts[taken.Id] : null;

            // Two lines that are taken from one part share what lies of it.
            var before = part is null ? 0 : counted.GetValueOrDefault(part.Part.Id);
            var shortBy = ShortOf(before + line.Wanted, part) - ShortOf(before, part);
            if (part is not null)
            {
                counted[part.Part.Id] = before + line.Wanted;
            }

            var standIn = line.Part is { } original ? visit.Instead.GetValueOrDefault(original.Id) : null;
            return new Line(
                line.PartCode, line.Part?.Name, line.Unit, line.Needed, line.HaveReady, part?.OnHand ?? 0, part?.ReservedForCard ?? 0,
                closed ? 0 : shortBy, part?.IssuedToCard ?? 0, [.. line.Reasons.Select(r => r.InWords(line.Unit))])
            {
                Sentence = line.Sentence,
                ReadyForSeals = line.Reasons.All(r => r.Use is KitUse.Needed or KitUse.WhenUnfit or KitUse.WhenDamaged),
                Packages = part is null ? null : Packages.Of(line.Wanted, part.Part)?.InWords(part.Part),
                Designation = line.Part?.Designation,
                Expired = part?.Expired ?? 0,
                Ends = part is null ? null : LotWords.Ends(part.Part.Unit, part.Shelves.Select(s => new LotQuantity(s.ExpiresOn, s.OnHand)), visit.UsedOn),
                Discontinued = line.Part?.Discontinued ?? false,
                Instead = standIn is null ? null : new OtherPart(standIn.Part.Code, standIn.Part.Name, standIn.Reason, part?.Free ?? 0, false),
                Alternatives = line.Part is null
                    ? []
                    : [.. alternatives[line.Part.Id].Select(a => new OtherPart(a.Part.Code, a.Part.Name, a.Note, a.Free, a.Replaces))],
            };
        }).ToList();

        // What a technician took beside the kit is shown with it.
        var beside = parts.Values
            .Where(p => p.IssuedToCard > 0 && !counted.ContainsKey(p.Part.Id))
            .OrderBy(p => p.Part.Code, StringComparer.Ordinal)
            .Select(p => new Line(
                p.Part.Code, p.Part.Name, p.Part.Unit, 0, 0, p.OnHand, p.ReservedForCard, 0, p.IssuedToCard, ["taken beside the kit"])
            {
                Sentence = "taken beside the kit",
            });
        return new KitOnShelf([.. lines, .. beside], visit.Kit.Compounds);
    }
}
