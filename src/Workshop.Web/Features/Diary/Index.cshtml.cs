using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Diary;

/// <summary>One day.</summary>
public sealed class IndexModel(WorkshopDbContext db, IClock clock) : DiaryPage(db, clock)
{
    /// <summary>The day to look at, as typed; today where absent.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Date { get; set; }

    public LocalDate Day { get; private set; }

    public IsoWeek Week => IsoWeek.Of(Day);

    public async Task<IActionResult> OnGet()
    {
        Day = await ReadToday();
        if (!string.IsNullOrEmpty(Date))
        {
            if (Days.TryRead(Date, out var day))
            {
                Day = day;
            }
            else
            {
                Wrong("date", $"date is \"{Date}\": a day such as 2026-03-02 is allowed.");
            }
        }

        return await Show(Day, Day.PlusDays(1));
    }
}
