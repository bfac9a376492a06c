using System.Diagnostics.CodeAnalysis;

namespace Workshop.Domain.Outcomes;

/// <summary>
/// What a use case answers: a value, or the reason why the state of things refuses it. Bad shape never gets this far
/// (the validator stops it); a bug throws.
/// </summary>
public readonly struct Outcome<T>
{
    private readonly T? value;

    private Outcome(T value) => this.value = value;

    private Outcome(Problem problem) => Problem = problem;

    public Problem? Problem { get; }

    public bool IsRefused => Problem is not null;

    /// <exception cref="InvalidOperationException">The outcome is a refusal.</exception>
    public T Value => Problem is null ? value! : throw new InvalidOperationException(Problem.Sentence);

    public bool TryGet([MaybeNullWhen(false)] out T got, [NotNullWhen(false)] out Problem? problem)
    {
        got = value;
        problem = Problem;
        return problem is null;
    }

    /// <summary>Goes on with the value, or carries the refusal through.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return Problem is null ? next(value!) : Problem;
    }

    public static implicit operator Outcome<T>(T value) => new(value);

    public static implicit operator Outcome<T>(Problem problem) => new(problem);

#pragma warning disable CA1000 // Named twins of the operators, as the analyser asks for, belong on the type itself.
    public static Outcome<T> FromT(T value) => value;

    public static Outcome<T> FromProblem(Problem problem) => problem;
#pragma warning restore CA1000
}
