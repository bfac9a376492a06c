using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Arrivals;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Compression;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Ignition;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

public sealed class CardModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public string? Reason { get; set; }

    [BindProperty]
    public string? Code { get; set; }

    public CardHead Head { get; private set; } = null!;

    public GetJobCard.Answer Card { get; private set; } = null!;

    /// <summary>What may be begun now: held ready on the card, or found necessary.</summary>
    public IReadOnlyList<ServiceItem> Startable { get; private set; } = [];

    /// <summary>What the visit is likely to find; absent once it is over, and where no valves are checked.</summary>
    public GetCardForecast.Answer? Forecast { get; private set; }

    /// <summary>What its kit lacks, counted together with all visits to come.</summary>
    public ListShortages.Answer Lacking { get; private set; } = new([], []);

    /// <summary>How long was worked on it; nothing before somebody's clock ran.</summary>
    public GetWorkClock.Answer? Worked { get; private set; }

    public GetArrival.Answer Arrival { get; private set; } = null!;

    public GetCompression.Answer Compression { get; private set; } = null!;

    public GetPlugs.Answer Plugs { get; private set; } = null!;

    public bool MayBook { get; private set; }

    public bool MayStart { get; private set; }

    public bool MayCancel { get; private set; }

    public bool MayPlan { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostCancel() => await May(Policies.Books)
        ? await Write(
            new CancelBooking.Request { Number = Number, Reason = Reason },
            CancelBooking.Handle,
            cancelled =>
            {
                Done = $"Job card {cancelled.Number} is cancelled; its time and its kit are free.";
                return Redirect($"/job-cards/{cancelled.Number}");
            },
            again: Show,
            prefix: "")
        : Forbid();

    public async Task<IActionResult> OnPostStart() => await May(Policies.Measures)
        ? await Write(
            new StartItem.Request { Number = Number, Code = Code },
            StartItem.Handle,
            begun =>
            {
                Done = string.Join(" ", begun.Warnings.Prepend($"{begun.Name} is begun; torque sheet and kit have grown by it."));
                return Redirect($"/job-cards/{begun.Number}");
            },
            again: Show,
            prefix: "")
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetJobCard.Request(Number), GetJobCard.Handle)).TryGet(out var card, out problem)
            || !(await Read(new GetArrival.Request(Number), GetArrival.Handle)).TryGet(out var arrival, out problem)
            || !(await Read(new GetCompression.Request(Number), GetCompression.Handle)).TryGet(out var compression, out problem)
            || !(await Read(new GetPlugs.Request(Number), GetPlugs.Handle)).TryGet(out var plugs, out problem)
            || !(await OpenCard.Find(db, Number, HttpContext.RequestAborted)).TryGet(out var open, out problem))
        {
            return Refused(problem);
        }

        (Head, Card, Arrival, Compression, Plugs) = (head, card, arrival, compression, plugs);
        MayBook = await May(Policies.Books);
        if (card.State is JobCardState.Booked or JobCardState.CheckedIn
            && open.Items.Any(i => open.ItemOf(i).Kind == ServiceItemKind.ValveClearanceCheck)
            && (await Read(new GetCardForecast.Request(Number), GetCardForecast.Handle)).TryGet(out var forecast, out _))
        {
            Forecast = forecast;
        }

        if (card.State is JobCardState.Booked or JobCardState.CheckedIn
            && (await Read(new ListShortages.Request(Number), ListShortages.Handle)).TryGet(out var lacking, out _))
        {
            Lacking = lacking;
        }

        if ((await Read(new GetWorkClock.Request(Number), GetWorkClock.Handle)).TryGet(out var worked, out _) && (worked.Now.Count > 0 || worked.Last is not null))
        {
            Worked = worked;
        }

        Startable = [.. open.Specification.ServiceItems
            .Where(i => CardRules.RefuseStart(Number, open.Specification, open.Items, i.Code) is null)
            .OrderByDescending(i => open.Items.Any(on => on.ServiceItemCode == i.Code))];
        MayStart = card.State == JobCardState.CheckedIn && Startable.Count > 0 && await May(Policies.Measures);
        MayCancel = card.State is JobCardState.Booked or JobCardState.CheckedIn && await May(Policies.Books);
        MayPlan = MayCancel;
        return Page();
    }
}
