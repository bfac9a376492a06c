using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

public sealed class ReadingsModel : WorkshopPage
{
    /// <summary>Faults and visits shown; the API answers all of them.</summary>
    public const int MostShown = 100;

    private const int MostFaults = 10 * WorksheetFile.MostLines;
    private const string LineKey = "Input.line ";

    /// <summary>A text longer than this is not sent back in the form: the page stays small, the file is chosen again.</summary>
    public const int LongestKept = 40_000;

    [BindProperty]
    public ImportReadings.Request Input { get; set; } = new();

    [BindProperty]
    public IFormFile? Upload { get; set; }

    /// <summary>What a dry run found.</summary>
    public ImportReadings.Answer? Found { get; private set; }

    public IReadOnlyList<string> LineFaults { get; private set; } = [];

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPost()
    {
        // A form has a handful of fields, a file thousands of lines.
        ModelState.MaxAllowedErrors = MostFaults;
        if (Upload is { Length: > 0 } file)
        {
            using var reader = new StreamReader(file.OpenReadStream(), Encoding.UTF8);
            Input = Input with { Csv = await reader.ReadToEndAsync(HttpContext.RequestAborted), FileName = Path.GetFileName(file.FileName) };
        }

        return await Write(
            Input,
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

    /// <summary>The form as it was sent, so that "import" after "check" sends the same text.</summary>
    private PageResult Again()
    {
        var ofLines = ModelState.Where(e => e.Key.StartsWith(LineKey, StringComparison.Ordinal)).ToList();
        LineFaults = [.. ofLines.OrderBy(e => PlaceOf(e.Key)).SelectMany(e => e.Value!.Errors).Select(e => e.ErrorMessage)];
        ofLines.ForEach(e => ModelState.Remove(e.Key));

        if (LineFaults.Count > 0)
        {
            ModelState.AddModelError("", $"{LineFaults.Count} faults in the file; each is listed below.");
        }

        if (Input.Csv?.Length > LongestKept)
        {
            Input = Input with { Csv = null };
        }

        // What the fields show is the text that was judged, not what the browser sent beside a file.
        ModelState.SetModelValue("Input.Csv", Input.Csv, Input.Csv);
        ModelState.SetModelValue("Input.FileName", Input.FileName, Input.FileName);
        return Page();
    }

    /// <summary>The form's faults have no order; the file's have: "Input.line 7, no-go".</summary>
    private static (int Line, int Column) PlaceOf(string key) =>
        key[LineKey.Length..].Split(", ", 2) is [var line, var column]
            ? (int.Parse(line, CultureInfo.InvariantCulture), WorksheetColumn.All.TakeWhile(c => c != column).Count())
            : default;
}
