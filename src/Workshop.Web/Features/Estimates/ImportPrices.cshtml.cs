using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Features.Imports;

namespace Workshop.Web.Features.Estimates;

public sealed class ImportPricesModel : FilePage
{
    [BindProperty]
    public ImportPartPrices.Request Input { get; set; } = new();

    /// <summary>What a dry run found.</summary>
    public ImportPartPrices.Answer? Found { get; private set; }

    protected override IReadOnlyList<string> Columns => ImportPartPrices.Columns.All;

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPost()
    {
        var (csv, fileName) = await Chosen(Input);
        return await Write(
            Input with { Csv = csv, FileName = fileName },
            ImportPartPrices.Handle,
            answer =>
            {
                if (answer.DryRun)
                {
                    Found = answer;
                    return Again();
                }

                Done = $"{answer.Changes.Count} prices are changed, {answer.Unchanged} stood already.";
                return Redirect("/stores/prices");
            },
            again: () => Task.FromResult<IActionResult>(Again()));
    }
}
