using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.Diary;

/// <summary>A word for each visit that runs late, that others push, or that has not come: as <see cref="ListLate"/> reckons it.</summary>
internal static class LateMarks
{
    /// <summary>Nothing of days that lie behind, or further ahead than late running looks.</summary>
    public static async Task<IReadOnlyDictionary<int, string>> Read(
        WorkshopDbContext db, OpeningCalendar calendar, Interval shown, Instant now, CancellationToken ct)
    {
        if (shown.End <= now || shown.Start > now + Duration.FromDays(VisitsToday.DaysAhead))
        {
            return new Dictionary<int, string>();
        }

        var today = await VisitsToday.Read(db, calendar, now, ct);
        var found = today.Reckon(now);
        var marks = today.NotCome.ToDictionary(n => n.Number, _ => "its time is over, not come");
        foreach (var pushed in found.Pushed.Where(p => p.Pushed >= ListLate.Tolerance))
        {
            marks[pushed.Number] = $"pushed by {pushed.By}";
        }

        foreach (var late in found.Late.Where(l => l.Late >= ListLate.Tolerance))
        {
            marks[late.Number] = $"late: {late.Reason.Spoken()}";
        }

        return marks;
    }
}
