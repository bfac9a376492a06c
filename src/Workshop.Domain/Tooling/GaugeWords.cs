using Workshop.Domain.Statistics.Gauges;

namespace Workshop.Domain.Tooling;

/// <summary>How studies are said on a page.</summary>
public static class GaugeWords
{
    public static string Spoken(this GaugeDesign design) => design switch
    {
        GaugeDesign.Crossed => "crossed",
        GaugeDesign.Nested => "nested",
        _ => throw new ArgumentOutOfRangeException(nameof(design), design, null),
    };

    /// <summary>Whose parts are measured.</summary>
    public static string Meaning(this GaugeDesign design) => design switch
    {
        GaugeDesign.Crossed => "everybody measures the same parts",
        GaugeDesign.Nested => "everybody measures parts of their own",
        _ => throw new ArgumentOutOfRangeException(nameof(design), design, null),
    };
}
