using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

public sealed class AdaptersModel : WorkshopPage
{
    [BindProperty]
    public AddAdapter.Request Input { get; set; } = new();

    public IReadOnlyList<ListAdapters.Row> Adapters { get; private set; } = [];

    public bool MayManage { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Manages)
        ? await Write(
            Input,
            AddAdapter.Handle,
            _ =>
            {
                Done = $"{Input.Name} is entered.";
                return Redirect("/tooling/adapters");
            },
            again: Show)
        : Forbid();

    private async Task<IActionResult> Show()
    {
        Adapters = (await Read(new ListAdapters.Request(), ListAdapters.Handle)).Value.Adapters;
        MayManage = await May(Policies.Manages);
        return Page();
    }
}
