using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class MinimumCostAssignmentTests
{
    /// <summary>Published instances; the costs of the optimum are compared, since equal optima may be assigned differently.</summary>
    public static TheoryData<string, long[][], long> Published => new()
    {
        { "SciPy documentation of linear_sum_assignment; value from memory, agrees with R's clue", [[4, 1, 3], [2, 0, 5], [3, 2, 2]], 5 },
        {
            "OR-Tools documentation, Linear Sum Assignment Solver; seen",
            [[90, 76, 75, 70], [35, 85, 55, 65], [125, 95, 90, 105], [45, 110, 95, 115]], 265
        },
        {
            "OR-Tools documentation, Solving an Assignment Problem, five workers for four tasks, here a row per task; seen",
            [[90, 35, 125, 45, 50], [80, 85, 95, 110, 100], [75, 55, 90, 95, 90], [70, 65, 95, 115, 100]], 265
        },
        {
            "a teaching example of the Hungarian method; from memory, agrees with R's clue",
            [[82, 83, 69, 92], [77, 37, 49, 92], [11, 69, 5, 86], [8, 9, 98, 23]], 140
        },
        { "SciPy test suite; from memory, agrees with R's clue", [[400, 150, 400], [400, 450, 600], [300, 225, 300]], 850 },
        { "SciPy test suite, three rows of four; from memory, agrees with R's clue", [[400, 150, 400, 1], [400, 450, 600, 2], [300, 225, 300, 3]], 452 },
        { "SciPy test suite; from memory, agrees with R's clue", [[10, 10, 8], [9, 8, 1], [9, 7, 4]], 18 },
        { "documentation of the solver collection solvOR; seen", [[10, 5, 13], [3, 9, 18], [10, 6, 12]], 20 },
        {
            "Project Euler 345, the example of its text: the largest sum is 3315; seen in a public test suite. Costs are the negatives",
            [
                [-7, -53, -183, -439, -863], [-497, -383, -563, -79, -973], [-287, -63, -343, -169, -583],
                [-627, -343, -773, -959, -943], [-767, -473, -103, -699, -303],
            ],
            -3315
        },
    };

    [Theory]
    [MemberData(nameof(Published))]
    public void Published_instances_come_out_at_their_published_optimum(string source, long[][] costs, long optimum)
    {
        var assignment = Solve(costs)!;

        Assert.NotEmpty(source);
        Assert.Equal(optimum, assignment.Cost);
        Assert.Equal(optimum, assignment.ColumnOfRow.Select((column, row) => costs[row][column]).Sum());
        Assert.Equal(costs.Length, assignment.ColumnOfRow.Distinct().Count());
    }

    [Fact]
    public void Small_random_instances_cost_what_trying_every_assignment_costs()
    {
        var random = new RandomSource(31);
        for (var trial = 0; trial < 300; trial++)
        {
            var (rows, columns) = (random.WholeNumber(1, 5), 0);
            columns = rows + random.WholeNumber(0, 2);
            var costs = Enumerable.Range(0, rows).Select(_ => Enumerable.Range(0, columns).Select(_ => (long)random.WholeNumber(-9, 9)).ToArray()).ToArray();

            Assert.Equal(Cheapest(costs, 0, []), Solve(costs)!.Cost);
        }
    }

    [Fact]
    public void A_column_serves_as_many_rows_as_its_capacity()
    {
        AssignmentChoice[] choices = [new(0, 0, 1), new(1, 0, 1), new(2, 0, 1), new(0, 1, 5), new(1, 1, 6), new(2, 1, 9)];

        var assignment = MinimumCostAssignment.Solve(3, [2, 1], choices)!;

        Assert.Equal([1, 0, 0], assignment.ColumnOfRow);
        Assert.Equal(7, assignment.Cost);
    }

    [Fact]
    public void Rows_that_cannot_all_be_served_have_no_assignment() =>
        Assert.Null(MinimumCostAssignment.Solve(2, [1, 5], [new(0, 0, 1), new(1, 0, 1)]));

    [Fact]
    public void Nothing_to_assign_costs_nothing() => Assert.Equal(0, MinimumCostAssignment.Solve(0, [1], [])!.Cost);

    /// <summary>Costs near the end of 64 bits are refused instead of wrapping round; just below it sums are still exact.</summary>
    [Fact]
    public void Costs_that_could_overflow_are_refused()
    {
        const long largest = long.MaxValue / (4 * 7);

        Assert.Throws<ArgumentException>(() => MinimumCostAssignment.Solve(2, [1, 1], [new(0, 0, largest + 1)]));
        Assert.Throws<ArgumentException>(() => MinimumCostAssignment.Solve(2, [1, 1], [new(0, 2, 1)]));
        Assert.Equal(
            (largest - 1) * 2,
            MinimumCostAssignment.Solve(2, [1, 1], [new(0, 0, largest), new(1, 1, largest), new(0, 1, largest - 1), new(1, 0, largest - 1)])!.Cost);
    }

    private static Assignment? Solve(long[][] costs) => MinimumCostAssignment.Solve(
        costs.Length,
        [.. costs[0].Select(_ => 1)],
        [.. costs.SelectMany((row, r) => row.Select((cost, column) => new AssignmentChoice(r, column, cost)))]);

    private static long Cheapest(long[][] costs, int row, HashSet<int> taken) => row == costs.Length
        ? 0
        : Enumerable.Range(0, costs[row].Length).Where(c => !taken.Contains(c))
            .Min(c => costs[row][c] + Cheapest(costs, row + 1, [.. taken, c]));
}
