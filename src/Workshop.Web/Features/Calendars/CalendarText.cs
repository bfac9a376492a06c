using System.Globalization;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Calendars;

/// <summary>
/// A calendar as text (RFC 5545), with its name and how often to look again (RFC 7986). Times are in UTC, so a phone shows them by
/// its own clock and no time zone has to be described.
/// </summary>
internal static class CalendarText
{
    public const string ContentType = "text/calendar; charset=utf-8";

    private const string Product = "-//Workshop//Visits//EN";
    private const string LookAgainAfter = "PT15M";

    public static string Write(FeedContent content)
    {
        var calendar = new Ical.Net.Calendar { ProductId = Product };
        calendar.AddProperty("NAME", $"{content.ResourceName}, {content.Workshop}");
        var refresh = new Ical.Net.CalendarProperty("REFRESH-INTERVAL", LookAgainAfter);
        refresh.AddParameter("VALUE", "DURATION");
        calendar.AddProperty(refresh);
        foreach (var entry in content.Entries)
        {
            calendar.Events.Add(Event(content, entry));
        }

        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    private static Ical.Net.CalendarComponents.CalendarEvent Event(FeedContent content, FeedContent.Entry entry)
    {
        var of = entry.Event;
        return new Ical.Net.CalendarComponents.CalendarEvent
        {
            Uid = $"{of.Key}-{content.ResourceId:n}@workshop".ToLowerInvariant(),
            Sequence = of.Sequence,
            DtStamp = Utc(of.ChangedAt),
            LastModified = Utc(of.ChangedAt),
            Start = Utc(of.Span.Start),
            End = Utc(of.Span.End),
            Status = of.Cancelled ? Ical.Net.EventStatus.Cancelled : Ical.Net.EventStatus.Confirmed,
            Summary = $"{Capital(of.Phase.Spoken())}: {entry.Registration}, job card {of.JobCardNumber.ToString(CultureInfo.InvariantCulture)}",
            Description = string.Join('\n', entry.Items),
            Location = entry.With,
        };
    }

    private static string Capital(string words) => $"{char.ToUpperInvariant(words[0])}{words[1..]}";

    private static CalDateTime Utc(Instant instant) => new(instant.ToDateTimeUtc());
}
