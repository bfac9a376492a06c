using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Domain.Contacts;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

public sealed class CallsModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    [BindProperty(SupportsGet = true)]
    public int? WithinWeeks { get; set; }

    [BindProperty(SupportsGet = true)]
    public int? QuietDays { get; set; }

    public Slice<ListCalls.Row> Calls { get; private set; } = new([], null);

    public WorkshopTime Time { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        if (ModelState.IsValid)
        {
            var request = new ListCalls.Request { After = After, WithinWeeks = WithinWeeks, QuietDays = QuietDays };
            if ((await Read(request, ListCalls.Handle)).TryGet(out var calls, out var problem))
            {
                Calls = calls;
                return Page();
            }

            problem.AddTo(ModelState, prefix: "");
        }

        Response.StatusCode = StatusCodes.Status400BadRequest;
        return Page();
    }

    /// <summary>What the owner agreed to, as far as there is something to use it with.</summary>
    public static string Consents(ListCalls.Row call)
    {
        ArgumentNullException.ThrowIfNull(call);
        return call.Channels.Count == 0
            ? "No consent: ask when the owner comes next"
            : $"Agreed to {string.Join(", ", call.Channels.Select(c => c.Spoken() + (IsMissing(call, c) ? " (not on record)" : "")))}";
    }

    private static bool IsMissing(ListCalls.Row call, ContactChannel channel) =>
        (channel == ContactChannel.Phone && string.IsNullOrEmpty(call.Phone)) || (channel == ContactChannel.Email && string.IsNullOrEmpty(call.Email));
}
