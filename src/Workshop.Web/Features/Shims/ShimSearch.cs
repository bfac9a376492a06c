using System.Globalization;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Web.Features.Shims;

/// <summary>
/// What is typed or scanned to find shims in a box: a thickness ("2,45"), a compartment ("C4"), or the code of a label, part
/// code and thickness with a stroke between ("F89-050/2.450").
/// </summary>
public sealed record ShimSearch(string? PartCode, ShimThickness? Thickness, string? Address)
{
    /// <summary>What a label of this size says.</summary>
    public static string LabelOf(string partCode, ShimThickness thickness) =>
        string.Create(CultureInfo.InvariantCulture, $"{partCode}/{thickness.Millimetres:0.000}");

    public static ShimSearch Read(string? typed)
    {
        var text = typed?.Trim() ?? "";
        var stroke = text.LastIndexOf('/');
        var (code, rest) = stroke < 0 ? (null, text) : (text[..stroke], text[(stroke + 1)..]);
        return Thick(rest) is { } thickness
            ? new ShimSearch(code, thickness, null)
            : new ShimSearch(code, null, rest.Length == 0 ? null : rest);
    }

    /// <summary>The sizes that are meant: what lies in the compartment, or no more than half a step away.</summary>
    public IReadOnlyList<GetShimBox.Size> In(GetShimBox.Answer box)
    {
        ArgumentNullException.ThrowIfNull(box);
        var compartment = MapOf(box).At(Address)?.Address;
        return [.. box.Sizes.Where(s => Thickness is { } mm
            ? decimal.Abs(s.ThicknessMm - mm) <= box.StepMm / 2
            : compartment is not null && s.Compartment == compartment)];
    }

    /// <summary>The compartments that are meant, whether anything lies in them or not.</summary>
    public IReadOnlySet<string> Compartments(GetShimBox.Answer box)
    {
        ArgumentNullException.ThrowIfNull(box);
        var map = MapOf(box);
        var meant = Thickness is { } mm ? map.For(mm) : map.At(Address);
        return In(box).Select(s => s.Compartment).Append(meant?.Address).OfType<string>().ToHashSet(StringComparer.Ordinal);
    }

    private static BoxMap MapOf(GetShimBox.Answer box) => new(box.SmallestMm, box.LargestMm, box.StepMm, box.Columns);

    private static ShimThickness? Thick(string text) =>
        decimal.TryParse(text.Replace(',', '.').Replace("mm", "", StringComparison.OrdinalIgnoreCase).Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm)
        && mm >= ShimThickness.SmallestMm && mm <= ShimThickness.LargestMm && decimal.Round(mm, ShimThickness.DecimalsMm) == mm
            ? ShimThickness.FromMillimetres(mm)
            : null;
}
