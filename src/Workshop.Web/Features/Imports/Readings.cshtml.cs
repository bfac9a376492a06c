using Microsoft.AspNetCore.Mvc;

namespace Workshop.Web.Features.Imports;

public sealed class ReadingsModel : FilePage
{
    [BindProperty]
    public ImportReadings.Request Input { get; set; } = new();

    /// <summary>What a dry run found.</summary>
    public ImportReadings.Answer? Found { get; private set; }

    protected override IReadOnlyList<string> Columns => WorksheetColumn.All;

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPost()
    {
        var (csv, fileName) = await Chosen(Input);
        return await Write(
            Input with { Csv = csv, FileName = fileName },
            ImportReadings.Handle,
            answer =>
            {
                if (answer.DryRun)
                {
                    Found = answer;
                    return Again();
                }

                Done = $"{answer.Readings} readings and {answer.Shims} shims of {answer.Motorcycles} motorcycles are in the books.";
                return Redirect("/drift");
            },
            again: () => Task.FromResult<IActionResult>(Again()));
    }
}
