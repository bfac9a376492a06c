using Microsoft.AspNetCore.Mvc.ModelBinding;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>The one place that turns a refusal into problem details (RFC 9457) or into the errors of a form.</summary>
public static class ProblemAnswers
{
    /// <summary>Where a page leaves the refusal for the error page to show.</summary>
    public static readonly object ItemKey = new();

    // A person cannot draw a key; the form that comes back holds a new one.
    private const string SentOnce =
        "This form was sent once already, with other values, and what was written then stands. Look whether it is right; send this again only if it is meant in addition.";

    public static readonly IReadOnlyList<int> Statuses =
        [.. Enum.GetValues<ProblemKind>().Select(StatusOf).Append(StatusCodes.Status401Unauthorized).Distinct().Order()];

    public static int StatusOf(ProblemKind kind) => kind switch
    {
        ProblemKind.NotFound => StatusCodes.Status404NotFound,
        ProblemKind.Conflict => StatusCodes.Status409Conflict,
        ProblemKind.Impossible or ProblemKind.KeyReused => StatusCodes.Status422UnprocessableEntity,
        ProblemKind.Forbidden => StatusCodes.Status403Forbidden,
        ProblemKind.Malformed => StatusCodes.Status400BadRequest,
        ProblemKind.Stale => StatusCodes.Status412PreconditionFailed,
        ProblemKind.VersionMissing => StatusCodes.Status428PreconditionRequired,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public static IResult Of(Problem problem, HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(http);
        var extensions = new Dictionary<string, object?>
        {
            ["code"] = problem.Code,
            ["requestId"] = http.TraceIdentifier,
        };
        foreach (var (name, value) in problem.Extras)
        {
            extensions[name] = value;
        }

        if (problem.Faults.Count > 0)
        {
            extensions["errors"] = problem.Faults
                .GroupBy(f => f.Field)
                .ToDictionary(g => g.Key, g => g.Select(f => f.Sentence).ToArray());
        }

        return TypedResults.Problem(
            detail: problem.Sentence, statusCode: StatusOf(problem.Kind), extensions: extensions);
    }

    /// <summary>Puts a refusal beside the fields of a form, or on top of it where no field is at fault.</summary>
    public static void AddTo(this Problem problem, ModelStateDictionary form, string prefix = "Input")
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(form);
        if (problem.Faults.Count == 0)
        {
            form.AddModelError("", problem.Kind == ProblemKind.KeyReused ? SentOnce : problem.Sentence);
        }

        foreach (var fault in problem.Faults)
        {
            form.AddModelError(prefix.Length == 0 ? fault.Field : $"{prefix}.{fault.Field}", fault.OnPage ?? fault.Sentence);
        }
    }
}
