using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Stores;

/// <summary>What is asked for next.</summary>
public enum ScanStep
{
    Place,
    Part,
    Quantity,
    Lot,
    Expiry,

    /// <summary>All is said: it can be booked.</summary>
    Ready,
}

/// <summary>What a scanned text means in the stores.</summary>
public abstract record ScannedThing
{
    /// <summary>The code of a place.</summary>
    public sealed record OfPlace(string Code) : ScannedThing;

    /// <summary>The code of a part, or of a package of it.</summary>
    /// <param name="Package">What one such package holds, in the part's unit.</param>
    public sealed record OfPart(Part Part, decimal Package) : ScannedThing;

    public sealed record Unknown : ScannedThing;
}

/// <summary>
/// Goods in by a scanner that types into one field and sends it: place, part, quantity, and where the part does not keep for ever its
/// lot and last day. The place stays for what comes next.
/// </summary>
/// <param name="Quantity">In the part's unit; proposed from the package, and not said until <see cref="QuantitySaid"/>.</param>
public sealed record ScanLine(
    string? PlaceCode = null,
    string? PartCode = null,
    decimal? Quantity = null,
    bool QuantitySaid = false,
    string? LotCode = null,
    LocalDate? ExpiresOn = null,
    bool ExpirySaid = false)
{
    /// <param name="keepsFor">Months that the part keeps; absent of one that keeps for ever, or where no part is named yet.</param>
    public ScanStep Next(int? keepsFor) => this switch
    {
        { PlaceCode: null } => ScanStep.Place,
        { PartCode: null } => ScanStep.Part,
        { QuantitySaid: false } => ScanStep.Quantity,
        { LotCode: null } when keepsFor is not null => ScanStep.Lot,
        { ExpirySaid: false } when keepsFor is not null => ScanStep.Expiry,
        _ => ScanStep.Ready,
    };

    /// <summary>
    /// The line after one more scan. A place may be scanned at any time before a part; the same part once more is one more package; an
    /// empty scan takes what is proposed.
    /// </summary>
    /// <param name="text">As it was typed, without blanks at its ends.</param>
    /// <param name="thing">What it means as a code.</param>
    /// <param name="keepsFor">Of the part that the line names.</param>
    public Outcome<ScanLine> Read(string text, ScannedThing thing, int? keepsFor)
    {
        ArgumentNullException.ThrowIfNull(text);
        switch (Next(keepsFor), thing)
        {
            case (ScanStep.Place or ScanStep.Part, ScannedThing.OfPlace place):
                return this with { PlaceCode = place.Code };
            case (ScanStep.Place, _):
                return Fault(text, "scan a place first, such as its label says");
            case (ScanStep.Part, ScannedThing.OfPart { Part.Kind: PartKind.Shim }):
                return Fault(text, "a shim, which comes in by its measured thickness: use the form of goods in");
            case (ScanStep.Part, ScannedThing.OfPart part):
                return this with { PartCode = part.Part.Code, Quantity = part.Package };
            case (ScanStep.Part, _):
                return Fault(text, "no part, package or place has it: scan another, or enter it as a part first");
            case (ScanStep.Quantity, ScannedThing.OfPart part) when part.Part.Code == PartCode:
                return this with { Quantity = Quantity + part.Package };
            case (ScanStep.Quantity, _):
                return WithQuantity(text);
            case (ScanStep.Lot, ScannedThing.Unknown) when text.Length > 0:
                return this with { LotCode = text };
            case (ScanStep.Lot, _):
                return Fault(text, "give the lot as the maker marks it on the package");
            case (ScanStep.Expiry, _):
                return WithExpiry(text);
            default:
                return this;
        }
    }

    private Outcome<ScanLine> WithQuantity(string text)
    {
        if (text.Length == 0)
        {
            return this with { QuantitySaid = true };
        }

        return StockCodes.LooksLikeQuantity(text)
            && decimal.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var quantity) && quantity > 0
                ? this with { Quantity = quantity, QuantitySaid = true }
                : Fault(text, $"how many of {PartCode} came is open: give a number, scan the same package once more, or send the field empty for what is proposed");
    }

    private Outcome<ScanLine> WithExpiry(string text)
    {
        if (text.Length == 0)
        {
            return this with { ExpirySaid = true };
        }

        return LocalDatePattern.Iso.Parse(text).TryGetValue(default, out var day)
            ? this with { ExpiresOn = day, ExpirySaid = true }
            : Fault(text, "give the last day such as 2027-05-31, or send the field empty to reckon it from its shelf life");
    }

    private static Problem Fault(string text, string what) =>
        Problem.Impossible("scan-unfit", "scan", text.Length == 0 ? $"scan is empty: {what}." : $"scan is \"{text}\": {what}.");
}
