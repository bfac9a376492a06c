using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Estimates;

/// <summary>What a person does to a proposed line.</summary>
/// <param name="Key">Which one.</param>
/// <param name="Dropped">It is not to be charged.</param>
/// <param name="UnitPrice">Another price, or one where none is known.</param>
/// <param name="Reason">Why the price is another; needed where one was proposed.</param>
public sealed record LineEdit(string Key, bool Dropped, decimal? UnitPrice, string? Reason);

/// <summary>A line that a person adds: carriage, work that the engine model does not list.</summary>
/// <param name="Minutes">Labour, at <paramref name="UnitPrice"/> an hour; else <paramref name="Quantity"/> counts pieces.</param>
/// <param name="TaxCode">Absent: the workshop's usual rate.</param>
public sealed record OtherLine(string Text, decimal? Quantity, int? Minutes, decimal? UnitPrice, string? PartCode, string? TaxCode);

/// <summary>A line as it goes into an estimate.</summary>
/// <param name="ProposedUnitPrice">What was proposed, where the price is another.</param>
public sealed record DraftLine(
    string Source, EstimateLineKind Kind, EstimateCharge Charge, string? Option, string Text, string? PartCode,
    PricedQuantity Priced, decimal? ProposedUnitPrice, string? Reason, bool Dropped)
{
    /// <summary>Counts towards the sum of the estimate.</summary>
    public bool IsCharged => !Dropped && Charge == EstimateCharge.Always && Option is null;
}

/// <summary>Makes the lines of an estimate out of what is proposed and what a person did to it.</summary>
public static class EstimateDraft
{
    /// <summary>The lines; refused with every line that has no price yet, and with what cannot be done to one.</summary>
    /// <param name="proposed">What the engine model and the prices say.</param>
    /// <param name="edits">By key; a line that none names stays as proposed.</param>
    /// <param name="others">Typed by a person; nothing in the place of a row that was left empty.</param>
    /// <param name="prices">Of the day.</param>
    public static Outcome<IReadOnlyList<DraftLine>> Of(
        IReadOnlyList<ProposedLine> proposed, IReadOnlyList<LineEdit> edits, IReadOnlyList<OtherLine?> others, PriceBook prices)
    {
        ArgumentNullException.ThrowIfNull(proposed);
        ArgumentNullException.ThrowIfNull(edits);
        ArgumentNullException.ThrowIfNull(others);
        ArgumentNullException.ThrowIfNull(prices);
        var faults = new List<FieldFault>();
        var byKey = new Dictionary<string, (LineEdit Edit, string Field)>(StringComparer.Ordinal);
        for (var i = 0; i < edits.Count; i++)
        {
            var field = $"lines[{i}]";
            if (proposed.All(l => l.Key != edits[i].Key))
            {
                faults.Add(new FieldFault($"{field}.key", $"{field}.key is \"{edits[i].Key}\": the visit has no such line any more; look at the proposal again."));
            }
            else if (!byKey.TryAdd(edits[i].Key, (edits[i], field)))
            {
                faults.Add(new FieldFault($"{field}.key", $"{field}.key is \"{edits[i].Key}\", which stands in the list twice."));
            }
        }

        var lines = new List<DraftLine>();
        foreach (var line in proposed)
        {
            var (edit, field) = byKey.TryGetValue(line.Key, out var found) ? found : (new LineEdit(line.Key, false, null, null), "lines");
            if (Draft(line, edit, field, prices, faults) is { } made)
            {
                lines.Add(made);
            }
        }

        lines.AddRange(others.Select((other, i) => other is null ? null : Draft(other, i, prices, faults)).OfType<DraftLine>());
        if (faults.Count > 0)
        {
            return Problem.Impossible("estimate-incomplete", faults);
        }

        return lines.Exists(l => !l.Dropped)
            ? lines
            : Problem.Impossible("estimate-empty", "lines", "lines leaves nothing to charge: an estimate has at least one line.");
    }

    private static DraftLine? Draft(ProposedLine line, LineEdit edit, string field, PriceBook prices, List<FieldFault> faults)
    {
        // What is dropped needs no price, and may have none.
        if (edit.Dropped)
        {
            return Made(line, line.UnitPrice ?? 0, line.Tax ?? prices.UsualTax, null, edit.Reason, dropped: true);
        }

        if (line.Tax is null)
        {
            faults.Add(new FieldFault(field, $"{line.Missing} Set it with the prices, or drop the line."));
            return null;
        }

        var price = edit.UnitPrice ?? line.UnitPrice;
        if (price is null)
        {
            faults.Add(new FieldFault($"{field}.unitPrice", $"{line.Missing} Type one, or drop the line."));
            return null;
        }

        var changed = line.UnitPrice is { } was && was != price;
        if (changed && string.IsNullOrWhiteSpace(edit.Reason))
        {
            faults.Add(new FieldFault($"{field}.reason",
                $"{field}.reason is empty: {line.Text} is at {Money.SayPrice(price.Value)} instead of {Money.SayPrice(line.UnitPrice!.Value)} {line.Unit.PerWhat()}; say why."));
            return null;
        }

        return Made(line, price.Value, line.Tax, changed ? line.UnitPrice : null, changed ? edit.Reason : null, dropped: false);
    }

    private static DraftLine Made(ProposedLine line, decimal price, TaxRate? tax, decimal? proposed, string? reason, bool dropped) => new(
        line.Source, line.Kind, line.Charge, line.Option, line.Text, line.PartCode,
        new PricedQuantity(line.Quantity, line.Unit, price, line.UnitCost, tax?.Code ?? "", tax?.Percent ?? 0), proposed, reason, dropped);

    private static DraftLine? Draft(OtherLine other, int index, PriceBook prices, List<FieldFault> faults)
    {
        var field = $"others[{index}]";
        var tax = other.TaxCode is { } code ? prices.Tax.Find(code) : prices.UsualTax;
        if (tax is null)
        {
            faults.Add(new FieldFault($"{field}.taxCode", other.TaxCode is null
                ? $"{field}.taxCode is empty, and the workshop's usual tax rate is not set: set it with the prices."
                : $"{field}.taxCode is \"{other.TaxCode}\": {string.Join(", ", prices.Tax.Rates.Select(r => r.Code))} are allowed."));
            return null;
        }

        var (kind, quantity, unit) = other.Minutes is { } minutes
            ? (EstimateLineKind.Labour, minutes, EstimateUnit.Minute)
            : other.PartCode is { } part
                ? (EstimateLineKind.Part, other.Quantity ?? 1, prices.PartOf(part).CountedIn)
                : (EstimateLineKind.Other, other.Quantity ?? 1, EstimateUnit.Piece);
        var price = other.UnitPrice ?? kind switch
        {
            EstimateLineKind.Labour => prices.LabourPerHour,
            EstimateLineKind.Part => prices.PartOf(other.PartCode!).NetPrice,
            _ => null,
        };
        if (price is null)
        {
            faults.Add(new FieldFault($"{field}.unitPrice", $"No price is known of {other.Text}: type one."));
            return null;
        }

        return new DraftLine($"{AgreedLine.Typed}{index + 1}", kind, EstimateCharge.Always, null, other.Text, other.PartCode,
            new PricedQuantity(quantity, unit, price.Value, kind == EstimateLineKind.Part ? prices.PartOf(other.PartCode!).Cost : null, tax.Code, tax.Percent),
            null, null, Dropped: false);
    }
}
