using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

public sealed class NewModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    [BindProperty]
    public AddInstrument.Request Input { get; set; } = new();

    public InstrumentKind KindOf => Input.Kind ?? Words.Read<InstrumentKind>(Kind) ?? InstrumentKind.TorqueWrench;

    public IActionResult OnGet() => Page();

    public Task<IActionResult> OnPost() => Write(
        Input,
        AddInstrument.Handle,
        added =>
        {
            Done = $"{Input.Name} is entered. Record its calibration next.";
            return Redirect($"/tooling/instruments/{added.Id}");
        },
        again: () => Task.FromResult<IActionResult>(Page()));
}
