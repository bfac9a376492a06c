using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Calendars;

/// <summary>Links to calendars: made, shown once, revoked.</summary>
public sealed class IndexModel(WorkshopDbContext db) : WorkshopPage
{
    public IReadOnlyList<ListCalendarFeeds.OfResource> Resources { get; private set; } = [];

    public CreateCalendarFeed.Answer? Made { get; private set; }

    public WorkshopTime Time { get; private set; } = null!;

    public string AddressOf(string path) => $"{Request.Scheme}://{Request.Host}{path}";

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostMake(Guid? resourceId)
    {
        var answer = await Write(
            new CreateCalendarFeed.Request(resourceId), CreateCalendarFeed.Handle,
            made =>
            {
                Made = made;
                return Page();
            },
            Show, prefix: "");
        await Show();
        return answer;
    }

    public Task<IActionResult> OnPostRevoke(Guid id) => Write(
        new RevokeCalendarFeed.Request(id), RevokeCalendarFeed.Handle,
        _ =>
        {
            Done = "The link is revoked: nobody can read the calendar by it any more.";
            return Redirect("/calendars");
        },
        Show, prefix: "");

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new ListCalendarFeeds.Request(), ListCalendarFeeds.Handle)).TryGet(out var feeds, out var problem))
        {
            return Refused(problem);
        }

        Resources = feeds.Resources;
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        return Page();
    }
}
