using System.Globalization;
using NodaTime;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>How it is said that something lies there and is of no use to a visit.</summary>
public static class LotWords
{
    /// <summary>"12 there, of which 4 (to be used by 2026-12-03) expire before the visit"; nothing where all of it lasts.</summary>
    /// <param name="unit">In which the part is counted.</param>
    /// <param name="there">What lies there, by last day.</param>
    /// <param name="day">Of the visit's work.</param>
    public static string? Ends(PartUnit unit, IEnumerable<LotQuantity> there, LocalDate day)
    {
        var lots = there.ToList();
        var ending = lots.Where(l => l.Quantity > 0 && !l.LastsUntil(day)).GroupBy(l => l.ExpiresOn!.Value).OrderBy(g => g.Key)
            .Select(g => string.Create(CultureInfo.InvariantCulture, $"{unit.Say(g.Sum(l => l.Quantity))} (to be used by {g.Key:uuuu-MM-dd})")).ToList();
        return ending.Count == 0 ? null : $"{unit.Say(lots.Sum(l => l.Quantity))} there, of which {KitWords.And(ending)} expire before the visit";
    }
}
