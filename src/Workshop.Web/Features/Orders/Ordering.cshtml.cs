using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>How one part is ordered: who sells it, how surely it is to be there, and what that comes to today.</summary>
public sealed class OrderingModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string PartCode { get; set; } = "";

    /// <summary>The entry that is being changed; absent where one is added.</summary>
    [BindProperty(SupportsGet = true)]
    public Guid? Supply { get; set; }

    /// <summary>Of that entry.</summary>
    [BindProperty]
    public uint? Version { get; set; }

    [BindProperty]
    public AddSupply.Request Sold { get; set; } = new();

    [BindProperty]
    public SetOrdering.Request Level { get; set; } = new();

    public GetOrdering.Answer Found { get; private set; } = null!;

    public IReadOnlyList<ListSuppliers.Row> Suppliers { get; private set; } = [];

    public GetOrdering.Sold? Changed => Found.SoldBy.SingleOrDefault(s => s.Id == Supply);

    public bool MayOrder { get; private set; }

    private string Here => $"/stores/ordering/{Uri.EscapeDataString(PartCode)}";

    public async Task<IActionResult> OnGet()
    {
        if (await Load() is { } refused)
        {
            return refused;
        }

        FillSupply();
        FillLevel();
        return Page();
    }

    public async Task<IActionResult> OnPostSupply()
    {
        if (!await MayWrite(nameof(Sold)))
        {
            return Forbid();
        }

        return Supply is { } id
            ? await Write(
                new EditSupply.Request
                {
                    PartCode = PartCode, Id = id, RowVersion = Version, SupplierCode = Sold.SupplierCode, PackQuantity = Sold.PackQuantity,
                    SmallestQuantity = Sold.SmallestQuantity, UnitCost = Sold.UnitCost, DeliveryDays = Sold.DeliveryDays, Preferred = Sold.Preferred,
                },
                EditSupply.Handle, _ => Saved("Saved."), AgainWithLevel, nameof(Sold))
            : await Write(
                Sold with { PartCode = PartCode }, AddSupply.Handle, added => Saved($"{added.Supplier} sells it."), AgainWithLevel, nameof(Sold));
    }

    public async Task<IActionResult> OnPostRemove() => await MayWrite("")
        ? await Write(
            new RemoveSupply.Request(PartCode, Supply ?? Guid.Empty, Version), RemoveSupply.Handle, _ => Saved("That supplier sells it no more."), AgainWithLevel, "")
        : Forbid();

    public async Task<IActionResult> OnPostLevel() => await MayWrite(nameof(Level))
        ? await Write(Level with { PartCode = PartCode }, SetOrdering.Handle, _ => Saved("Saved."), AgainWithSupply, nameof(Level))
        : Forbid();

    private RedirectResult Saved(string done)
    {
        Done = done;
        return Redirect(Here);
    }

    /// <summary>A page with several forms binds the fields of all; only the faults of the one that was sent count.</summary>
    private Task<bool> MayWrite(string form)
    {
        foreach (var key in ModelState.Keys.Where(k => k.Contains('.', StringComparison.Ordinal) && !k.StartsWith($"{form}.", StringComparison.Ordinal)).ToList())
        {
            ModelState.Remove(key);
        }

        return May(Policies.Orders);
    }

    private async Task<IActionResult> AgainWithLevel()
    {
        if (await Load() is { } refused)
        {
            return refused;
        }

        FillLevel();
        return Page();
    }

    private async Task<IActionResult> AgainWithSupply()
    {
        if (await Load() is { } refused)
        {
            return refused;
        }

        FillSupply();
        return Page();
    }

    private async Task<IActionResult?> Load()
    {
        if (!(await Read(new GetOrdering.Request(PartCode), GetOrdering.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        (Found, MayOrder) = (found, await May(Policies.Orders));
        var sold = found.SoldBy.Select(s => s.SupplierId).ToHashSet();
        Suppliers = [.. (await Read(new ListSuppliers.Request(), ListSuppliers.Handle)).Value.Suppliers.Where(s => !s.Retired && !sold.Contains(s.Id))];
        return null;
    }

    private void FillSupply() => Sold = Changed is { } supply
        ? new AddSupply.Request
        {
            SupplierId = supply.SupplierId, SupplierCode = supply.SupplierCode, PackQuantity = supply.PackQuantity, SmallestQuantity = supply.SmallestQuantity,
            UnitCost = supply.UnitCost, DeliveryDays = supply.DeliveryDays, Preferred = supply.Preferred,
        }
        : new AddSupply.Request { PackQuantity = 1 };

    private void FillLevel() => Level = new SetOrdering.Request
    {
        Stocked = Found.Stocked, ServiceLevel = (decimal?)Found.ServiceLevel, ReorderPoint = Found.ReorderPoint,
    };
}
