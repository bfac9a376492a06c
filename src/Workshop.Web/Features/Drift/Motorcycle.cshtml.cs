using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

public sealed class MotorcycleModel : WorkshopPage
{
    /// <summary>The word in the address for the picture with the shims' part taken out.</summary>
    public const string ShimsOut = "shims-out";

    [BindProperty(SupportsGet = true)]
    public Guid MotorcycleId { get; set; }

    [BindProperty(SupportsGet = true, Name = "view")]
    public string? View { get; set; }

    public GetDrift.Answer Drift { get; private set; } = null!;

    public DriftView Shown => View == ShimsOut ? DriftView.ShimsOut : DriftView.AsMeasured;

    public async Task<IActionResult> OnGet()
    {
        var outcome = await Read(new GetDrift.Request(MotorcycleId), GetDrift.Handle);
        if (!outcome.TryGet(out var drift, out var problem))
        {
            return Refused(problem);
        }

        Drift = drift;
        return Page();
    }
}
