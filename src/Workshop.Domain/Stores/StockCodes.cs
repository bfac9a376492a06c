namespace Workshop.Domain.Stores;

/// <summary>
/// Codes that are typed or scanned: parts, places and packages. A scanner types into one field, so a code may not be taken for a
/// quantity.
/// </summary>
public static class StockCodes
{
    /// <summary>Figures of a quantity before its decimal sign; the shortest numbers on packages (EAN-8, ISO/IEC 15420) have eight.</summary>
    public const int LongestQuantity = 7;

    /// <summary>Of parts and places: what a label and an address can bear.</summary>
    public const string Form = "letters, figures, hyphens, dots and underscores, with a letter among them";

    // Stands in addresses where a code does.
    private const string Reserved = "new";

    /// <summary>Whether a part or a place may have it.</summary>
    public static bool IsCode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '_') && text.Any(char.IsAsciiLetter)
            && !string.Equals(text, Reserved, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Whether a package may bear it: no blanks at its ends, nothing that cannot be printed, and no quantity.</summary>
    public static bool IsScanCode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && text == text.Trim() && !text.Any(char.IsControl) && !LooksLikeQuantity(text);
    }

    /// <summary>Whether it is read as a quantity: up to seven figures, and decimals.</summary>
    public static bool LooksLikeQuantity(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split('.', ',');
        return parts.Length <= 2 && parts.All(p => p.Length > 0 && p.All(char.IsAsciiDigit)) && parts[0].Length <= LongestQuantity;
    }
}
