using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>What the pages that take a file over do alike: a file or its text, checked first and then imported as it stands.</summary>
public abstract class FilePage : WorkshopPage
{
    /// <summary>Faults and days shown; the API answers all of them.</summary>
    public const int MostShown = 100;

    /// <summary>A text longer than this is not sent back in the form: the page stays small, the file is chosen again.</summary>
    public const int LongestKept = 40_000;

    private const int MostFaults = 10 * CsvLines.Most;
    private const string LineKey = "Input.line ";

    [BindProperty]
    public IFormFile? Upload { get; set; }

    public IReadOnlyList<string> LineFaults { get; private set; } = [];

    /// <summary>The text is too long to be sent back.</summary>
    public bool ChooseAgain { get; private set; }

    /// <summary>What is shown in the form: the text that was judged.</summary>
    public string? Csv { get; private set; }

    public string? FileName { get; private set; }

    protected abstract IReadOnlyList<string> Columns { get; }

    /// <summary>The file's text and name; what was typed where no file was chosen.</summary>
    protected async Task<(string? Csv, string? FileName)> Chosen(IFileRequest typed)
    {
        ArgumentNullException.ThrowIfNull(typed);

        // A form has a handful of fields, a file thousands of lines.
        ModelState.MaxAllowedErrors = MostFaults;
        (Csv, FileName) = (typed.Csv, typed.FileName);
        if (Upload is { Length: > 0 } file)
        {
            using var reader = new StreamReader(file.OpenReadStream(), Encoding.UTF8);
            (Csv, FileName) = (await reader.ReadToEndAsync(HttpContext.RequestAborted), Path.GetFileName(file.FileName));
        }

        return (Csv, FileName);
    }

    /// <summary>The form as it was sent, so that "import" after "check" sends the same text.</summary>
    protected PageResult Again()
    {
        var ofLines = ModelState.Where(e => e.Key.StartsWith(LineKey, StringComparison.Ordinal)).ToList();
        LineFaults = [.. ofLines.OrderBy(e => PlaceOf(e.Key)).SelectMany(e => e.Value!.Errors).Select(e => e.ErrorMessage)];
        ofLines.ForEach(e => ModelState.Remove(e.Key));

        if (LineFaults.Count > 0)
        {
            ModelState.AddModelError("", $"{LineFaults.Count} faults in the file; each is listed below.");
        }

        if (Csv?.Length > LongestKept)
        {
            (Csv, ChooseAgain) = (null, true);
        }

        return Page();
    }

    /// <summary>The form's faults have no order; the file's have: "Input.line 7, no-go".</summary>
    private (int Line, int Column) PlaceOf(string key) =>
        key[LineKey.Length..].Split(", ", 2) is [var line, var column]
            ? (int.Parse(line, CultureInfo.InvariantCulture), Columns.TakeWhile(c => c != column).Count())
            : default;
}
