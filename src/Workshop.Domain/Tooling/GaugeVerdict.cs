using System.Globalization;
using Workshop.Domain.Statistics.Gauges;

namespace Workshop.Domain.Tooling;

/// <summary>How far a way of measuring can be trusted.</summary>
public enum GaugeTrust
{
    Suits,

    /// <summary>For what asks for no more than a coarse answer.</summary>
    Coarse,

    DoesNotSuit,
}

/// <summary>What a study says, in words for those who measure.</summary>
/// <param name="Trust">By the share of the total deviation and the classes that can be told apart.</param>
/// <param name="Sentences">The verdict first, then what it rests on and what to do.</param>
public sealed record GaugeVerdict(GaugeTrust Trust, IReadOnlyList<string> Sentences)
{
    /// <summary>Up to this share of the total deviation a process suits (AIAG, Measurement Systems Analysis, 4th ed.).</summary>
    public const double SuitsUpTo = 0.10;

    /// <summary>Up to this share it may do, depending on what hangs on it (the same).</summary>
    public const double CoarseUpTo = 0.30;

    /// <summary>So many classes are wanted (the same).</summary>
    public const int ClassesWanted = 5;

    /// <summary>A tolerance is compared with so many deviations of the process (the same).</summary>
    public const double DeviationsInTolerance = 6;

    /// <param name="tolerance">Upper less lower limit, in the study's unit; absent where none is stated.</param>
    public static GaugeVerdict Of(GaugeAnalysis study, decimal? tolerance, string unit)
    {
        ArgumentNullException.ThrowIfNull(study);
        var share = study.Gauge.ShareOfDeviation;
        var classes = study.DistinctCategories;
        var trust = share > CoarseUpTo || (classes.HasValue && classes.Value < 2) ? GaugeTrust.DoesNotSuit
            : share > SuitsUpTo || (classes.HasValue && classes.Value < ClassesWanted) ? GaugeTrust.Coarse
            : GaugeTrust.Suits;
        var sentences = new List<string>
        {
            trust switch
            {
                GaugeTrust.Suits => "This way of measuring suits these parts.",
                GaugeTrust.Coarse => "This way of measuring may do where a coarse answer is enough; what hangs on it decides.",
                _ => "This way of measuring does not tell these parts apart well enough.",
            },
            $"Measuring makes up {Percent(share)} of all the scatter that was seen; below {Percent(SuitsUpTo)} is good, above {Percent(CoarseUpTo)} is too much.",
            classes.HasValue
                ? $"It tells {classes.Value} {(classes.Value == 1 ? "class" : "classes")} of parts apart (95 % limits {Figure(study.Categories.Value.Lower)} to {Figure(study.Categories.Value.Upper)}); {ClassesWanted} or more are wanted."
                : classes.WhyNot!.Explanation,
        };
        if (tolerance is { } width)
        {
            var used = DeviationsInTolerance * study.Gauge.StandardDeviation.Estimate / (double)width;
            sentences.Add($"Six deviations of measuring take up {Percent(used)} of the tolerance of {width.ToString("0.####", CultureInfo.InvariantCulture)} {unit}.");
        }

        if (study.Gauge.Variance > 0)
        {
            sentences.Add(WhereItComesFrom(study));
        }

        return new GaugeVerdict(trust, sentences);
    }

    private static string WhereItComesFrom(GaugeAnalysis study)
    {
        if (study.Interaction.Variance > study.Appraisers.Variance && study.Interaction.Variance > study.Repeatability.Variance)
        {
            return "Most of it is that people differ from part to part: look how each of them holds the parts that they disagree on.";
        }

        return study.Reproducibility.Variance > study.Repeatability.Variance
            ? "Most of it comes from hand to hand: agree on one way of holding and reading, and measure again."
            : "Most of it comes from one reading to the next of the same hand: look at the instrument, its scale and what it rests on.";
    }

    private static string Percent(double share) => share.ToString("0 %", CultureInfo.InvariantCulture);

    private static string Figure(double value) =>
        double.IsFinite(value) ? value.ToString("0.#", CultureInfo.InvariantCulture) : "any number";
}
