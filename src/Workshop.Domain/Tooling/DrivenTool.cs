using System.Globalization;
using System.Text.RegularExpressions;

namespace Workshop.Domain.Tooling;

/// <summary>
/// Whether a tool fits the head that another fits, told from what they are called: "10 mm ring" turns what "10 mm socket" turns,
/// since both go over an outer hexagon of that width. All else fits only what is called the same.
/// </summary>
public static partial class DrivenTool
{
    /// <summary>An adapter's tool fits a fastener for which <paramref name="asked"/> is stated.</summary>
    /// <param name="asked">The fastener's tool: "8 mm socket".</param>
    /// <param name="tool">The adapter's: "8 mm ring".</param>
    public static bool Fits(string asked, string tool)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(tool);
        return string.Equals(asked.Trim(), tool.Trim(), StringComparison.OrdinalIgnoreCase)
            || (OverHexagon(asked) is { } wanted && OverHexagon(tool) == wanted);
    }

    /// <summary>Width across flats in mm, where the words say that the tool goes over an outer hexagon.</summary>
    private static decimal? OverHexagon(string words) =>
        Form().Match(words) is { Success: true } match
        && decimal.TryParse(match.Groups["width"].Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var width)
            ? width
            : null;

    [GeneratedRegex(@"^\s*(?<width>[0-9]+([.,][0-9]+)?)\s*mm,?\s+(thin\s+|flat\s+|long\s+|deep\s+|offset\s+)*(socket|ring|open|crow)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Form();
}
