using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.Arrivals;
using Workshop.Web.Features.Kits;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

public sealed class SignOffModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public SignOffCard.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetSignOff.Answer State { get; private set; } = null!;

    public GetArrival.Answer Arrival { get; private set; } = null!;

    /// <summary>
    /// Lines of the kit of which something lies ready beside new seals, or more was picked than it wants: the technician says what was used.
    /// </summary>
    public IReadOnlyList<KitOnShelf.Line> Ready { get; private set; } = [];

    public bool MaySign { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            // The form has a row for every item; one without a reason was done.
            Input with { Number = Number, NotDone = Input.NotDone?.Where(i => !string.IsNullOrWhiteSpace(i.Reason)).ToList() },
            SignOffCard.Handle,
            _ =>
            {
                Done = $"Job card {Number} is signed off.";
                return Redirect($"/job-cards/{Number}/sign-off");
            },
            again: Show)
        : Forbid();

    /// <summary>The reason that was typed for an item, when the form comes back.</summary>
    public string? ReasonOf(string code) => Input.NotDone?.FirstOrDefault(i => i.Code == code)?.Reason;

    /// <summary>The quantity that was typed for a part, when the form comes back.</summary>
    public string? QuantityOf(int index) => ModelState[$"Input.ExtraParts[{index}].Quantity"]?.AttemptedValue;

    /// <summary>What the link to the page of a reason is called.</summary>
    public static string NameOf(SignOffPlace place) => place switch
    {
        SignOffPlace.Card => "Card",
        SignOffPlace.CheckIn => "Check-in",
        SignOffPlace.Cautions => "Cautions",
        SignOffPlace.TorqueSheet => "Torque sheet",
        SignOffPlace.Seals => "Seals",
        SignOffPlace.Readings => "Readings",
        SignOffPlace.Shims => "Shims",
        SignOffPlace.Findings => "Findings",
        SignOffPlace.CamTiming => "Cam timing",
        SignOffPlace.AfterWork => "After the work",
        SignOffPlace.Compression => "Compression",
        SignOffPlace.Plugs => "Spark plugs",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, null),
    };

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetSignOff.Request(Number), GetSignOff.Handle)).TryGet(out var state, out problem)
            || !(await Read(new GetArrival.Request(Number), GetArrival.Handle)).TryGet(out var arrival, out problem)
            || !(await Read(new GetKit.Request(Number), GetKit.Handle)).TryGet(out var kit, out problem))
        {
            return Refused(problem);
        }

        (Head, State, Arrival) = (head, state, arrival);
        Ready = [.. kit.Lines.Where(l => (l.HaveReady > 0 && !l.ReadyForSeals) || l.Taken > l.Needed + l.HaveReady)];
        MaySign = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        return Page();
    }
}
