using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Intervals;

/// <summary>What a proposal says of one item.</summary>
public enum DueAdvice
{
    /// <summary>The first to come up: the reason for the visit.</summary>
    First,

    /// <summary>Falls together with it.</summary>
    Together,

    /// <summary>Not due yet, but what it needs opened is open then.</summary>
    BroughtForward,

    /// <summary>A visit of its own, later.</summary>
    Later,

    /// <summary>Done with a bigger one that contains it.</summary>
    Included,
}

/// <summary>One item of a proposal.</summary>
/// <param name="Entry">What is due.</param>
/// <param name="Advice">Now or later.</param>
/// <param name="SavesMinutes">Of opening and closing, against a visit of its own.</param>
public sealed record ProposedItem(DueEntry Entry, DueAdvice Advice, int SavesMinutes)
{
    /// <summary>It is done in the visit that is proposed.</summary>
    public bool IsNow => Advice is DueAdvice.First or DueAdvice.Together or DueAdvice.BroughtForward;
}

/// <summary>What to do in one visit, so that the machine is opened once.</summary>
/// <param name="Items">Everything that is due, in the order in which it comes up.</param>
/// <param name="ComesOn">When the visit comes up.</param>
/// <param name="LabourMinutes">Of the items that are done now, every access once.</param>
/// <param name="SavesMinutes">Of opening and closing, against a visit for each.</param>
/// <param name="SpecialTools">What the items that are done now need.</param>
public sealed record VisitProposal(
    IReadOnlyList<ProposedItem> Items, LocalDate ComesOn, int LabourMinutes, int SavesMinutes, IReadOnlyList<string> SpecialTools)
{
    /// <summary>Less than this of saved opening is no reason to do something early (our own choice).</summary>
    public const int FewestMinutesSaved = 10;

    /// <summary>No more of an interval than a quarter is given away (our own choice).</summary>
    public const double MostGivenAway = 0.25;

    private const double DaysPerMonth = (double)RidingRate.DaysPerYear / 12;

    /// <summary>
    /// The visit for what comes up first: with it what falls together within the tolerance, and, one after the other, what needs an
    /// access that is open then, where that saves <see cref="FewestMinutesSaved"/> or more and gives away at most a quarter of its
    /// interval. Nothing where nothing is due.
    /// </summary>
    /// <param name="subject">The motorcycle.</param>
    /// <param name="entries">What it is due for: see <see cref="DueEntry.Of"/>.</param>
    /// <param name="today">No visit is earlier: what has become due until then is done together.</param>
    public static VisitProposal? Of(DueSubject subject, IReadOnlyList<DueEntry> entries, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(entries);
        var open = entries.Where(e => e.IncludedIn is null)
            .OrderBy(e => e.ComesOn).ThenBy(e => e.Item.Code, StringComparer.Ordinal).ToList();
        if (open.Count == 0)
        {
            return null;
        }

        var minutes = subject.Specification.Accesses.ToDictionary(a => a.Code, a => a.Minutes, StringComparer.Ordinal);
        var lead = open[0];
        var on = LocalDate.Max(lead.ComesOn, today);
        var at = Where(subject, lead, on);
        var opened = new HashSet<string>(lead.Item.Accesses, StringComparer.Ordinal);
        var chosen = new Dictionary<string, ProposedItem>(StringComparer.Ordinal)
        {
            [lead.Item.Code] = new(lead, DueAdvice.First, 0),
        };
        foreach (var entry in open.Skip(1).Where(e => FallsTogether(e, on, at, subject.Together)))
        {
            Choose(entry, DueAdvice.Together);
        }

        while (open.Where(e => !chosen.ContainsKey(e.Item.Code) && e.PutOff is null)
            .FirstOrDefault(e => Saved(e) >= FewestMinutesSaved && GivenAway(subject, e, on, at) <= MostGivenAway) is { } next)
        {
            Choose(next, DueAdvice.BroughtForward);
        }

        var items = open.Select(e => chosen.GetValueOrDefault(e.Item.Code) ?? new ProposedItem(e, DueAdvice.Later, 0))
            .Concat(entries.Where(e => e.IncludedIn is not null).Select(e => new ProposedItem(e, DueAdvice.Included, 0)))
            .ToArray();
        return new VisitProposal(
            items,
            lead.ComesOn,
            chosen.Values.Sum(c => c.Entry.Item.LabourMinutes) + opened.Sum(MinutesOf),
            chosen.Values.Sum(c => c.SavesMinutes),
            [.. chosen.Values.SelectMany(c => c.Entry.Item.SpecialTools).Distinct().Order(StringComparer.Ordinal)]);

        int MinutesOf(string access) => minutes.GetValueOrDefault(access);

        int Saved(DueEntry entry) => entry.Item.Accesses.Where(opened.Contains).Sum(MinutesOf);

        void Choose(DueEntry entry, DueAdvice advice)
        {
            chosen.Add(entry.Item.Code, new ProposedItem(entry, advice, Saved(entry)));
            opened.UnionWith(entry.Item.Accesses);
        }
    }

    /// <summary>What the motorcycle will have done at the visit.</summary>
    private static Distance Where(DueSubject subject, DueEntry lead, LocalDate on)
    {
        var byThen = subject.Rate.DistanceOn(on, subject.Track.Last);
        return lead.PutOff is null && on == lead.ComesOn && lead.Next.At is { } at && at > subject.Track.Last.Distance && at < byThen ? at : byThen;
    }

    private static bool FallsTogether(DueEntry entry, LocalDate on, Distance at, TogetherWithin within) =>
        Period.DaysBetween(on, entry.ComesOn) <= within.Days
        || (entry.PutOff is null && entry.Next.At is { } there && there <= at + within.Far);

    /// <summary>How much of its interval is lost by doing it now: by distance or by the calendar, whichever is nearer.</summary>
    private static double GivenAway(DueSubject subject, DueEntry entry, LocalDate on, Distance at)
    {
        var interval = entry.Item.Interval!.For(subject.Facts);
        var (far, months) = entry.LastDone is null
            ? (interval.First ?? interval.Every, interval.FirstMonths ?? interval.EveryMonths)
            : (interval.Every, interval.EveryMonths);
        var byDistance = entry.Next.At is { } there && far is { } length
            ? (double)((there - at).Metres / length.Metres)
            : double.PositiveInfinity;
        var byCalendar = entry.Next.On is { } day && months is { } count
            ? Period.DaysBetween(on, day) / (count * DaysPerMonth)
            : double.PositiveInfinity;
        return Math.Min(byDistance, byCalendar);
    }
}
