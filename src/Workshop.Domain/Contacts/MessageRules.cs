using System.Text;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Contacts;

/// <summary>What may be written to somebody: a header is one line, and an address is one address (RFC 5322, RFC 5321).</summary>
public static class MessageRules
{
    public const int LongestSubject = 200;
    public const int LongestBody = 10_000;
    public const int LongestName = 120;

    /// <summary>RFC 5321, 4.5.3.1.1 and 4.5.3.1.3: octets before the at sign, and in all.</summary>
    private const int LongestLocalPart = 64;

    private const int LongestAddress = 254;
    private const int LongestLabel = 63;

    /// <summary>RFC 5322, 3.2.3: what an atom may hold beside letters and digits.</summary>
    private const string AtomSigns = "!#$%&'*+-/=?^_`{|}~";

    /// <summary>Line breaks and other control characters become blanks; nothing else changes.</summary>
    public static string OneLine(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Any(Breaks) ? new StringBuilder(text.Length).AppendJoin("", text.Select(c => Breaks(c) ? ' ' : c)).ToString() : text;
    }

    /// <summary>Whether a text stays on the line of its header, whatever reads it.</summary>
    public static bool IsOneLine(string text) => !text.Any(Breaks);

    /// <summary>Whether a text that may have lines holds other control characters than these.</summary>
    public static bool IsPlain(string text) => !text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'));

    /// <summary>
    /// One address that a message can be sent to: dot-atom, at sign, host name, in ASCII (RFC 5321, 4.1.2, without quoted local
    /// parts and address literals). A host name with other letters is given in its ASCII form (RFC 5890).
    /// </summary>
    /// <param name="field">What a refusal names.</param>
    /// <param name="address">As it stands with the person.</param>
    public static Outcome<string> Address(string field, string? address)
    {
        if (string.IsNullOrEmpty(address))
        {
            return Problem.Impossible("address-missing", field, $"{field} is empty: no e-mail address stands with the owner; enter it there first.");
        }

        var at = address.IndexOf('@', StringComparison.Ordinal);
        return at > 0 && at <= LongestLocalPart && address.Length <= LongestAddress
            && IsDotAtom(address[..at]) && IsHost(address[(at + 1)..])
            ? address
            : Problem.Impossible("address-form", field,
                $"{field} is \"{OneLine(address)}\": one address such as name@example.org is allowed, in ASCII, without blanks, names or brackets.");
    }

    private static bool Breaks(char c) => char.IsControl(c) || c is '\u2028' or '\u2029';

    private static bool IsDotAtom(string text) =>
        text.Split('.').All(atom => atom.Length > 0 && atom.All(c => char.IsAsciiLetterOrDigit(c) || AtomSigns.Contains(c, StringComparison.Ordinal)));

    private static bool IsHost(string text)
    {
        var labels = text.Split('.');
        return labels.Length >= 2 && labels.All(label =>
            label.Length is > 0 and <= LongestLabel && label[0] != '-' && label[^1] != '-' && label.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'));
    }
}
