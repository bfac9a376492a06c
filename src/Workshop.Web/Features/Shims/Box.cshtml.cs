using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Shims;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>The shim boxes: where each size lies, what is in them, what waits on benches; goods in, the policy, a new series.</summary>
public sealed class BoxModel : WorkshopPage
{
    /// <summary>The box, by its part code; the first where none is named.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Box { get; set; }

    /// <summary>Typed or scanned; see <see cref="ShimSearch"/>.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Find { get; set; }

    [BindProperty]
    public ReceiveShims.Request Receipt { get; set; } = new();

    [BindProperty]
    public SetUsedShimPolicy.Request Policy { get; set; } = new();

    [BindProperty]
    public AddShimSeries.Request Series { get; set; } = new();

    public IReadOnlyList<ListShimBoxes.Box> Boxes { get; private set; } = [];

    public GetShimBox.Answer? Open { get; private set; }

    public IReadOnlyList<GetShimBox.Size> Found { get; private set; } = [];

    public BoxDrawing? Map { get; private set; }

    public UsedShimPolicy UsedShims { get; private set; }

    public bool MayReceive { get; private set; }

    public bool MayManage { get; private set; }

    public bool Searched => !string.IsNullOrWhiteSpace(Find);

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostReceive() => await May(Policies.KeepsStores)
        ? await Write(
            Receipt,
            ReceiveShims.Handle,
            received =>
            {
                Done = $"Took in {received.Quantity} of {received.ThicknessMm} to {received.Place}{(received.Compartment is { } at ? $", {at}" : "")}.";
                return Back(received.PartCode);
            },
            again: Show,
            prefix: nameof(Receipt))
        : Forbid();

    public async Task<IActionResult> OnPostPolicy() => await May(Policies.Manages)
        ? await Write(
            Policy,
            SetUsedShimPolicy.Handle,
            set =>
            {
                Done = $"Used shims: {set.UsedShims.Spoken()}.";
                return Back(Box);
            },
            again: Show,
            prefix: nameof(Policy))
        : Forbid();

    public async Task<IActionResult> OnPostSeries() => await May(Policies.Manages)
        ? await Write(
            Series,
            AddShimSeries.Handle,
            added =>
            {
                Done = $"{added.Box} is made, with {added.Sizes} compartments for {added.PartCode}.";
                return Back(added.PartCode);
            },
            again: Show,
            prefix: nameof(Series))
        : Forbid();

    private RedirectResult Back(string? box) =>
        Redirect($"/stores/shims{(string.IsNullOrEmpty(box) ? "" : $"?box={Uri.EscapeDataString(box)}")}");

    private async Task<IActionResult> Show()
    {
        Boxes = (await Read(new ListShimBoxes.Request(), ListShimBoxes.Handle)).Value.Boxes;
        UsedShims = (await Read(new GetUsedShimPolicy.Request(), GetUsedShimPolicy.Handle)).Value.UsedShims;
        MayReceive = await May(Policies.KeepsStores);
        MayManage = await May(Policies.Manages);
        var search = ShimSearch.Read(Find);
        var wanted = search.PartCode ?? (string.IsNullOrEmpty(Box) ? Boxes.Select(b => b.PartCode).FirstOrDefault() : Box);
        if (wanted is null)
        {
            return Page();
        }

        if (!(await Read(new GetShimBox.Request(wanted), GetShimBox.Handle)).TryGet(out var open, out var problem))
        {
            return Refused(problem);
        }

        (Open, Box, Found) = (open, open.PartCode, search.In(open));
        Receipt = Receipt with { PartCode = Receipt.PartCode ?? open.PartCode };
        Map = BoxDrawing.Of(
            open.Columns,
            [.. open.Compartments.Select(c => new CompartmentStock(c.Address, c.Row, c.Column, c.NominalMm, c.New, c.Used))],
            search.Compartments(open),
            $"{open.Place} from above: {open.Compartments.Count} compartments, {open.Compartments.Count(c => c.New + c.Used == 0)} of them empty");
        return Page();
    }
}
