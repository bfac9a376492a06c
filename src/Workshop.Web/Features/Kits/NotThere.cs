using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;

namespace Workshop.Web.Features.Kits;

/// <summary>What is wanted is not there, or another card has it: says what is there instead, and what would do the same work.</summary>
internal static class NotThere
{
    public static Problem Refusal(
        PartOnShelves part, decimal wanted, decimal missing, ShelfNames names, IEnumerable<Alternative> alternatives) =>
        new(ProblemKind.Conflict, "not-there", $"{part.Part.Unit.Say(wanted)} wanted. {Sentence(part, missing, names, alternatives)}")
        {
            Extras = new Dictionary<string, object?>
            {
                ["there"] = part.Shelves.Where(s => s.OnHand > 0).Select(s => new
                {
                    s.PlaceId, Place = names.Places[s.PlaceId].Name, s.LotId, Lot = Lot(s, names), s.ExpiresOn, s.Expired, s.OnHand,
                    ForThisCard = s.HeldAndThere + s.Free,
                }).ToList(),
                ["alternatives"] = alternatives.Select(Other).ToList(),
            },
        };

    /// <summary>"Sealing ring 14 x 18 (ring-14x18): 1 is missing; of the 1 on Shelf B others hold 1. Instead: ..."</summary>
    public static string Sentence(PartOnShelves part, decimal missing, ShelfNames names, IEnumerable<Alternative> alternatives)
    {
        var there = part.Shelves.Where(s => s.OnHand > 0).Select(s =>
        {
            var lot = Lot(s, names) is { } code ? $", lot {code}" : "";
            var forCard = s.HeldAndThere + s.Free;
            var why = s.Expired ? "past its day" : forCard > 0 ? $"{part.Part.Unit.Say(forCard)} for this card" : "held for other cards";
            return $"{part.Part.Unit.Say(s.OnHand)} on {names.Places[s.PlaceId].Name}{lot} ({why})";
        }).ToList();
        var free = alternatives.Where(a => a.Free > 0).Select(a =>
            $"{a.Part.Name} ({a.Part.Code}), {a.Part.Unit.Say(a.Free)} free{(a.Note is { } note ? $", {note}" : "")}").ToList();
        var made = part.Part.Discontinued ? " It is made no more." : "";
        return $"{part.Part.Name} ({part.Part.Code}): {part.Part.Unit.Say(missing)} missing; "
            + $"there {(there.Count == 0 ? "is none" : $"is {KitWords.And(there)}")}.{made}"
            + (free.Count == 0 ? " Nothing that may stand in for it is free." : $" Instead: {KitWords.And(free)}.");
    }

    public static KitOnShelf.OtherPart Other(Alternative a) => new(a.Part.Code, a.Part.Name, a.Note, a.Free, a.Replaces);

    private static string? Lot(ShelfStock shelf, ShelfNames names) => shelf.LotId is { } lot ? names.Lots[lot].Code : null;
}
