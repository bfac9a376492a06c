using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Features.EngineModels.Editing;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

public sealed class NewModel : WorkshopPage
{
    [BindProperty]
    public StartEngineModel.Request Input { get; set; } = new();

    public IReadOnlyList<ListEngineModels.Row> Known { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input,
        StartEngineModel.Handle,
        kept =>
        {
            Done = "The draft is begun.";
            return Redirect($"/engine-models/{kept.Id}/edit");
        },
        again: Show);

    private async Task<IActionResult> Show()
    {
        Known = (await Read(new ListEngineModels.Request(Take: Slice.Largest), ListEngineModels.Handle)).Value.Rows;
        return Page();
    }
}
