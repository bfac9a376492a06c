using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>A part of a day that is drawn; several lie side by side, with what is between them left out.</summary>
/// <param name="Narrow">Closed: it keeps its place, not its hours.</param>
public sealed record TimeStretch(LocalDate Day, Interval Span, string Heading, bool Narrow = false);

/// <summary>One line of the drawing: a bay, a technician, a tool.</summary>
/// <param name="Ground">When it cannot be taken, with a word where it is not simply closed.</param>
public sealed record PhaseBarRow(
    string Name, Guid Id, IReadOnlyList<(Interval Span, string? Word)> Ground, IReadOnlyList<PhaseTaken> Taken);

/// <summary>What a visit takes for a phase.</summary>
/// <param name="Mark">A word where it stands wrong or runs late.</param>
/// <param name="Movable">The first of its work: where a move begins.</param>
public sealed record PhaseTaken(Interval Span, VisitPhase Phase, int Card, string? Mark, bool Movable);

/// <summary>A bar where it lies in the drawing.</summary>
/// <param name="Label">As much of card, phase and mark as fits; nothing where nothing does.</param>
public sealed record PhaseBar(decimal X, decimal Width, PhaseTaken Of, string? Label);

/// <summary>A stretch where it lies in the drawing.</summary>
public sealed record PhaseColumn(decimal X, decimal Width, TimeStretch Of);

/// <summary>
/// A day or a week as lines of time, one below the other: phases are told apart by pattern and word, all in one ink; what is
/// closed, a break or an absence is hatched ground. Pure geometry in the drawing's own units. Shown by
/// <c>&lt;partial name="Drawings/_PhaseBars" model="bars" /&gt;</c>, a table beside it.
/// </summary>
public sealed record PhaseBars
{
    public const decimal Width = 1180;
    public const decimal NameWidth = 120;
    public const decimal HeadHeight = 40;
    public const decimal RowHeight = 36;
    public const decimal BarHeight = 24;

    private const decimal Edge = 2;
    private const decimal Gap = 6;
    private const decimal NarrowWidth = 26;
    private const decimal LetterWidth = 7;
    private const int LongestName = 16;
    private const decimal TickRoom = 44;
    private const decimal FigureWidth = 32;

    public required decimal Height { get; init; }

    /// <summary>What the drawing says, for those who do not see it.</summary>
    public required string Words { get; init; }

    public required IReadOnlyList<PhaseColumn> Columns { get; init; }

    public required IReadOnlyList<(decimal X, string Text)> Ticks { get; init; }

    public required IReadOnlyList<(PhaseBarRow Row, string Name, decimal Y, IReadOnlyList<(decimal X, decimal Width, string? Word)> Ground, IReadOnlyList<PhaseBar> Bars)> Rows { get; init; }

    /// <summary>Where a bar can be dropped, for the script that lets one be dragged: times of the wall clock, and whose line is where.</summary>
    public required string DropMap { get; init; }

    /// <summary>The phases that occur, in their order: what the key explains.</summary>
    public IReadOnlyList<VisitPhase> Phases => [.. Rows.SelectMany(r => r.Bars).Select(b => b.Of.Phase).Distinct().Order()];

