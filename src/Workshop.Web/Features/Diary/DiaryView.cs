using System.Globalization;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Diary;

/// <summary>Whose lines the Diary shows.</summary>
public enum DiaryBy
{
    Bays,
    Technicians,
    ToolsAndPlaces,
}

/// <summary>One line of the table: a visit with what it takes of one resource.</summary>
/// <param name="Marks">Words where something stands wrong or runs late.</param>
public sealed record DiaryLine(GetDiary.Visit Visit, IReadOnlyList<GetDiary.Taken> Takes, IReadOnlyList<string> Marks);

/// <summary>A day or a week of the Diary, as a drawing and a table. Shown by <c>&lt;partial name="_Diary" model="view" /&gt;</c>.</summary>
public sealed record DiaryView(GetDiary.Answer Diary, DiaryBy By, WorkshopTime Time, bool MayMove)
{
    public bool IsWeek => Diary.Days.Count > 1;

    public IReadOnlyList<GetDiary.ResourceDays> Resources => [.. Diary.Resources.Where(r => ByOf(r.Kind) == By)];

    private Dictionary<int, GetDiary.Visit> Visits { get; } = Diary.Visits.ToDictionary(v => v.JobCardNumber);

    public static DiaryBy ByOf(ResourceKind kind) => kind switch
    {
        ResourceKind.Bay => DiaryBy.Bays,
        ResourceKind.Technician => DiaryBy.Technicians,
        _ => DiaryBy.ToolsAndPlaces,
    };

    public PhaseBars Bars => PhaseBars.Of(
        Time,
        Stretches(),
        [.. Resources.Select(r => new PhaseBarRow(r.Name, r.Id, Ground(r), [.. r.Taken.Where(t => Visits.ContainsKey(t.JobCardNumber)).Select(t => BarOf(r, t))]))],
        "What each visit takes, a line for each resource, phases by pattern; the same in words in the table below.");

    /// <summary>The visits of one resource in order of time.</summary>
    public IReadOnlyList<DiaryLine> Lines(GetDiary.ResourceDays resource) =>
    [
        .. resource.Taken.Where(t => Visits.ContainsKey(t.JobCardNumber)).GroupBy(t => t.JobCardNumber).Select(g => new DiaryLine(
            Visits[g.Key], [.. g],
            [.. g.Where(t => t.Why is not null).Select(t => t.Why!.Value.Spoken()).Append(Visits[g.Key].Late).OfType<string>().Distinct()])),
    ];

    /// <summary>Visits of which this view has no line, because they take nothing of its kind in these days.</summary>
    public IReadOnlyList<GetDiary.Visit> Others
    {
        get
        {
            var lined = Resources.SelectMany(r => r.Taken).Select(t => t.JobCardNumber).ToHashSet();
            return [.. Diary.Visits.Where(v => !lined.Contains(v.JobCardNumber))];
        }
    }

    /// <summary>The phases of a visit that lie in these days.</summary>
    public IEnumerable<VisitPhase> PhasesHere(GetDiary.Visit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return visit.Phases.Where(p => p.From < Whole.End && Whole.Start < p.Until).Select(p => p.Phase);
    }

    private Interval Whole => new(Time.WholeDay(Diary.Days[0].Date).Start, Time.WholeDay(Diary.Days[^1].Date).End);

    /// <summary>The time of day; with its weekday in a week, with its date where it is of another day.</summary>
    public string Clock(Instant instant)
    {
        var at = Time.At(instant);
        var time = at.ToString("HH:mm", CultureInfo.InvariantCulture);
        return Diary.Days.All(d => d.Date != at.Date) ? $"{Days.Write(at.Date)} {time}"
            : IsWeek ? $"{at.Date.DayOfWeek.ToString()[..3]} {time}"
            : time;
    }

    private PhaseTaken BarOf(GetDiary.ResourceDays resource, GetDiary.Taken taken)
    {
        var visit = Visits[taken.JobCardNumber];
        var movable = MayMove && visit.Movable && taken.Phase == VisitPhase.Work
            && resource.Kind is ResourceKind.Bay or ResourceKind.Technician
            && visit.Phases.Where(p => p.Phase == VisitPhase.Work).All(p => p.From == taken.From);
        return new PhaseTaken(
            new Interval(taken.From, taken.Until), taken.Phase, taken.JobCardNumber, taken.Why?.Spoken() ?? visit.Late, movable);
    }

    /// <summary>What a resource cannot be taken in: of a technician all but his work, of anything else what is closed.</summary>
    private List<(Interval Span, string? Word)> Ground(GetDiary.ResourceDays resource)
    {
        IEnumerable<Interval> usable = resource.Kind == ResourceKind.Technician
            ? resource.Works.Select(w => new Interval(w.From, w.Until))
            : Diary.Days.Where(d => d.OpensAt is not null).Select(d => new Interval(d.OpensAt, d.ClosesAt));
        return
        [
            .. FreeSpans.Of(Whole, usable).Where(s => s.Duration > Duration.Zero).Select(s => (s, (string?)null)),
            .. resource.Breaks.Select(b => (new Interval(b.From, b.Until), (string?)"break")),
            .. resource.Absences.Select(a => (new Interval(a.From, a.Until), (string?)a.Reason.Spoken())),
        ];
    }

    private List<TimeStretch> Stretches() =>
        [.. Diary.Days.Select(d => DiaryHours.Shown(d, Diary, Time) is { } shown
            ? new TimeStretch(d.Date, shown, Heading(d))
            : new TimeStretch(d.Date, Time.WholeDay(d.Date), IsWeek ? d.Date.DayOfWeek.ToString()[..2] : Heading(d), Narrow: IsWeek))];

    private string Heading(GetDiary.OpenDay day) =>
        (IsWeek ? day.Date.ToString("ddd d MMM", CultureInfo.InvariantCulture) : day.Date.ToString("dddd, uuuu-MM-dd", CultureInfo.InvariantCulture))
        + (day.ClosedBecause is null ? "" : $": closed ({day.ClosedBecause})");
}

/// <summary>Which hours of a day are drawn.</summary>
internal static class DiaryHours
{
    /// <summary>
    /// The opening hours, and what people do beside them, out to full hours; nothing on a day on which nobody works and nobody
    /// comes.
    /// </summary>
    public static Interval? Shown(GetDiary.OpenDay day, GetDiary.Answer diary, WorkshopTime time)
    {
        var whole = time.WholeDay(day.Date);
        IEnumerable<(Instant From, Instant Until)> spans =
        [
            .. day.OpensAt is { } opens ? [(opens, day.ClosesAt!.Value)] : (IEnumerable<(Instant, Instant)>)[],
            .. diary.Resources.SelectMany(r => r.Works).Select(w => (w.From, w.Until)),
            .. diary.Resources.Where(r => r.Kind == ResourceKind.Technician).SelectMany(r => r.Taken).Select(t => (t.From, t.Until)),
            .. diary.Visits.SelectMany(v => v.Phases).Where(p => p.Phase is VisitPhase.Arrival or VisitPhase.HandOver).Select(p => (p.From, p.Until)),
        ];
        var that = spans.Where(s => s.From < whole.End && whole.Start < s.Until).ToList();
        return that.Count == 0
            ? null
            : new Interval(
                Instant.Max(whole.Start, FullHour(that.Min(s => s.From), time)),
                Instant.Min(whole.End, FullHour(that.Max(s => s.Until) + Duration.FromMinutes(59), time)));
    }

    private static Instant FullHour(Instant at, WorkshopTime time) => at - Duration.FromMinutes(time.At(at).Minute) - Duration.FromSeconds(time.At(at).Second);
}
