using System.Globalization;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>
/// Fits the drift model to the engines of one engine model: maximum marginal likelihood of the brackets, both sides together
/// (<see cref="IntervalPaths"/>). With few readings the parameters are held near those of the valve-train kind.
/// </summary>
public static class DriftModel
{
    /// <summary>With fewer valves of a side than this that tell a slope, an engine model borrows (our own choice).</summary>
    public const int FewestValves = 30;

    /// <summary>Whether the readings are too few to stand alone, so that a pool is wanted.</summary>
    /// <param name="engines">All engines of one engine model, read or not.</param>
    public static bool Borrows(IReadOnlyList<DriftEngine> engines)
    {
        ArgumentNullException.ThrowIfNull(engines);
        return engines.Count > 0 && new DriftFitting(engines, null, CancellationToken.None).Few;
    }

    /// <summary>Fits, or says what is missing.</summary>
    /// <param name="engines">All engines of one engine model, read or not.</param>
    /// <param name="pool">What all models of the kind show; nothing where there is none yet.</param>
    /// <param name="cancellation">Ends the search early.</param>
    public static Computed<DriftFit> Fit(
        IReadOnlyList<DriftEngine> engines, DriftPool? pool, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(engines);
        if (engines.Count == 0)
        {
            return Otherwise(new NotComputable(NotComputableReason.TooFewPoints, "No engine of it is known."), pool);
        }

        var fitting = new DriftFitting(engines, pool, cancellation);
        var own = fitting.Few && pool is not null ? fitting.Run(borrow: true) : fitting.Run(borrow: false);
        if (!own.HasValue && pool is not null && !fitting.Few)
        {
            own = fitting.Run(borrow: true);
        }

        return own.HasValue ? own : Otherwise(own.WhyNot, pool);
    }

    /// <summary>Fits all engines of a valve-train kind together, whatever their models, levels as offsets from the aim.</summary>
    /// <param name="engines">All engines of the kind.</param>
    /// <param name="cancellation">Ends the search early.</param>
    public static Computed<DriftFit> FitTogether(IReadOnlyList<DriftEngine> engines, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(engines);
        return engines.Count == 0
            ? new NotComputable(NotComputableReason.TooFewPoints, "No engine of the kind is known.")
            : new DriftFitting(engines, null, cancellation).Run(borrow: false, examine: false);
    }

    private static Computed<DriftFit> Otherwise(NotComputable whyNot, DriftPool? pool) => pool is null
        ? whyNot
        : pool.Together with
        {
            Source = FitSource.Pooled,
            LogLikelihood = null,
            Readings = 0,
            Valves = 0,
            Engines = 0,
            Warnings = [new DriftWarning(DriftWarningKind.Borrows, string.Create(CultureInfo.InvariantCulture,
                $"Its own readings tell nothing yet ({whyNot.Explanation.TrimEnd('.')}): what is said rests on {pool.Together.Readings} readings of {pool.Together.Engines} engines of the same valve-train kind."))],
        };
}
