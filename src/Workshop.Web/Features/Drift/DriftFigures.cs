namespace Workshop.Web.Features.Drift;

/// <summary>To how many digits estimates are stored and answered: a tenth of a micrometre, and a hundredth of that a slope.</summary>
internal static class DriftFigures
{
    /// <summary>Standard deviations to either side that hold nine in ten of a normal distribution.</summary>
    public static readonly double NineInTen = Domain.Statistics.NormalTails.Deviate(0.95);

    private const int ProbabilityDigits = 6;

    public static decimal? Mm(double? value) => Round(value, 4);

    public static decimal? Drift(double? value) => Round(value, 6);

    public static double? Probability(double? value) => value is { } there ? Math.Round(there, ProbabilityDigits) : null;

    private static decimal? Round(double? value, int digits) => value is { } there ? decimal.Round((decimal)there, digits) : null;
}
