namespace Workshop.Domain.Statistics.Paths;

/// <summary>How finely the nested trapezoid rule works.</summary>
/// <param name="Fall">How far the logarithm of an integrand falls before a walk ends.</param>
/// <param name="StepShare">Distance of the nodes, in standard deviations that exact readings would give.</param>
internal readonly record struct Quadrature(double Fall, double StepShare)
{
    /// <summary>Within about 1e-8 in the log-likelihood of a group.</summary>
    public static readonly Quadrature Usual = new(16, 1);

    /// <summary>Within about 1e-13: for comparisons with closed forms.</summary>
    public static readonly Quadrature Fine = new(34, 0.8);

    public static Quadrature Of(bool fine) => fine ? Fine : Usual;
}
