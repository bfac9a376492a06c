using Microsoft.AspNetCore.Mvc;

namespace Workshop.Web.Features.Imports;

public sealed class HistoryModel : FilePage
{
    [BindProperty]
    public ImportHistory.Request Input { get; set; } = new();

    /// <summary>What a dry run found.</summary>
    public ImportHistory.Answer? Found { get; private set; }

    protected override IReadOnlyList<string> Columns => HistoryColumn.All;

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPost()
    {
        var (csv, fileName) = await Chosen(Input);
        return await Write(
            Input with { Csv = csv, FileName = fileName },
            ImportHistory.Handle,
            answer =>
            {
                if (answer.DryRun)
                {
                    Found = answer;
                    return Again();
                }

                Done = answer.AlreadyImported
                    ? "The same file was taken over before: nothing was written twice."
                    : $"{answer.DoneItems} items of {answer.Motorcycles} motorcycles are in the books.";
                return Redirect("/motorcycles");
            },
            again: () => Task.FromResult<IActionResult>(Again()));
    }
}
