using System.Globalization;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Stores;

/// <summary>What may be taken into the stores.</summary>
public static class ReceiptRules
{
    /// <summary>Shims of one size in one receipt: each gets a row of its own.</summary>
    public const int MostShims = 500;

    /// <summary>
    /// Nothing when the quantity suits the part: pieces are whole, and a thickness tells shims apart, so shims have one and
    /// other parts have none.
    /// </summary>
    public static Problem? Refuse(Part part, decimal quantity, decimal? thicknessMm)
    {
        ArgumentNullException.ThrowIfNull(part);
        var faults = new List<FieldFault>();
        if (part.Discontinued)
        {
            faults.Add(new FieldFault("partCode", $"partCode is \"{part.Code}\", which is discontinued; nothing is taken in of it."));
        }

        if (part.Unit == PartUnit.Piece && quantity != decimal.Truncate(quantity))
        {
            faults.Add(new FieldFault("quantity", Text($"quantity is {quantity}: {part.Name} comes in whole pieces.")));
        }

        if (part.Kind == PartKind.Shim && thicknessMm is null)
        {
            faults.Add(new FieldFault("thicknessMm", $"thicknessMm is empty: {part.Name} is kept by thickness; give what the micrometer reads."));
        }

        if (part.Kind != PartKind.Shim && thicknessMm is not null)
        {
            faults.Add(new FieldFault("thicknessMm", Text($"thicknessMm is {thicknessMm}, but {part.Name} is no shim; leave it empty.")));
        }

        if (part.Kind == PartKind.Shim && quantity > MostShims)
        {
            faults.Add(new FieldFault("quantity", Text($"quantity is {quantity}: at most {MostShims} shims of one size come in at once.")));
        }

        return faults.Count > 0 ? Problem.Impossible("receipt-unfit", faults) : null;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
