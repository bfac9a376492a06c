namespace Workshop.Domain.Statistics.Gauges;

/// <summary>Who measured what.</summary>
public enum GaugeDesign
{
    /// <summary>Every appraiser measures every part.</summary>
    Crossed,

    /// <summary>Every appraiser measures parts of their own, as where a reading uses a part up.</summary>
    Nested,
}

/// <summary>What becomes of the interaction of parts and appraisers in a crossed study.</summary>
public enum InteractionRule
{
    /// <summary>Pooled with repeatability where its test gives more than <see cref="GaugeStudy.PooledAbove"/>, kept otherwise.</summary>
    ByTest,

    Kept,

    Pooled,
}

/// <summary>
/// A study of a measuring process by analysis of variance: how much of what is seen comes from the parts, how much from those
/// who measure, and how much from one reading to the next.
/// </summary>
/// <remarks>
/// The layout and its components: AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III; nested: Burdick, Borror and
/// Montgomery, Design and Analysis of Gauge R&amp;R Studies (SIAM 2005), chapter 6.
/// </remarks>
public static class GaugeStudy
{
    /// <summary>An interaction that chance brings about more often than this is pooled; common practice.</summary>
    public const double PooledAbove = 0.25;

    /// <summary>
    /// Analyses a balanced study, or says why it cannot: fewer than two appraisers, parts or trials
    /// (<see cref="NotComputableReason.TooFewPoints"/>), or all readings equal (<see cref="NotComputableReason.NoSpreadInY"/>).
    /// </summary>
    /// <param name="readings">
    /// By appraiser, part and trial, all in one unit. In a crossed study the same place means the same part with every appraiser.
    /// </param>
    /// <param name="design">Whose parts they are.</param>
    /// <param name="rule">Crossed studies only.</param>
    /// <param name="confidence">Of all intervals, between 0 and 1.</param>
    /// <exception cref="ArgumentException">Not every appraiser has as many parts and trials, or a value is not finite.</exception>
    public static Computed<GaugeAnalysis> Fit(
        IReadOnlyList<IReadOnlyList<IReadOnlyList<double>>> readings,
        GaugeDesign design,
        InteractionRule rule = InteractionRule.ByTest,
        double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Guard.Confidence(confidence);
        var (appraisers, parts, trials) = Shape(readings);
        if (appraisers < 2 || parts < 2 || trials < 2)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"A study wants two appraisers, two parts and two trials at least; it has {appraisers}, {parts} and {trials}.");
        }

        var sums = GaugeSums.Of(readings, appraisers, parts, trials);
        if (sums.Total == 0)
        {
            return new NotComputable(
                NotComputableReason.NoSpreadInY, "All readings are equal: the scale is too coarse for what was measured, or nobody measured.");
        }

        var layout = new GaugeLayout(design, appraisers, parts, trials);
        return design == GaugeDesign.Crossed ? Crossed(layout, sums, rule, confidence) : Nested(layout, sums, confidence);
    }

    private static GaugeAnalysis Crossed(GaugeLayout layout, GaugeSums sums, InteractionRule rule, double confidence)
    {
        var (a, p, r) = (layout.Appraisers, layout.Parts, layout.Trials);
        var part = new SourceOfVariation(sums.Parts, p - 1);
        var appraiser = new SourceOfVariation(sums.Appraisers, a - 1);
        var interaction = new SourceOfVariation(sums.Interaction, (a - 1) * (p - 1));
        var repeat = new SourceOfVariation(sums.Repeatability, a * p * (r - 1));
        var test = new AnalysisOfVariance(interaction, repeat);

        // Without any scatter from trial to trial, an interaction that is there at all is no chance.
        var pooled = rule == InteractionRule.Pooled
            || (rule == InteractionRule.ByTest && (interaction.SumOfSquares == 0 || (test.PValue.HasValue && test.PValue.Value > PooledAbove)));
        var within = pooled
            ? new SourceOfVariation(repeat.SumOfSquares + interaction.SumOfSquares, repeat.DegreesOfFreedom + interaction.DegreesOfFreedom)
            : repeat;
        var against = pooled ? within : interaction;
        return GaugeAnalysis.Of(
            layout,
            new GaugeTable(part, appraiser, interaction, repeat, within, pooled),
            new AnalysisOfVariance(part, against),
            new AnalysisOfVariance(appraiser, against),
            test,
            m => pooled
                ? new GaugeVariances(m.Within, (m.Appraisers - m.Within) / (p * r), 0, (m.Parts - m.Within) / (a * r))
                : new GaugeVariances(
                    m.Within,
                    (m.Appraisers - m.Interaction) / (p * r),
                    (m.Interaction - m.Within) / r,
                    (m.Parts - m.Interaction) / (a * r)),
            confidence);
    }

    private static GaugeAnalysis Nested(GaugeLayout layout, GaugeSums sums, double confidence)
    {
        var (a, p, r) = (layout.Appraisers, layout.Parts, layout.Trials);
        var part = new SourceOfVariation(sums.Parts + sums.Interaction, a * (p - 1));
        var appraiser = new SourceOfVariation(sums.Appraisers, a - 1);
        var repeat = new SourceOfVariation(sums.Repeatability, a * p * (r - 1));
        return GaugeAnalysis.Of(
            layout,
            new GaugeTable(part, appraiser, null, repeat, repeat, false),
            new AnalysisOfVariance(part, repeat),
            new AnalysisOfVariance(appraiser, part),
            null,
            m => new GaugeVariances(m.Within, (m.Appraisers - m.Parts) / (p * r), 0, (m.Parts - m.Within) / r),
            confidence);
    }

    private static (int Appraisers, int Parts, int Trials) Shape(IReadOnlyList<IReadOnlyList<IReadOnlyList<double>>> readings)
    {
        var parts = readings.Count == 0 ? 0 : readings[0].Count;
        var trials = parts == 0 ? 0 : readings[0][0].Count;
        if (readings.Any(appraiser => appraiser.Count != parts || appraiser.Any(part => part.Count != trials)))
        {
            throw new ArgumentException("A study is balanced: every appraiser has as many parts, and every part as many trials.", nameof(readings));
        }

        foreach (var part in readings.SelectMany(appraiser => appraiser))
        {
            Guard.Finite([.. part], nameof(readings));
        }

        return (readings.Count, parts, trials);
    }
}
