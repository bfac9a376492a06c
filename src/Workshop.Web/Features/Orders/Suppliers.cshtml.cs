using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>Who sells parts to the workshop.</summary>
public sealed class SuppliersModel : WorkshopPage
{
    [BindProperty]
    public AddSupplier.Request Input { get; set; } = new();

    public ListSuppliers.Answer Found { get; private set; } = null!;

    public bool MayOrder { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Orders)
        ? await Write(
            Input,
            AddSupplier.Handle,
            added =>
            {
                Done = $"{Input.Name} is in the books; say of the parts which of them it sells.";
                return Redirect($"/stores/suppliers/{added.Id}");
            },
            again: Show)
        : Forbid();

    private async Task<IActionResult> Show()
    {
        Found = (await Read(new ListSuppliers.Request(), ListSuppliers.Handle)).Value;
        MayOrder = await May(Policies.Orders);
        return Page();
    }
}
