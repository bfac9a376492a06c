using Workshop.Domain.Outcomes;

namespace Workshop.Web.Features.Imports;

/// <summary>The faults of a file, each with its line and column; nothing is written while there is one.</summary>
/// <param name="columns">Of the file, in the order in which they are documented.</param>
/// <param name="code">Of the problem, for programs.</param>
internal sealed class FileFaults(IReadOnlyList<string> columns, string code)
{
    private readonly List<(int Line, int Column, FieldFault Fault)> faults = [];

    public bool None => faults.Count == 0;

    /// <summary>Where a fault of a whole line is named.</summary>
    public string FirstColumn => columns[0];

    public void Add(int line, string column, string sentence)
    {
        var order = columns.ToList().IndexOf(column);
        faults.Add((line, order, new FieldFault(At(line, column), $"Line {line}, {column}: {sentence}")));
    }

    /// <summary>A refusal by a rule that is shared with what is typed: its sentence begins with a small "it is".</summary>
    public void Add(int line, string column, Problem problem)
    {
        foreach (var fault in problem.Faults)
        {
            Add(line, columns.Contains(fault.Field) ? fault.Field : column, char.ToUpperInvariant(fault.Sentence[0]) + fault.Sentence[1..]);
        }
    }

    /// <summary>How a fault names a place: "line 7, no-go".</summary>
    public static string At(int line, string column) => $"line {line}, {column}";

    /// <summary>All of them in order of the file.</summary>
    public Problem ToProblem()
    {
        var inOrder = faults.OrderBy(f => f.Line).ThenBy(f => f.Column).Select(f => f.Fault).ToList();
        var lines = faults.Select(f => f.Line).Distinct().Count();
        return new Problem(ProblemKind.Impossible, code,
            $"{Count(inOrder.Count, "fault")} in {Count(lines, "line")}; nothing was written. {inOrder[0].Sentence}")
        {
            Faults = inOrder,
        };
    }

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";
}
