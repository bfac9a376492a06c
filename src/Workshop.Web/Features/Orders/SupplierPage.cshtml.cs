using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>One supplier, what it sells, and the form that changes or retires it.</summary>
public sealed class SupplierPageModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid SupplierId { get; set; }

    [BindProperty]
    public EditSupplier.Request Input { get; set; } = new();

    public GetSupplier.Answer Found { get; private set; } = null!;

    public bool MayOrder { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        var shown = await Show();
        if (Found is { } found)
        {
            Input = new EditSupplier.Request
            {
                Name = found.Name, Email = found.Email, CustomerNumber = found.CustomerNumber, DeliveryDays = found.DeliveryDays,
                DeliveryDaysSd = (decimal)found.DeliveryDaysSd, SmallestOrder = found.SmallestOrder, Retired = found.Retired,
            };
        }

        return shown;
    }

    public async Task<IActionResult> OnPost() => await May(Policies.Orders)
        ? await Write(
            Input with { Id = SupplierId },
            EditSupplier.Handle,
            _ =>
            {
                Done = "Saved.";
                return Redirect($"/stores/suppliers/{SupplierId}");
            },
            again: Show)
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetSupplier.Request(SupplierId), GetSupplier.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        (Found, MayOrder) = (found, await May(Policies.Orders));
        return Page();
    }
}
