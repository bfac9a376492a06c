namespace Workshop.Domain.Estimates;

/// <summary>A line that the owner agreed to, of the visit or of a finding.</summary>
/// <param name="PartCode">Of a part, also of one that a person added.</param>
public sealed record AgreedLine(
    string Source, string Text, EstimateCharge Charge, string? Option, string? PartCode, PricedQuantity Priced, bool Dropped)
{
    /// <summary>How the source of a line begins that a person typed.</summary>
    public const string Typed = "other:";

    public bool IsTyped => Source.StartsWith(Typed, StringComparison.Ordinal);

    /// <summary>What it is charged for, whoever wrote the line: a part is a part.</summary>
    public string Subject => PartCode is null ? Source : $"part:{PartCode}";
}

/// <summary>Something that changed since the owner agreed.</summary>
/// <param name="Text">What it is.</param>
/// <param name="Net">How much more it makes, before tax; less where negative. Nothing where no price is known.</param>
public sealed record SumChange(string Text, decimal? Net);

/// <summary>What was agreed, and what it would now be.</summary>
/// <param name="Agreed">The sum of all that was agreed.</param>
/// <param name="Now">With what the card now says, at the agreed prices where there are any.</param>
/// <param name="Changes">What makes the difference.</param>
public sealed record AgreedSum(EstimateSums Agreed, EstimateSums Now, IReadOnlyList<SumChange> Changes)
{
    public bool IsAsAgreed => Changes.Count == 0;

    /// <summary>
    /// Compares what was agreed with what the visit now comes to. An agreed price holds: what is in both costs what was agreed,
    /// more of it costs the agreed price, what came since costs today's, and what a person dropped or typed stays so.
    /// </summary>
    /// <param name="agreed">The lines of the visit's agreed estimate and of agreed findings.</param>
    /// <param name="now">What the card's items come to today; options and what is charged if used do not count.</param>
    public static AgreedSum Of(IReadOnlyList<AgreedLine> agreed, IReadOnlyList<ProposedLine> now)
    {
        ArgumentNullException.ThrowIfNull(agreed);
        ArgumentNullException.ThrowIfNull(now);
        var charged = agreed.Where(l => l is { Charge: EstimateCharge.Always, Dropped: false, Option: null }).ToList();
        var dropped = agreed.Where(l => l is { Charge: EstimateCharge.Always, Dropped: true, Option: null })
            .Select(l => l.Source).ToHashSet(StringComparer.Ordinal);
        var typed = charged.Where(l => l.IsTyped).Select(l => l.Priced);
        var before = charged.Where(l => !l.IsTyped).ToLookup(l => l.Source, StringComparer.Ordinal);
        var present = now.Where(l => l is { Charge: EstimateCharge.Always, Option: null }).ToDictionary(l => l.Source, StringComparer.Ordinal);

        var (lines, changes) = (typed.ToList(), new List<SumChange>());
        foreach (var source in before.Select(g => g.Key).Union(present.Keys).Order(StringComparer.Ordinal))
        {
            var was = before[source].ToList();
            var line = present.GetValueOrDefault(source);
            var (more, text) = ((line?.Quantity ?? 0) - was.Sum(l => l.Priced.Quantity), line?.Text ?? was[0].Text);
            lines.AddRange(was.Select(l => l.Priced));
            if (more == 0 || (was.Count == 0 && dropped.Contains(source)))
            {
                continue;
            }

            // An agreed price holds for more of the same, too; the newest of several.
            var extra = was.Count > 0 ? was[^1].Priced with { Quantity = more } : line!.Priced;
            if (extra is not null)
            {
                lines.Add(extra);
            }

            changes.Add(new SumChange(text, extra?.Net));
        }

        return new AgreedSum(EstimateSums.Of(charged.Select(l => l.Priced)), EstimateSums.Of(lines), changes);
    }
}
