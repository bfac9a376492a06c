using System.Text;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Contacts;

/// <summary>What may stand in braces in a template.</summary>
public static class TemplateFields
{
    public const string Owner = "owner";
    public const string Registration = "registration";
    public const string Motorcycle = "motorcycle";
    public const string Items = "items";
    public const string Expected = "expected";
    public const string Workshop = "workshop";
    public const string Phone = "phone";

    /// <summary>Lines and sums of an estimate; nothing in a message that is about none.</summary>
    public const string Estimate = "estimate";

    /// <summary>The link to a service record; put in when the message goes into the outbox, nothing in a message that is about none.</summary>
    public const string Record = "record";

    /// <summary>In a body.</summary>
    public static readonly IReadOnlyList<string> OfBody = [Owner, Registration, Motorcycle, Items, Expected, Workshop, Phone, Estimate, Record];

    /// <summary>In a subject, which is one line: all but the items, the estimate and the record.</summary>
    public static readonly IReadOnlyList<string> OfSubject = [Owner, Registration, Motorcycle, Expected, Workshop, Phone];
}

/// <summary>
/// A template, read once: text, and between it the names of what is put in. <c>{owner}</c> is a placeholder, <c>{{</c> is one brace.
/// What is put in is never read again, so that no name can become a placeholder.
/// </summary>
public sealed class TemplateText
{
    private readonly (bool IsField, string Text)[] parts;

    private TemplateText((bool IsField, string Text)[] parts) => this.parts = parts;

    /// <summary>The placeholders that it names, each once, in order.</summary>
    public IReadOnlyList<string> Fields => [.. parts.Where(p => p.IsField).Select(p => p.Text).Distinct(StringComparer.Ordinal)];

    /// <summary>Reads a template.</summary>
    /// <param name="field">What a refusal names: "subject", "body".</param>
    /// <param name="text">As typed.</param>
    /// <param name="allowed">The placeholders that may stand in it.</param>
    /// <returns>The template; refused where a placeholder is unknown or never closed, named with what is allowed.</returns>
    public static Outcome<TemplateText> Read(string field, string text, IReadOnlyList<string> allowed)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(allowed);
        var (parts, literal) = (new List<(bool, string)>(), new StringBuilder());
        for (var at = 0; at < text.Length; at++)
        {
            if (text[at] != '{')
            {
                literal.Append(text[at]);
                continue;
            }

            if (at + 1 < text.Length && text[at + 1] == '{')
            {
                literal.Append('{');
                at++;
                continue;
            }

            var end = text.IndexOfAny(['}', '{', '\n'], at + 1);
            if (end < 0 || text[end] != '}')
            {
                var shown = text[at..(end < 0 ? text.Length : end)].TrimEnd();
                return Problem.Impossible("placeholder-unclosed", field,
                    $"{field} has \"{Short(shown)}\", a placeholder that is never closed: close it with }}, or write {{{{ for a brace; {Allowed(allowed)}.");
            }

            var name = text[(at + 1)..end];
            if (!allowed.Contains(name, StringComparer.Ordinal))
            {
                return Problem.Impossible("placeholder-unknown", field,
                    $"{field} has {{{Short(name)}}}, which is no placeholder here: {Allowed(allowed)}.");
            }

            Flush();
            parts.Add((true, name));
            at = end;
        }

        Flush();
        return new TemplateText(parts.ToArray());

        void Flush()
        {
            if (literal.Length > 0)
            {
                parts.Add((false, literal.ToString()));
                literal.Clear();
            }
        }
    }

    /// <summary>The text with everything put in.</summary>
    /// <param name="values">By placeholder; each that it names must be there.</param>
    /// <exception cref="KeyNotFoundException">A value is missing.</exception>
    public string Fill(IReadOnlyDictionary<string, string> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return string.Concat(parts.Select(p => p.IsField ? values[p.Text] : p.Text));
    }

    /// <summary>The same on one line: what is put in gives up its line breaks and other control characters for blanks.</summary>
    /// <param name="values">By placeholder; each that it names must be there.</param>
    public string FillLine(IReadOnlyDictionary<string, string> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return Fill(values.ToDictionary(v => v.Key, v => MessageRules.OneLine(v.Value), StringComparer.Ordinal));
    }

    private static string Allowed(IReadOnlyList<string> allowed) =>
        $"{string.Join(", ", allowed.Select(name => $"{{{name}}}"))} are allowed";

    private static string Short(string text) => text.Length <= 40 ? text : $"{text[..40]}...";
}
