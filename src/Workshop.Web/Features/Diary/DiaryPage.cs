using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Diary;

/// <summary>What the day and the week do alike.</summary>
public abstract class DiaryPage(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    /// <summary>bays, technicians or toolsAndPlaces.</summary>
    [BindProperty(SupportsGet = true)]
    public string? By { get; set; }

    public DiaryView View { get; private set; } = null!;

    public LocalDate Today { get; private set; }

    public DiaryBy ByOf => Words.Read<DiaryBy>(By) ?? DiaryBy.Bays;

    protected async Task<IActionResult> Show(LocalDate first, LocalDate end)
    {
        var read = await Read(new GetDiary.Request(Days.Write(first), Days.Write(end)), GetDiary.Handle);
        if (!read.TryGet(out var diary, out var problem))
        {
            return Refused(problem);
        }

        View = new DiaryView(diary, ByOf, new WorkshopTime(DateTimeZoneProviders.Tzdb[diary.TimeZone]), await May(Policies.Books));
        return Page();
    }

    /// <summary>The workshop's day.</summary>
    protected async Task<LocalDate> ReadToday() =>
        Today = (await WorkshopTimes.Read(db, HttpContext.RequestAborted)).DayOf(clock.GetCurrentInstant());

    /// <summary>What cannot be read is said, and today is shown.</summary>
    protected void Wrong(string field, string sentence)
    {
        ModelState.AddModelError(field, sentence);
        Response.StatusCode = StatusCodes.Status400BadRequest;
    }
}
