using Microsoft.AspNetCore.Mvc;

namespace Workshop.Web.Features.Imports;

public sealed class GoodsInModel : FilePage
{
    [BindProperty]
    public ImportGoodsIn.Request Input { get; set; } = new();

    /// <summary>What a dry run found.</summary>
    public ImportGoodsIn.Answer? Found { get; private set; }

    protected override IReadOnlyList<string> Columns => GoodsInColumn.All;

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPost()
    {
        var (csv, fileName) = await Chosen(Input);
        return await Write(
            Input with { Csv = csv, FileName = fileName },
            ImportGoodsIn.Handle,
            answer =>
            {
                if (answer.DryRun)
                {
                    Found = answer;
                    return Again();
                }

                Done = answer.AlreadyImported
                    ? "The same file was taken over before: nothing was taken in twice."
                    : $"{answer.Lines} lines of goods are in the stores.";
                return Redirect("/stores");
            },
            again: () => Task.FromResult<IActionResult>(Again()));
    }
}
