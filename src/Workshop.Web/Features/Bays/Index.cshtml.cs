using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Hosting;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bays;

/// <summary>The floor on the wall. The part that changes is fetched by itself whenever there is news; see <see cref="LiveFloor"/>.</summary>
public sealed class IndexModel(WorkshopDbContext db, FloorNews news) : WorkshopPage
{
    /// <summary>Nothing but the floor, large.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Wall { get; set; }

    /// <summary>The news before which the floor was read.</summary>
    public string Seen { get; private set; } = "";

    public FloorView Floor { get; private set; } = null!;

    public async Task<IActionResult> OnGet() => await Look() ?? Page();

    public async Task<IActionResult> OnGetFloor() => await Look() ?? Partial("_Floor", Floor);

    private async Task<IActionResult?> Look()
    {
        Seen = news.Current;
        if (!(await Read(new GetFloor.Request(), GetFloor.Handle)).TryGet(out var floor, out var problem))
        {
            return Refused(problem);
        }

        var words = new FloorWords(await WorkshopTimes.Read(db, HttpContext.RequestAborted), floor.At);
        Floor = new FloorView(floor, words, FloorDrawing.Of([.. floor.Places.Select(p => FloorView.RoomOf(p, words))]));
        return null;
    }
}

/// <summary>The floor as a drawing and a table. Shown by <c>&lt;partial name="_Floor" model="view" /&gt;</c>.</summary>
public sealed record FloorView(GetFloor.Answer Floor, FloorWords Words, FloorDrawing Drawing)
{
    /// <summary>What is written into a room of the drawing.</summary>
    public static Room RoomOf(GetFloor.Place place, FloorWords words)
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(words);
        var stands = place.Stands;
        return new Room(place.Kind == Domain.Bookings.ResourceKind.Bay, place.Name)
        {
            Registration = stands?.Registration,
            Card = stands is null ? null : $"{stands.JobCardNumber}",
            Model = stands?.Motorcycle[(stands.Registration.Length + 2)..],
            Phase = stands is null ? null : FloorWords.What(stands),
            Since = stands is null ? null : words.Since(stands),
            Who = stands is null ? null : FloorWords.Who(stands),
            When = stands is null ? null : words.When(stands),
            Tag = stands?.Tag,
            Next = place.Next is { } next ? words.Next(next) : null,
            Away = place.Away is { } away ? words.Away(away) : null,
        };
    }
}