    /// <param name="stretches">In order of time.</param>
    public static PhaseBars Of(WorkshopTime time, IReadOnlyList<TimeStretch> stretches, IReadOnlyList<PhaseBarRow> rows, string words)
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(rows);
        var columns = Lay(stretches);
        return new PhaseBars
        {
            DropMap = JsonSerializer.Serialize(new
            {
                columns = columns.Where(c => !c.Of.Narrow).Select(c => new
                {
                    x = c.X, width = c.Width, day = LocalDatePattern.Iso.Format(c.Of.Day), from = MinuteOf(time, c.Of.Span.Start),
                    minutes = (int)c.Of.Span.Duration.TotalMinutes,
                }),
                rows = rows.Select((row, index) => new { y = HeadHeight + (index * RowHeight), id = row.Id, name = row.Name }),
                rowHeight = RowHeight,
            }),
            Height = HeadHeight + (rows.Count * RowHeight) + Edge,
            Words = words,
            Columns = columns,
            Ticks = [.. columns.Where(c => !c.Of.Narrow).SelectMany(c => TicksOf(time, c))],
            Rows =
            [
                .. rows.Select((row, index) => (row, Shorten(row.Name), HeadHeight + (index * RowHeight),
                    (IReadOnlyList<(decimal, decimal, string?)>)[.. row.Ground.SelectMany(g => Cut(columns, g.Span)
                        .Select(at => (at.X, at.Width, g.Word is { } word && Fits(word, at.Width) ? word : null)))],
                    (IReadOnlyList<PhaseBar>)[.. row.Taken.SelectMany(t => Cut(columns, t.Span)
                        .Select((at, part) => new PhaseBar(at.X, at.Width, part == 0 ? t : t with { Movable = false }, LabelOf(t, at.Width))))])),
            ],
        };
    }

    private static List<PhaseColumn> Lay(IReadOnlyList<TimeStretch> stretches)
    {
        var room = Width - NameWidth - Edge - (Gap * Math.Max(0, stretches.Count - 1)) - (NarrowWidth * stretches.Count(s => s.Narrow));
        var hours = stretches.Where(s => !s.Narrow).Sum(s => s.Span.Duration.TotalHours);
        var (columns, x) = (new List<PhaseColumn>(), NameWidth);
        foreach (var stretch in stretches)
        {
            var width = stretch.Narrow ? NarrowWidth : room * (decimal)(stretch.Span.Duration.TotalHours / hours);
            columns.Add(new PhaseColumn(x, width, stretch));
            x += width + Gap;
        }

        return columns;
    }

    /// <summary>The parts of a span that are drawn.</summary>
    private static IEnumerable<(decimal X, decimal Width)> Cut(IEnumerable<PhaseColumn> columns, Interval span) =>
        from column in columns
        let shown = column.Of.Span
        where span.Start < shown.End && shown.Start < span.End
        let x = At(column, Instant.Max(span.Start, shown.Start))
        select (x, At(column, Instant.Min(span.End, shown.End)) - x);

    private static decimal At(PhaseColumn column, Instant at) =>
        column.X + (column.Width * (decimal)((at - column.Of.Span.Start) / column.Of.Span.Duration));

    /// <summary>Full hours of the wall clock, as many as have room for their figures.</summary>
    private static IEnumerable<(decimal X, string Text)> TicksOf(WorkshopTime time, PhaseColumn column)
    {
        var hours = new List<Instant>();
        for (var at = column.Of.Span.Start; at <= column.Of.Span.End; at += Duration.FromMinutes(1))
        {
            if (time.At(at).Minute == 0)
            {
                hours.Add(at);
            }
        }

        var step = Math.Max(1, (int)Math.Ceiling(hours.Count * TickRoom / column.Width));
        return hours.Where((_, index) => index % step == 0)
            .Select(hour => (X: At(column, hour), time.At(hour).ToString("HH:mm", CultureInfo.InvariantCulture)))
            .Where(tick => tick.X + FigureWidth <= column.X + column.Width);
    }

    private static int MinuteOf(WorkshopTime time, Instant at) => (time.At(at).Hour * 60) + time.At(at).Minute;

    private static string? LabelOf(PhaseTaken taken, decimal width)
    {
        var card = taken.Card.ToString(CultureInfo.InvariantCulture);
        string[] labels =
        [
            .. taken.Mark is { } mark ? (string[])[$"{card} {taken.Phase.Spoken()}: {mark}", $"{card}: {mark}"] : [$"{card} {taken.Phase.Spoken()}"],
            card,
        ];
        return labels.FirstOrDefault(l => Fits(l, width));
    }

    private static bool Fits(string label, decimal width) => (label.Length + 1) * LetterWidth <= width;

    private static string Shorten(string name) => name.Length <= LongestName ? name : $"{name[..(LongestName - 1)]}…";
}
