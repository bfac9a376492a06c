using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Workshop.Web.Tests.Calendars;

/// <summary>
/// Reads an iCalendar stream by the letter of RFC 5545 and refuses whatever its grammar does not allow: written from the RFC (sections
/// 3.1, 3.3.5, 3.3.11, 3.6), as no second library for .NET reads the format; it shares no code with the one that writes it.
/// </summary>
internal sealed partial class StrictCalendar
{
    private const int LongestLineOctets = 75;

    private StrictCalendar(IReadOnlyList<Property> properties, IReadOnlyList<Event> events) =>
        (Properties, Events) = (properties, events);

    public IReadOnlyList<Property> Properties { get; }

    public IReadOnlyList<Event> Events { get; }

    public sealed record Property(string Name, string Parameters, string Value)
    {
        /// <summary>A TEXT value (3.3.11): only backslash, semicolon, comma and line break are escaped, and all of them are.</summary>
        public string Text
        {
            get
            {
                var text = new StringBuilder();
                for (var at = 0; at < Value.Length; at++)
                {
                    if (Value[at] is ';' or ',')
                    {
                        throw new FormatException($"{Name} holds a bare {Value[at]}.");
                    }

                    if (Value[at] != '\\')
                    {
                        text.Append(Value[at]);
                        continue;
                    }

                    at++;
                    text.Append(at < Value.Length && @"\;,".Contains(Value[at], StringComparison.Ordinal) ? Value[at]
                        : at < Value.Length && Value[at] is 'n' or 'N' ? '\n'
                        : throw new FormatException($"{Name} escapes what is not to be escaped."));
                }

                return text.ToString();
            }
        }

        /// <summary>A DATE-TIME in UTC (3.3.5, form 2).</summary>
        public DateTime Utc => DateTime.ParseExact(
            Value, "yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal);
    }

    public sealed record Event(IReadOnlyList<Property> Properties)
    {
        public Property One(string name) => Properties.Single(p => p.Name == name);

        public string Uid => One("UID").Text;

        public int Sequence => int.Parse(One("SEQUENCE").Value, NumberStyles.None, CultureInfo.InvariantCulture);

        public string Status => One("STATUS").Value;
    }

    public static StrictCalendar Read(byte[] bytes)
    {
        var lines = Lines(bytes);
        var properties = Unfold(lines).Select(ReadLine).ToList();
        if (properties[0] is not { Name: "BEGIN", Value: "VCALENDAR" } || properties[^1] is not { Name: "END", Value: "VCALENDAR" })
        {
            throw new FormatException("The stream is no single VCALENDAR.");
        }

        var (own, events) = (new List<Property>(), new List<Event>());
        List<Property>? inEvent = null;
        foreach (var property in properties.Skip(1).SkipLast(1))
        {
            switch (property)
            {
                case { Name: "BEGIN", Value: "VEVENT" } when inEvent is null:
                    inEvent = [];
                    break;
                case { Name: "END", Value: "VEVENT" } when inEvent is not null:
                    events.Add(Checked(new Event(inEvent)));
                    inEvent = null;
                    break;
                case { Name: "BEGIN" or "END" }:
                    throw new FormatException($"{property.Name}:{property.Value} where it may not stand.");
                default:
                    (inEvent ?? own).Add(property);
                    break;
            }
        }

        return own.Count(p => p is { Name: "VERSION", Value: "2.0" }) == 1 && own.Count(p => p.Name == "PRODID") == 1 && inEvent is null
            ? new StrictCalendar(own, events)
            : throw new FormatException("VERSION and PRODID stand exactly once, and every event ends.");
    }

    private static List<string> Lines(byte[] bytes)
    {
        var lines = new List<string>();
        var from = 0;
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
        for (var at = 0; at < bytes.Length; at++)
        {
            if (bytes[at] == '\n' && (at == 0 || bytes[at - 1] != '\r'))
            {
                throw new FormatException("A line ends without CR.");
            }

            if (bytes[at] != '\r')
            {
                continue;
            }

            if (at + 1 >= bytes.Length || bytes[at + 1] != '\n')
            {
                throw new FormatException("CR without LF.");
            }

            if (at - from > LongestLineOctets)
            {
                throw new FormatException($"A line of {at - from} octets.");
            }

            // A fold in the middle of a letter of several octets would throw here.
            lines.Add(utf8.GetString(bytes, from, at - from));
            from = at + 2;
        }

        return from == bytes.Length ? lines : throw new FormatException("The last line does not end.");
    }

    private static List<string> Unfold(List<string> lines)
    {
        var whole = new List<string>();
        foreach (var line in lines)
        {
            if (line.Length > 0 && line[0] is ' ' or '\t')
            {
                whole[^1] += line[1..];
            }
            else
            {
                whole.Add(line);
            }
        }

        return whole;
    }

    private static Property ReadLine(string line)
    {
        var match = ContentLine().Match(line);
        return match.Success
            ? new Property(match.Groups["name"].Value, match.Groups["parameters"].Value, match.Groups["value"].Value)
            : throw new FormatException($"No content line: {line}");
    }

    private static Event Checked(Event read)
    {
        // Of what 3.6.1 lets stand once only, nothing stands twice.
        if (read.Properties.GroupBy(p => p.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            throw new FormatException($"{twice.Key} stands {twice.Count()} times.");
        }

        return read.One("DTSTAMP").Utc > DateTime.MinValue && read.One("DTSTART").Utc < read.One("DTEND").Utc
            && read.Status is "TENTATIVE" or "CONFIRMED" or "CANCELLED"
            ? read
            : throw new FormatException("An event ends before it starts, or has a state that no event has.");
    }

    // 3.1: contentline = name *(";" param) ":" value; no control characters but HTAB.
    [GeneratedRegex("""^(?<name>[A-Za-z0-9-]+)(?<parameters>(;[A-Za-z0-9-]+=("[^"\x00-\x08\x0A-\x1F\x7F]*"|[^";:,\x00-\x08\x0A-\x1F\x7F]*)(,("[^"\x00-\x08\x0A-\x1F\x7F]*"|[^";:,\x00-\x08\x0A-\x1F\x7F]*))*)*):(?<value>[^\x00-\x08\x0A-\x1F\x7F]*)$""", RegexOptions.ExplicitCapture)]
    private static partial Regex ContentLine();
}
