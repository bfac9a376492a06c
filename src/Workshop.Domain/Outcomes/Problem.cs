namespace Workshop.Domain.Outcomes;

/// <summary>How a refusal is answered over HTTP; the one place that turns it into a status is Workshop.Web/Http.</summary>
public enum ProblemKind
{
    /// <summary>What the request names does not exist.</summary>
    NotFound,

    /// <summary>The state of things stands against it: taken, signed off, changed meanwhile.</summary>
    Conflict,

    /// <summary>A value is well formed but not possible here: a valve that the engine lacks, an odometer that runs backwards.</summary>
    Impossible,

    /// <summary>The person may not do it.</summary>
    Forbidden,

    /// <summary>A value is missing or not of the form asked for; said by validators before a use case is reached.</summary>
    Malformed,

    /// <summary>The row was changed by somebody else since the caller read it.</summary>
    Stale,

    /// <summary>A change must say which version of the row it was made from.</summary>
    VersionMissing,

    /// <summary>An idempotency key came back with another request.</summary>
    KeyReused,
}

/// <summary>One field at fault: its name as the caller wrote it, and a sentence with the value and what is allowed.</summary>
public sealed record FieldFault(string Field, string Sentence)
{
    /// <summary>The same for a page, where the sentence lists words of the API: there the words that stand on the screen.</summary>
    public string? OnPage { get; init; }
}

/// <summary>A refusal, said in a sentence that a person at the counter can act on.</summary>
/// <param name="Kind">How it is answered over HTTP.</param>
/// <param name="Code">A stable word for programs, in kebab case: <c>bay-taken</c>.</param>
/// <param name="Sentence">What is wrong and what would be allowed.</param>
public sealed record Problem(ProblemKind Kind, string Code, string Sentence)
{
    /// <summary>The fields at fault, where the refusal is about what was typed.</summary>
    public IReadOnlyList<FieldFault> Faults { get; init; } = [];

    /// <summary>Further members of the answer for programs (RFC 9457, section 3.2), such as what is free instead.</summary>
    public IReadOnlyDictionary<string, object?> Extras { get; init; } = new Dictionary<string, object?>();

    public static Problem Malformed(IReadOnlyList<FieldFault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        return new(ProblemKind.Malformed, "malformed", string.Join(" ", faults.Select(f => f.Sentence))) { Faults = faults };
    }

    public static Problem NotFound(string what) => new(ProblemKind.NotFound, "not-found", $"{what} does not exist.");

    public static Problem Conflict(string code, string sentence) => new(ProblemKind.Conflict, code, sentence);

    public static Problem Impossible(string code, string field, string sentence) =>
        new(ProblemKind.Impossible, code, sentence) { Faults = [new FieldFault(field, sentence)] };

    public static Problem Impossible(string code, IReadOnlyList<FieldFault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        return new(ProblemKind.Impossible, code, string.Join(" ", faults.Select(f => f.Sentence))) { Faults = faults };
    }
}
