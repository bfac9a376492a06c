using System.Globalization;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>Says in one sentence how much of a part is in the kit and why.</summary>
public static class KitWords
{
    private static readonly string[] Small =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>
    /// "two sealing rings 14 x 18: level plug and oil drain plug; one more ready: clutch cover, if the old one is damaged". What is
    /// needed comes first, then what lies ready, case by case.
    /// </summary>
    public static string Sentence(KitLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var cases = line.Reasons.OrderBy(r => r.Use).GroupBy(r => (r.IsNeeded, r.Condition)).ToList();
        return string.Join("; ", cases.Select((inCase, index) =>
        {
            var reasons = inCase.ToList();
            var sum = reasons.Sum(r => r.Quantity);
            var what = index == 0 ? HowMuch(sum, line.Part, line.PartCode) : $"{Number(sum, line.Unit)} more";
            var ready = inCase.Key.IsNeeded ? "" : " ready";
            return $"{what}{ready}: {And(reasons.Select(r => Spot(r, reasons, line.Unit)))}{inCase.Key.Condition}";
        }));
    }

    /// <summary>"two sealing rings 14 x 18", "3,200 ml of engine oil 10W-40", "one oil filter".</summary>
    /// <param name="part">Absent where the stores do not know it: then its code stands for its name.</param>
    public static string HowMuch(decimal quantity, Part? part, string partCode)
    {
        if (part is null)
        {
            return $"{Number(quantity, PartUnit.Piece)} {partCode}";
        }

        var name = Named(part);
        if (part.Unit == PartUnit.Millilitre)
        {
            return $"{Number(quantity, part.Unit)} of {name}";
        }

        return Noun(part) is { } noun
            ? $"{Number(quantity, part.Unit)} {noun}{(quantity == 1 ? "" : "s")} {Size(part)}"
            : quantity == 1 ? $"one {name}" : $"{Number(quantity, part.Unit)} of {name}";
    }

    /// <summary>"a, b and c".</summary>
    public static string And(IEnumerable<string> words)
    {
        var all = words.ToList();
        return all.Count < 2 ? string.Concat(all) : $"{string.Join(", ", all.SkipLast(1))} and {all[^1]}";
    }

    /// <summary>The kind, where it with a size or number says what the part is.</summary>
    private static string? Noun(Part part) => Size(part) is null ? null : part.Kind.Spoken();

    /// <summary>What tells parts of a kind apart: a ring's diameters, an O-ring's inner diameter and section, a plug's number.</summary>
    private static string? Size(Part part) => part switch
    {
        { Kind: PartKind.SealingRing, InnerDiameterMm: { } inner, OuterDiameterMm: { } outer } => Text($"{inner:0.##} x {outer:0.##}"),
        { Kind: PartKind.ORing, InnerDiameterMm: { } inner, SectionMm: { } section } => Text($"{inner:0.##} x {section:0.##}"),
        { Kind: PartKind.SparkPlug, Designation: { Length: > 0 } number } => number,
        _ => null,
    };

    /// <summary>The part's name inside a sentence, with its grade or number where the name does not say it.</summary>
    private static string Named(Part part) =>
        part.Designation is { Length: > 0 } designation && !part.Name.Contains(designation, StringComparison.OrdinalIgnoreCase)
            ? $"{KitReason.Inside(part.Name)} {designation}"
            : KitReason.Inside(part.Name);

    private static string Spot(KitReason reason, List<KitReason> all, PartUnit unit) =>
        all.Count > 1 && all.Exists(r => r.Quantity != all[0].Quantity)
            ? $"{reason.Spot} ({unit.Say(reason.Quantity)})"
            : reason.Spot;

    private static string Number(decimal quantity, PartUnit unit) =>
        unit == PartUnit.Piece && quantity == decimal.Truncate(quantity) && quantity < Small.Length ? Small[(int)quantity] : unit.Say(quantity);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
