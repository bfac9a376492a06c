using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>Currency, labour rate and tax rates: what every estimate rests on.</summary>
public sealed class PricesModel : WorkshopPage
{
    private const string Here = "/people/prices";

    [BindProperty]
    public EditMoney.Request Input { get; set; } = new();

    [BindProperty]
    public AddTaxRate.Request Add { get; set; } = new();

    [BindProperty]
    public EditTaxRate.Request Rate { get; set; } = new();

    public GetMoney.Answer Found { get; private set; } = null!;

    public bool MayManage { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Manages)
        ? await Write(Input, EditMoney.Handle, _ => Saved("Saved."), Show)
        : Forbid();

    public async Task<IActionResult> OnPostAdd() => await May(Policies.Manages)
        ? await Write(Add, AddTaxRate.Handle, added => Saved($"{added.Code} holds from {Days.Write(added.ValidFrom)} on."), Show, prefix: nameof(Add))
        : Forbid();

    public async Task<IActionResult> OnPostRate(string? code, string? validFrom, uint? version) => await May(Policies.Manages)
        ? await Write(
            Rate with { Code = code, ValidFrom = Days.TryRead(validFrom ?? "", out var day) ? day : null, RowVersion = version },
            EditTaxRate.Handle,
            done => Saved(done.Removed ? $"{done.Code} from {Days.Write(done.ValidFrom)} is removed." : "Corrected."),
            Show,
            prefix: nameof(Rate))
        : Forbid();

    private RedirectResult Saved(string done)
    {
        Done = done;
        return Redirect(Here);
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetMoney.Request(), GetMoney.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        (Found, MayManage) = (found, await May(Policies.Manages));
        if (Input.Currency is null && !ModelState.ContainsKey("Input.Currency"))
        {
            Input = new EditMoney.Request { Currency = found.Currency, LabourNetPerHour = found.LabourNetPerHour, UsualTax = found.UsualTax };
        }

        return Page();
    }
}
