namespace Workshop.Domain.Statistics;

/// <summary>Why a computation has no result, by name and in words.</summary>
/// <param name="Reason">The reason, for code that must tell reasons apart.</param>
/// <param name="Explanation">A whole sentence for people, with the figures that decided.</param>
public sealed record NotComputable(NotComputableReason Reason, string Explanation);

/// <summary>The reasons for which a computation in this namespace declines.</summary>
public enum NotComputableReason
{
    /// <summary>No degree of freedom would be left to say how uncertain the result is.</summary>
    TooFewPoints,

    /// <summary>All x are equal, so that no slope can be told.</summary>
    NoSpreadInX,

    /// <summary>All y are equal, so that there is no variation to explain or to compare.</summary>
    NoSpreadInY,

    /// <summary>Nothing is left over by the fit, so that nothing can be compared with what is left over.</summary>
    NoResidualVariation,

    /// <summary>
    /// The slope is not distinguishable from zero at the confidence asked for, so that the x at which the line reaches
    /// a given y has no finite limits.
    /// </summary>
    SlopeNotDistinguishableFromZero,

    /// <summary>A covariate is a combination of the others, so that their coefficients cannot be told apart.</summary>
    CollinearCovariates,

    /// <summary>
    /// A line can be drawn through every bracket: the brackets are too coarse to tell the scatter from none.
    /// </summary>
    BracketsTooCoarse,

    /// <summary>The likelihood rises without end as a parameter grows: what was observed bounds it on one side only.</summary>
    NoFiniteMaximum,
}
