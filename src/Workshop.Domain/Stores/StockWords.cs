using System.Globalization;

namespace Workshop.Domain.Stores;

/// <summary>How parts and quantities are said on a page.</summary>
public static class StockWords
{
    public static string Spoken(this PartKind kind) => kind switch
    {
        PartKind.General => "part",
        PartKind.SealingRing => "sealing ring",
        PartKind.ORing => "O-ring",
        PartKind.Gasket => "gasket",
        PartKind.Fluid => "fluid",
        PartKind.Sealant => "sealant",
        PartKind.Shim => "shim",
        PartKind.FastenerUsedOnce => "fastener used once",
        PartKind.SparkPlug => "spark plug",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public static string Spoken(this StockCondition condition) => condition switch
    {
        StockCondition.New => "new",
        StockCondition.Used => "used",
        _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, null),
    };

    public static string Spoken(this PartUnit unit) => unit switch
    {
        PartUnit.Piece => "piece",
        PartUnit.Millilitre => "millilitre",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, null),
    };

    public static string Spoken(this MovementKind kind) => kind switch
    {
        MovementKind.Received => "received",
        MovementKind.Reserved => "reserved",
        MovementKind.Released => "let go",
        MovementKind.Issued => "issued",
        MovementKind.Returned => "returned",
        MovementKind.Counted => "counted",
        MovementKind.Scrapped => "scrapped",
        MovementKind.CameOut => "came out",
        MovementKind.Moved => "moved",
        MovementKind.Merged => "merged",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public static string Spoken(this CountDifferenceReason reason) => reason switch
    {
        CountDifferenceReason.TakenWithoutIssue => "taken and not booked",
        CountDifferenceReason.ReceivedWithoutEntry => "came in and not booked",
        CountDifferenceReason.PutInAnotherPlace => "lies in another place",
        CountDifferenceReason.CountedWrongBefore => "counted wrong before",
        CountDifferenceReason.DamagedOrLost => "damaged or lost",
        CountDifferenceReason.Unknown => "unknown",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
    };

    /// <summary>"+3", "−2,500 ml"; a hyphen-minus would break apart in a narrow column.</summary>
    public static string SayChange(this PartUnit unit, decimal change) =>
        change == 0 ? "" : (change > 0 ? "+" : "\u2212") + unit.Say(Math.Abs(change));

    /// <summary>"3", "2,500 ml".</summary>
    public static string Say(this PartUnit unit, decimal quantity) => unit == PartUnit.Millilitre
        ? string.Create(CultureInfo.InvariantCulture, $"{quantity:#,0.####} ml")
        : quantity.ToString("#,0.####", CultureInfo.InvariantCulture);
}
