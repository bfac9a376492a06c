namespace Workshop.Domain.Statistics.Gauges;

/// <summary>The sums of squares of a balanced layout of appraisers, parts and trials; they add up to the total.</summary>
internal sealed record GaugeSums(double Parts, double Appraisers, double Interaction, double Repeatability)
{
    public double Total => Parts + Appraisers + Interaction + Repeatability;

    /// <summary>
    /// Shifts all values by the first one before anything is squared, and takes each sum from differences of means: readings of one
    /// part that share their leading digits then lose none of the others.
    /// </summary>
    public static GaugeSums Of(IReadOnlyList<IReadOnlyList<IReadOnlyList<double>>> readings, int appraisers, int parts, int trials)
    {
        var shift = readings[0][0][0];
        var cells = new double[appraisers, parts];
        var repeatability = 0.0;
        for (var a = 0; a < appraisers; a++)
        {
            for (var p = 0; p < parts; p++)
            {
                var values = readings[a][p].Select(value => value - shift).ToArray();
                cells[a, p] = CentredSums.Mean(values);
                repeatability += CentredSums.Squares(values, cells[a, p]);
            }
        }

        var ofAppraisers = Enumerable.Range(0, appraisers).Select(a => Enumerable.Range(0, parts).Average(p => cells[a, p])).ToArray();
        var ofParts = Enumerable.Range(0, parts).Select(p => Enumerable.Range(0, appraisers).Average(a => cells[a, p])).ToArray();
        var grand = ofParts.Average();
        var interaction = 0.0;
        for (var a = 0; a < appraisers; a++)
        {
            for (var p = 0; p < parts; p++)
            {
                var left = cells[a, p] - ofAppraisers[a] - ofParts[p] + grand;
                interaction += left * left;
            }
        }

        return new GaugeSums(
            appraisers * trials * ofParts.Sum(mean => (mean - grand) * (mean - grand)),
            parts * trials * ofAppraisers.Sum(mean => (mean - grand) * (mean - grand)),
            trials * interaction,
            repeatability);
    }
}
