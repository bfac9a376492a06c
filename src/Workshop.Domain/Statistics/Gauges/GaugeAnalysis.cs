namespace Workshop.Domain.Statistics.Gauges;

/// <summary>The shape of a study.</summary>
/// <param name="Parts">Of each appraiser, in a nested study.</param>
/// <param name="Trials">Readings of one part by one appraiser.</param>
public sealed record GaugeLayout(GaugeDesign Design, int Appraisers, int Parts, int Trials);

/// <summary>The table of the analysis of variance.</summary>
/// <param name="Interaction">Crossed studies only.</param>
/// <param name="Repeatability">From trial to trial alone.</param>
/// <param name="Within">What repeatability is taken from: with the interaction where that is pooled.</param>
public sealed record GaugeTable(
    SourceOfVariation Parts,
    SourceOfVariation Appraisers,
    SourceOfVariation? Interaction,
    SourceOfVariation Repeatability,
    SourceOfVariation Within,
    bool InteractionPooled);

/// <summary>An estimate between two limits that hold it at a stated confidence; not evenly, as deviations are skewed.</summary>
/// <param name="Confidence">Of both limits together, between 0 and 1.</param>
public sealed record GaugeLimits(double Estimate, double Lower, double Upper, double Confidence);

/// <summary>One part of the variation.</summary>
/// <param name="Variance">In the square of the readings' unit; 0 where the mean squares would give less.</param>
/// <param name="StandardDeviation">Its root, with its limits, in the readings' unit.</param>
/// <param name="ShareOfVariance">Of the total variance, 0 to 1.</param>
/// <param name="ShareOfDeviation">Of the total deviation, 0 to 1; these shares do not add up.</param>
public sealed record GaugeComponent(double Variance, GaugeLimits StandardDeviation, double ShareOfVariance, double ShareOfDeviation);

/// <summary>What a study of a measuring process found.</summary>
/// <param name="PartsTest">Whether parts differ by more than chance.</param>
/// <param name="AppraisersTest">Whether appraisers do.</param>
/// <param name="InteractionTest">Crossed studies only: whether an appraiser's bias depends on the part.</param>
/// <param name="Repeatability">One person, one part, one reading after the other.</param>
/// <param name="Appraisers">From person to person.</param>
/// <param name="Interaction">Zero where it is pooled or cannot be told.</param>
/// <param name="Reproducibility">Appraisers and interaction together.</param>
/// <param name="Gauge">Repeatability and reproducibility together: the measuring process.</param>
/// <param name="Parts">What is to be told apart.</param>
/// <param name="TotalStandardDeviation">Of gauge and parts together, in the readings' unit.</param>
/// <param name="Categories">
/// How many classes of parts the process tells apart, 1.41 parts / gauge, not rounded; a reason instead where no scatter of the
/// process was seen.
/// </param>
public sealed record GaugeAnalysis(
    GaugeLayout Layout,
    GaugeTable Table,
    AnalysisOfVariance PartsTest,
    AnalysisOfVariance AppraisersTest,
    AnalysisOfVariance? InteractionTest,
    GaugeComponent Repeatability,
    GaugeComponent Appraisers,
    GaugeComponent Interaction,
    GaugeComponent Reproducibility,
    GaugeComponent Gauge,
    GaugeComponent Parts,
    double TotalStandardDeviation,
    Computed<GaugeLimits> Categories)
{
    /// <summary>1.41, the root of 2 as AIAG prints it.</summary>
    public const double CategoriesPerRatio = 1.41;

    /// <summary>Whole classes that can be told apart: the estimate cut down, never rounded up.</summary>
    public Computed<int> DistinctCategories => Categories.Then<int>(c => (int)Math.Min(c.Estimate, int.MaxValue));

    /// <param name="variancesOf">The components that mean squares give; below zero where they would.</param>
    internal static GaugeAnalysis Of(
        GaugeLayout layout,
        GaugeTable table,
        AnalysisOfVariance partsTest,
        AnalysisOfVariance appraisersTest,
        AnalysisOfVariance? interactionTest,
        Func<GaugeMeanSquares, GaugeVariances> variancesOf,
        double confidence)
    {
        var variances = variancesOf(GaugeMeanSquares.Of(table)).NotBelowZero;
        var draws = GaugeDraws.Of(table, variancesOf, confidence);
        var total = variances.Gauge + variances.Parts;

        GaugeComponent Component(Func<GaugeVariances, double> of) => new(
            of(variances),
            draws.Limits(Math.Sqrt(of(variances)), v => Math.Sqrt(of(v))),
            total > 0 ? of(variances) / total : 0,
            total > 0 ? Math.Sqrt(of(variances) / total) : 0);

        var repeatability = Component(v => v.Repeatability);
        return new GaugeAnalysis(
            layout, table, partsTest, appraisersTest, interactionTest,
            repeatability with { StandardDeviation = GaugeDraws.Exact(table.Within, confidence) },
            Component(v => v.Appraisers),
            Component(v => v.Interaction),
            Component(v => v.Reproducibility),
            Component(v => v.Gauge),
            Component(v => v.Parts),
            Math.Sqrt(total),
            CategoriesOf(variances, draws));
    }

    private static Computed<GaugeLimits> CategoriesOf(GaugeVariances variances, GaugeDraws draws) => variances.Gauge > 0
        ? draws.Limits(Ratio(variances), Ratio)
        : new NotComputable(
            NotComputableReason.NoResidualVariation,
            "No reading differs from another of the same part: the scale is too coarse to show how well it is read.");

    private static double Ratio(GaugeVariances v) => v.Gauge > 0 ? CategoriesPerRatio * Math.Sqrt(v.Parts / v.Gauge) : double.PositiveInfinity;
}
