using Google.OrTools.Graph;

namespace Workshop.Domain.Statistics;

/// <summary>One way in which a row may be served.</summary>
/// <param name="Row">From 0.</param>
/// <param name="Column">From 0.</param>
/// <param name="Cost">A whole number, so that sums are exact; may be negative.</param>
public readonly record struct AssignmentChoice(int Row, int Column, long Cost);

/// <summary>Who got what.</summary>
/// <param name="ColumnOfRow">One column for every row.</param>
/// <param name="Cost">The sum, which no other assignment undercuts.</param>
public sealed record Assignment(IReadOnlyList<int> ColumnOfRow, long Cost);

/// <summary>
/// The cheapest way to give every row one column, where a column serves as many rows as its capacity: the assignment problem,
/// solved exactly as a minimum-cost flow (source, rows, columns, sink) by the cost-scaling push-relabel method of
/// Google.OrTools. Whole-number costs and a whole-number optimum: nothing is rounded. The same input gives the same answer.
/// </summary>
public static class MinimumCostAssignment
{
    /// <summary>The optimum; nothing where the rows cannot all be served.</summary>
    /// <param name="rows">How many rows; each gets exactly one column.</param>
    /// <param name="capacities">Per column: how many rows it may serve; not negative.</param>
    /// <param name="choices">What is allowed; a row and column that are not listed do not go together.</param>
    /// <exception cref="ArgumentException">
    /// A row, column or capacity out of range, or costs so large that the solver's own arithmetic, which multiplies them by the
    /// number of nodes, could overflow: 2e18 divided by the number of rows and columns is allowed.
    /// </exception>
    public static Assignment? Solve(int rows, IReadOnlyList<int> capacities, IReadOnlyList<AssignmentChoice> choices)
    {
        ArgumentNullException.ThrowIfNull(capacities);
        ArgumentNullException.ThrowIfNull(choices);
        ArgumentOutOfRangeException.ThrowIfNegative(rows);
        if (rows == 0)
        {
            return new Assignment([], 0);
        }

        var (source, sink) = (rows + capacities.Count, rows + capacities.Count + 1);
        var largest = long.MaxValue / (4L * (sink + 2));
        using var flow = new MinCostFlow(sink + 1, choices.Count + rows + capacities.Count);
        foreach (var choice in choices)
        {
            if (choice.Row < 0 || choice.Row >= rows || choice.Column < 0 || choice.Column >= capacities.Count)
            {
                throw new ArgumentException($"Row {choice.Row} and column {choice.Column}: there are {rows} rows and {capacities.Count} columns.", nameof(choices));
            }

            if (choice.Cost > largest || choice.Cost < -largest)
            {
                throw new ArgumentException($"A cost of {choice.Cost}: at most {largest} is allowed for so many rows and columns.", nameof(choices));
            }

            flow.AddArcWithCapacityAndUnitCost(choice.Row, rows + choice.Column, 1, choice.Cost);
        }

        for (var row = 0; row < rows; row++)
        {
            flow.AddArcWithCapacityAndUnitCost(source, row, 1, 0);
        }

        for (var column = 0; column < capacities.Count; column++)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(capacities[column], nameof(capacities));
            flow.AddArcWithCapacityAndUnitCost(rows + column, sink, Math.Min(capacities[column], rows), 0);
        }

        flow.SetNodeSupply(source, rows);
        flow.SetNodeSupply(sink, -rows);
        return flow.Solve() switch
        {
            MinCostFlowBase.Status.OPTIMAL => Read(flow, rows, choices),
            MinCostFlowBase.Status.INFEASIBLE => null,
            var status => throw new ArgumentException($"The solver answers {status}: costs or capacities are out of its range.", nameof(choices)),
        };
    }

    private static Assignment Read(MinCostFlow flow, int rows, IReadOnlyList<AssignmentChoice> choices)
    {
        var columns = new int[rows];
        for (var arc = 0; arc < choices.Count; arc++)
        {
            if (flow.Flow(arc) > 0)
            {
                columns[choices[arc].Row] = choices[arc].Column;
            }
        }

        return new Assignment(columns, flow.OptimalCost());
    }
}
