using System.Globalization;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>Whether a part of the kit is used in any case, or lies ready.</summary>
public enum KitUse
{
    /// <summary>Used in any case: what is replaced always, sealant, what an item consumes.</summary>
    Needed,

    /// <summary>Taken when the inspection of the old seal finds it unfit.</summary>
    WhenUnfit,

    /// <summary>Taken when the old seal is damaged.</summary>
    WhenDamaged,

    /// <summary>An item lists it as "have ready".</summary>
    WhenWanted,

    /// <summary>Taken when an item that is held ready, such as an adjustment, is begun.</summary>
    WhenBegun,
}

/// <summary>Why a part is in the kit: how many, where, and in which case.</summary>
/// <param name="Quantity">In the part's own unit.</param>
/// <param name="Place">Where it goes, with its preposition: "on the oil drain plug".</param>
/// <param name="Spot">The same without: "oil drain plug".</param>
/// <param name="Items">The items held ready that would use it; empty for every other use.</param>
public sealed record KitReason(decimal Quantity, string Place, string Spot, KitUse Use, IReadOnlyList<string> Items)
{
    public bool IsNeeded => Use == KitUse.Needed;

    /// <summary>
    /// The specification would have it inspected and reused, but the stores know it as fitted once and the maker does not allow
    /// it again.
    /// </summary>
    public bool NeverFittedTwice { get; init; }

    /// <summary>In which case it is used, as the end of a sentence; empty where it is used in any case.</summary>
    internal string Condition => Use switch
    {
        KitUse.Needed => NeverFittedTwice ? ", as it is fitted once and the maker does not allow it again" : "",
        KitUse.WhenUnfit => ", if the old one does not pass its inspection",
        KitUse.WhenDamaged => ", if the old one is damaged",
        KitUse.WhenWanted => ", if wanted",
        KitUse.WhenBegun when Items is [var only] && Place.EndsWith(only, StringComparison.Ordinal) => ", if it is begun",
        KitUse.WhenBegun => $", if {string.Join(" or ", Items)} is begun",
        _ => throw new InvalidOperationException($"{Use} has no words."),
    };

    /// <summary>As a person says it: "one on the oil drain plug", "2 at the head cover, if damaged".</summary>
    public string InWords(PartUnit unit = PartUnit.Piece)
    {
        var quantity = (Quantity, unit) switch
        {
            (_, PartUnit.Millilitre) => Quantity.ToString("0.####", CultureInfo.InvariantCulture) + " ml",
            (1, _) => "one",
            _ => Quantity.ToString("0.####", CultureInfo.InvariantCulture),
        };
        return $"{quantity} {Place}{Condition}";
    }

    /// <summary>A name inside a sentence: "Oil drain plug" becomes "oil drain plug", "O-ring groove" stays.</summary>
    internal static string Inside(string name) =>
        name.Length > 1 && char.IsUpper(name[0]) && (char.IsLower(name[1]) || name[1] == ' ')
            ? char.ToLowerInvariant(name[0]) + name[1..]
            : name;
}
