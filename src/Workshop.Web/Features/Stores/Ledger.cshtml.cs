using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>All that happened to a part, page by page.</summary>
public sealed class LedgerModel(WorkshopDbContext db) : StoresPage(db)
{
    [BindProperty(SupportsGet = true)]
    public string Code { get; set; } = "";

    [BindProperty(SupportsGet = true)]
    public Guid? After { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    public LedgerView Ledger { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListLedger.Request(Code, After, Kind: Kind), ListLedger.Handle)).TryGet(out var ledger, out var problem))
        {
            return Refused(problem);
        }

        await Begin();
        Ledger = new LedgerView(ledger, Time);
        return Page();
    }
}
