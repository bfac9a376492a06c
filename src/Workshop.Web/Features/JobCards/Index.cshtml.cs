using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

public sealed class IndexModel(WorkshopDbContext db) : WorkshopPage
{
    private const int RecentlySignedOff = 20;

    /// <summary>Where the list of booked visits goes on.</summary>
    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    public WorkshopTime Time { get; private set; } = null!;

    public IReadOnlyList<Section> Sections { get; private set; } = [];

    public string? Next { get; private set; }

    public bool MayBook { get; private set; }

    public bool MayManage { get; private set; }

    public sealed record Section(string Title, string WhenEmpty, IReadOnlyList<ListBookings.Row> Rows, WorkshopTime Time);

    public async Task<IActionResult> OnGet()
    {
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        MayBook = await May(Policies.Books);
        MayManage = await May(Policies.Manages);
        var inWork = await Read(new ListBookings.Request(Take: Slice.Largest, State: Words.Write(JobCardState.CheckedIn)), ListBookings.Handle);
        var booked = await Read(new ListBookings.Request(After, State: Words.Write(JobCardState.Booked)), ListBookings.Handle);
        var signedOff = await Read(
            new ListBookings.Request(Take: RecentlySignedOff, State: Words.Write(JobCardState.SignedOff), LatestFirst: true), ListBookings.Handle);
        if (!booked.TryGet(out var coming, out var problem))
        {
            return Refused(problem);
        }

        Sections =
        [
            new Section("In work", "No motorcycle is here.", inWork.Value.Rows, Time),
            new Section("Today and coming", "Nothing is booked.", coming.Rows, Time),
            new Section("Recently signed off", "No card is signed off yet.", signedOff.Value.Rows, Time),
        ];
        Next = coming.Next;
        return Page();
    }
}
