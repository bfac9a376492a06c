using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

public sealed class PartPricesModel : WorkshopPage
{
    private const int OnAPage = 25;

    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool Missing { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    [BindProperty]
    public SetPartPrice.Request Input { get; set; } = new();

    public IReadOnlyList<ListPartPrices.Row> Rows { get; private set; } = [];

    public string? Next { get; private set; }

    public GetMoney.Answer Money { get; private set; } = null!;

    public IEnumerable<string> TaxCodes => Money.TaxRates.Select(r => r.Code).Distinct();

    public bool MayManage { get; private set; }

    public string? TypedPrice => ModelState["Input.NetPrice"]?.AttemptedValue;

    private string? TypedCode { get; set; }

    /// <summary>Whether the row is the one whose form came back.</summary>
    public bool IsTyped(string code) => !ModelState.IsValid && code == TypedCode;

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost(string? code, uint? version)
    {
        TypedCode = code;
        return await May(Policies.Manages)
            ? await Write(
                Input with { Code = code, RowVersion = version },
                SetPartPrice.Handle,
                saved =>
                {
                    Done = $"The price of {saved.Code} is saved.";
                    return Redirect(
                        $"/stores/prices?search={Uri.EscapeDataString(Search ?? "")}&missing={(Missing ? "true" : "false")}&after={Uri.EscapeDataString(After ?? "")}");
                },
                Show)
            : Forbid();
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new ListPartPrices.Request(Search, Missing, After, OnAPage), ListPartPrices.Handle)).TryGet(out var rows, out var problem)
            || !(await Read(new GetMoney.Request(), GetMoney.Handle)).TryGet(out var money, out problem))
        {
            return Refused(problem);
        }

        (Rows, Next, Money, MayManage) = (rows.Rows, rows.Next, money, await May(Policies.Manages));
        return Page();
    }
}
