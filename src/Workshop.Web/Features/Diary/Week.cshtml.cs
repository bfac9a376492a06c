using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Diary;

/// <summary>One week, from Monday to Sunday.</summary>
public sealed class WeekModel(WorkshopDbContext db, IClock clock) : DiaryPage(db, clock)
{
    /// <summary>The week to look at, as typed; this week where absent.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Week { get; set; }

    public IsoWeek Of { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        Of = IsoWeek.Of(await ReadToday());
        if (!string.IsNullOrEmpty(Week))
        {
            if (IsoWeek.TryParse(Week, out var week))
            {
                Of = week;
            }
            else
            {
                Wrong("week", $"week is \"{Week}\": a week of that year such as 2026-W49 is allowed.");
            }
        }

        return await Show(Of.Monday, Of.Next.Monday);
    }
}
