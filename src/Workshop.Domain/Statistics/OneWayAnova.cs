namespace Workshop.Domain.Statistics;

/// <summary>Analysis of variance of one factor: do groups differ by more than their members do?</summary>
public static class OneWayAnova
{
    /// <summary>
    /// Analyses groups, or says why it cannot: fewer than two groups, or no group with a second value
    /// (<see cref="NotComputableReason.TooFewPoints"/>).
    /// </summary>
    /// <param name="groups">The values of each group, all in one unit; groups may differ in size, none is empty.</param>
    /// <exception cref="ArgumentException">A group is empty, or a value is not finite.</exception>
    public static Computed<OneWayAnalysis> Fit(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var values = groups.Select(group => group.ToArray()).ToArray();
        foreach (var group in values)
        {
            if (group.Length == 0)
            {
                throw new ArgumentException("A group is empty; leave it out.", nameof(groups));
            }

            Guard.Finite(group, nameof(groups));
        }

        var count = values.Sum(group => group.Length);
        if (values.Length < 2 || count == values.Length)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"Groups can be compared when there are two or more and one has a second value; there are {count} values "
                + $"in {values.Length} groups.");
        }

        return MeanShifted(values, count);
    }

    /// <summary>
    /// Shifts all values by the first one before anything is squared: values that share their leading digits
    /// (readings of one part) then lose none of the others.
    /// </summary>
    private static OneWayAnalysis MeanShifted(double[][] groups, int count)
    {
        var shift = groups[0][0];
        var shifted = groups.Select(group => group.Select(value => value - shift).ToArray()).ToArray();
        var grandMean = CentredSums.Mean(shifted.SelectMany(group => group).ToArray());
        double between = 0, within = 0;
        foreach (var group in shifted)
        {
            var mean = CentredSums.Mean(group);
            between += group.Length * (mean - grandMean) * (mean - grandMean);
            within += CentredSums.Squares(group, mean);
        }

        return new OneWayAnalysis(
            new AnalysisOfVariance(new(between, groups.Length - 1), new(within, count - groups.Length)),
            shift + grandMean,
            EffectiveGroupSize(groups, count));
    }

    /// <summary>The common size of equal groups, and what takes its place in the expected mean square of unequal ones.</summary>
    private static double EffectiveGroupSize(double[][] groups, int count) =>
        (count - (groups.Sum(group => (double)group.Length * group.Length) / count)) / (groups.Length - 1);
}
