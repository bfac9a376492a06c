using Workshop.Domain.Outcomes;

namespace Workshop.Domain;

/// <summary>
/// What is done again gets a new row that supersedes the one before, with who, when and why; the last attempt counts. Rows are
/// only ever added.
/// </summary>
public interface IAttempt
{
    Guid Id { get; }

    /// <summary>1 for the first of its kind at the visit, and so on.</summary>
    int Attempt { get; }
}

/// <summary>Which attempt counts, which comes next, and that it says why.</summary>
public static class Attempts
{
    /// <summary>Of attempts at one thing the one that counts; nothing where there is none.</summary>
    public static T? Last<T>(IEnumerable<T> atOneThing)
        where T : class, IAttempt => atOneThing.MaxBy(a => a.Attempt);

    /// <summary>Of attempts at several things those that count, one of each.</summary>
    /// <param name="attempts">At whatever.</param>
    /// <param name="thing">At which thing an attempt is.</param>
    public static IEnumerable<T> LastOfEach<T, TThing>(IEnumerable<T> attempts, Func<T, TThing> thing)
        where T : class, IAttempt => attempts.GroupBy(thing).Select(g => Last(g)!);

    /// <summary>The number of the attempt that comes after one; 1 where there is none.</summary>
    public static int After(IAttempt? last) => (last?.Attempt ?? 0) + 1;

    /// <summary>Nothing where all is entered for the first time, or a reason is given; else what is asked for.</summary>
    /// <param name="reason">As typed.</param>
    /// <param name="again">What of a send was entered before, in words.</param>
    public static FieldFault? FaultOfReason(string? reason, IEnumerable<string> again)
    {
        var named = string.Join(", ", again.Distinct());
        return named.Length == 0 || !string.IsNullOrWhiteSpace(reason) ? null : new FieldFault("reason", $"reason is empty: say why {named} is entered again.");
    }
}
