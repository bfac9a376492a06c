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

    /// <summary>"3", "2,500 ml".</summary>
    public static string Say(this PartUnit unit, decimal quantity) => unit == PartUnit.Millilitre
        ? string.Create(CultureInfo.InvariantCulture, $"{quantity:#,0.####} ml")
        : quantity.ToString("#,0.####", CultureInfo.InvariantCulture);
}
