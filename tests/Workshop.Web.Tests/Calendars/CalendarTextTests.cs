using System.Text;
using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Features.Calendars;
using Xunit;

namespace Workshop.Web.Tests.Calendars;

/// <summary>What is written is read back by a reader that knows only the RFC.</summary>
public sealed class CalendarTextTests
{
    private static readonly Guid Bay = new("0198c0de-0000-7000-8000-000000000001");

    [Fact]
    public void Lines_fold_at_75_octets_and_never_inside_a_letter()
    {
        var name = string.Concat(Enumerable.Repeat("Ölfilter wächst über Größe 𝒳 hinaus, ", 9));

        var bytes = Encoding.UTF8.GetBytes(CalendarText.Write(Content([name])));

        var read = StrictCalendar.Read(bytes);
        Assert.Contains("\r\n ", Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
        Assert.Equal(name, Assert.Single(read.Events).One("DESCRIPTION").Text);
    }

    [Fact]
    public void Commas_semicolons_backslashes_and_line_breaks_come_back_as_they_were()
    {
        const string name = @"Oil, filter; ring \ 14 x 18";

        var read = StrictCalendar.Read(Encoding.UTF8.GetBytes(CalendarText.Write(Content([name, "Chain"]))));

        var one = Assert.Single(read.Events);
        Assert.Equal($"{name}\nChain", one.One("DESCRIPTION").Text);
        Assert.Equal("Bay 1; north, lift", one.One("LOCATION").Text);
        Assert.Equal("Work: AB, C; 1, job card 7", one.One("SUMMARY").Text);
    }

    [Fact]
    public void Any_words_come_back_as_they_were() =>
        Gen.String[Gen.Char[" aäß€語,;\\:\"'-=µ"], 1, 200].Sample(
            name => Assert.Equal(
                name,
                StrictCalendar.Read(Encoding.UTF8.GetBytes(CalendarText.Write(Content([$"x{name}x"])))).Events[0].One("DESCRIPTION").Text[1..^1]),
            iter: 300, seed: "0000KPyDj2x3");

    [Fact]
    public void Times_are_in_UTC_and_state_and_sequence_are_said()
    {
        var read = StrictCalendar.Read(Encoding.UTF8.GetBytes(CalendarText.Write(Content(["Chain"], cancelled: true))));

        var one = Assert.Single(read.Events);
        Assert.Equal(("20260302T080000Z", "20260302T093000Z"), (one.One("DTSTART").Value, one.One("DTEND").Value));
        Assert.Equal(("CANCELLED", 3), (one.Status, one.Sequence));
        Assert.Equal($"7-work-0-{Bay:n}@workshop", one.Uid);
        Assert.Equal("20260301T120000Z", one.One("DTSTAMP").Value);
        Assert.Equal("20260301T120000Z", one.One("LAST-MODIFIED").Value);
        Assert.Contains(read.Properties, p => p is { Name: "REFRESH-INTERVAL", Parameters: ";VALUE=DURATION", Value: "PT15M" });
    }

    [Theory]
    [InlineData("BEGIN:VCALENDAR\nEND:VCALENDAR\n")]
    [InlineData("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nEND:VCALENDAR")]
    [InlineData("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nBEGIN:VEVENT\r\nEND:VCALENDAR\r\n")]
    [InlineData("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nNAME:a line that is longer than the seventy-five octets that a line may have at the most\r\nEND:VCALENDAR\r\n")]
    [InlineData("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nno colon here\r\nEND:VCALENDAR\r\n")]
    public void The_reader_refuses_what_the_RFC_does(string text) =>
        Assert.ThrowsAny<FormatException>(() => StrictCalendar.Read(Encoding.UTF8.GetBytes(text)));

    private static FeedContent Content(IReadOnlyList<string> items, bool cancelled = false) => new(
        Bay, "Bay 1", "Test workshop",
        [
            new FeedContent.Entry(
                new CalendarEvent(
                    "7-Work-0", 7, VisitPhase.Work,
                    new Interval(Instant.FromUtc(2026, 3, 2, 8, 0), Instant.FromUtc(2026, 3, 2, 9, 30)), 3, cancelled, Instant.FromUtc(2026, 3, 1, 12, 0)),
                "AB, C; 1", items, "Bay 1; north, lift"),
        ]);
}
