using System.Globalization;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>One line of the drawing: who or what, and the spans in which it is taken, each with a word or two.</summary>
public sealed record TimeBarRow(string Name, IReadOnlyList<(Interval Span, string Label)> Taken);

/// <summary>A taken span where it lies in the drawing.</summary>
public sealed record TimeBar(decimal X, decimal Width, string Label, bool LabelFits);

/// <summary>
/// A day as lines of time, one below the other: thin where a resource is free, hatched where it is taken. Pure geometry in
/// the drawing's own units. Shown by <c>&lt;partial name="Drawings/_TimeBars" model="bars" /&gt;</c>, a table beside it.
/// </summary>
public sealed record TimeBars
{
    public const decimal Width = 760;
    public const decimal NameWidth = 190;
    public const decimal RowHeight = 30;
    public const decimal BarHeight = 18;

    private const decimal HeadHeight = 22;
    private const decimal Edge = 10;
    private const decimal LetterWidth = 7;
    private const int LongestName = 26;
    private const int MostTicks = 14;

    public required decimal Height { get; init; }

    /// <summary>What the drawing says, for those who do not see it.</summary>
    public required string Words { get; init; }

    public required IReadOnlyList<(decimal X, string Text)> Ticks { get; init; }

    public required IReadOnlyList<(string Name, decimal Y, IReadOnlyList<TimeBar> Bars)> Rows { get; init; }

    /// <param name="shown">The span of time from edge to edge.</param>
    public static TimeBars Of(WorkshopTime time, Interval shown, IReadOnlyList<TimeBarRow> rows, string words)
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(rows);
        decimal X(Instant at) => NameWidth + ((Width - NameWidth - Edge)
            * (decimal)((Instant.Min(Instant.Max(at, shown.Start), shown.End) - shown.Start) / shown.Duration));
        return new TimeBars
        {
            Height = HeadHeight + (rows.Count * RowHeight) + Edge,
            Words = words,
            Ticks = [.. Hours(time, shown).Select(hour => (X(hour), time.At(hour).ToString("HH:mm", CultureInfo.InvariantCulture)))],
            Rows =
            [
                .. rows.Select((row, index) => (Shorten(row.Name), HeadHeight + (index * RowHeight), (IReadOnlyList<TimeBar>)
                [
                    .. row.Taken.Where(t => t.Span.Start < shown.End && t.Span.End > shown.Start)
                        .Select(t => Bar(X(t.Span.Start), X(t.Span.End), t.Label)),
                ])),
            ],
        };
    }

    /// <summary>A coordinate as SVG writes it.</summary>
    public static string Write(decimal coordinate) => coordinate.ToString("0.##", CultureInfo.InvariantCulture);

    private static TimeBar Bar(decimal from, decimal to, string label) =>
        new(from, to - from, label, (label.Length + 1) * LetterWidth <= to - from);

    private static string Shorten(string name) => name.Length <= LongestName ? name : $"{name[..(LongestName - 1)]}…";

    /// <summary>Full hours of the wall clock; every second, third ... one where there are many.</summary>
    private static IEnumerable<Instant> Hours(WorkshopTime time, Interval shown)
    {
        var hours = new List<Instant>();
        for (var at = shown.Start; at <= shown.End; at += Duration.FromMinutes(1))
        {
            if (time.At(at).Minute == 0)
            {
                hours.Add(at);
            }
        }

        var step = 1 + (hours.Count / MostTicks);
        return hours.Where((_, index) => index % step == 0);
    }
}
