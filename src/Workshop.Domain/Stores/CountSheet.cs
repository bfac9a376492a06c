using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Stores;

/// <summary>What is known of one part and lot as a count is closed.</summary>
/// <param name="Line">The line that holds: the last one of that part and lot.</param>
/// <param name="Part">What was counted.</param>
/// <param name="Lot">Its lot's code, where it lies by lot.</param>
/// <param name="OnHand">What the books say now; movements since the counting are in it.</param>
/// <param name="Reserved">Of it now, for cards.</param>
public sealed record CountedPart(StockCountLine Line, Part Part, string? Lot, decimal OnHand, decimal Reserved)
{
    /// <summary>What was counted more than the books had then; negative where it was less.</summary>
    public decimal Difference => Line.Counted - Line.Expected;

    public bool NeedsReason => Difference != 0 && Line.Reason is null;

    /// <summary>
    /// What will be there once the count is closed: the difference is booked against what is there now, so that what came or went
    /// between counting and closing stays booked.
    /// </summary>
    public decimal After => OnHand + Difference;

    /// <summary>How much of what is reserved will not be there.</summary>
    public decimal ReservedTooMuch => Math.Clamp(Reserved - After, 0, Reserved);

    public string Name => Lot is null ? Part.Name : $"{Part.Name}, lot {Lot}";
}

/// <summary>When a count may be closed.</summary>
public static class CountSheet
{
    /// <summary>The lines that hold: of each part and lot the last.</summary>
    public static IReadOnlyList<StockCountLine> Standing(IEnumerable<StockCountLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return [.. lines.GroupBy(l => (l.PartId, l.LotId)).Select(g => g.MaxBy(l => l.Number)!)];
    }

    /// <summary>
    /// Nothing where the count may be closed: something was counted, every difference has its reason, and no part falls below zero,
    /// as it would where more went out since the counting than was there.
    /// </summary>
    public static Problem? Refuse(IReadOnlyList<CountedPart> counted)
    {
        ArgumentNullException.ThrowIfNull(counted);
        if (counted.Count == 0)
        {
            return Problem.Conflict("nothing-counted", "Nothing is counted yet: count something, or give the count up.");
        }

        var faults = new List<FieldFault>();
        foreach (var part in counted)
        {
            if (part.NeedsReason)
            {
                faults.Add(new FieldFault($"lines.{part.Part.Code}",
                    $"{part.Name}: {part.Part.Unit.Say(part.Line.Expected)} by the books, {part.Part.Unit.Say(part.Line.Counted)} counted, and nobody said why."));
            }
            else if (part.After < 0)
            {
                faults.Add(new FieldFault($"lines.{part.Part.Code}",
                    $"{part.Name}: {part.Part.Unit.Say(-part.Difference)} fewer than the books were counted, but since then only {part.Part.Unit.Say(part.OnHand)} are left; count it again."));
            }
        }

        return faults.Count == 0
            ? null
            : Problem.Conflict("count-not-ready", string.Join(" ", faults.Select(f => f.Sentence))) with { Faults = faults };
    }
}
