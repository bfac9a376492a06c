using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

public sealed class ThreadsModel : WorkshopPage
{
    [BindProperty(SupportsGet = true, Name = "")]
    public CheckThread.Request Asked { get; set; } = new();

    /// <summary>Absent until something is asked, and where what was asked is refused.</summary>
    public TorqueView? Judged { get; private set; }

    public string? TypedTorque => Typed("torqueNm");

    public string? TypedEngagement => Typed("engagementMm");

    public string? TypedStrength => Typed("shearStrengthMpa");

    public async Task<IActionResult> OnGet()
    {
        if (Request.Query.Count > 0)
        {
            Judged = await Ask(Asked, CheckThread.Handle);
        }

        return Page();
    }

    private string? Typed(string field) => Request.Query[field];
}
