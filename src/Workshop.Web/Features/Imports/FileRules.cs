using FluentValidation;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>A file that is taken over.</summary>
public interface IFileRequest
{
    /// <summary>Where the text comes from.</summary>
    string? FileName { get; }

    /// <summary>The whole text.</summary>
    string? Csv { get; }

    /// <summary>Decide and answer, but write nothing.</summary>
    bool DryRun { get; }
}

/// <summary>What every file must be before its lines are looked at.</summary>
internal static class FileRules
{
    /// <summary>Characters; some hundred thousand lines would fit, of which <see cref="CsvLines.Most"/> are taken.</summary>
    public const int LongestFile = 4_000_000;

    private const string PastedText = "pasted text";

    public static void AddFileRules<T>(this AbstractValidator<T> validator, string what)
        where T : IFileRequest
    {
        validator.RuleFor(r => r.FileName).IsAtMost(Limits.Name)
            .Must(n => n is null || !n.Any(char.IsControl)).WithMessage("{PropertyName} holds a control character.");
        validator.RuleFor(r => r.Csv).Cascade(CascadeMode.Stop).IsGiven(what)
            .Must(c => c!.Length <= LongestFile)
            .WithMessage((_, c) => $"{{PropertyName}} has {c!.Length} characters: at most {LongestFile} are allowed; split the file.")
            .Must(c => !c!.Contains('\0', StringComparison.Ordinal) && !c.Contains('\uFFFD', StringComparison.Ordinal))
            .WithMessage("{PropertyName} is not UTF-8 text: save it as CSV in UTF-8.");
    }

    public static string NameOf(IFileRequest request) =>
        string.IsNullOrWhiteSpace(request.FileName) ? PastedText : request.FileName.Trim();
}
