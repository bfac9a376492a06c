using System.Globalization;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>How <see cref="DriftModel"/> goes about it.</summary>
internal sealed class DriftFitting
{
    private readonly IReadOnlyList<DriftEngine> engines;
    private readonly DriftPool? pool;
    private readonly CancellationToken cancellation;
    private readonly SwapUncertainty uncertainty;
    private readonly DriftPaths paths;
    private readonly IReadOnlyList<int> levels;
    private readonly IReadOnlyList<int> slopes;

    public DriftFitting(IReadOnlyList<DriftEngine> engines, DriftPool? pool, CancellationToken cancellation)
    {
        this.engines = engines;
        this.pool = pool;
        this.cancellation = cancellation;
        uncertainty = SwapUncertainty.Of(engines[0].Specification.ValveTrain, pool?.Together.SigmaMm.Value);
        (paths, levels, slopes) = DriftPaths.ForFit(engines, uncertainty);
    }

    /// <summary>Whether some side has few valves that tell a slope, or none at all has.</summary>
    public bool Few => slopes.Count == 0 || slopes.Any(slope => Telling(slope) < DriftModel.FewestValves);

    /// <param name="borrow">Whether to hold the parameters near those of the pool.</param>
    /// <param name="examine">Whether to look for curvature, the lever ratio and visits that lie off as well.</param>
    public Computed<DriftFit> Run(bool borrow, bool examine = true)
    {
        if (paths.Data.Readings == 0)
        {
            return new NotComputable(NotComputableReason.TooFewPoints, "No valve was measured yet.");
        }

        var options = new PathOptions { SharedSlopes = true, Priors = borrow ? Priors() : [] };
        return IntervalPaths.Fit(paths.Data, options, cancellation).Then<DriftFit>(fit =>
        {
            var found = Figures(fit, borrow);
            return examine ? new DriftExamination(engines, uncertainty, options, cancellation).Of(found, paths, slopes, fit) : found;
        });
    }

    private DriftFit Figures(PathFit fit, bool borrow)
    {
        var errors = fit.StandardErrors.HasValue ? fit.StandardErrors.Value : null;
        var completion = new ParameterCompletion(levels, slopes, pool);
        return new DriftFit
        {
            Source = borrow ? FitSource.Borrowed : FitSource.OwnReadings,
            Levels = [.. levels.Select((level, i) =>
            {
                var (side, start) = DriftClasses.OfLevel(level);
                return new LevelFigures(
                    side,
                    start,
                    paths.Groups.Where(g => g.Lobe.Valve.Side == side).Sum(g => g.Legs.Count(l => l.Start == start)),
                    Figure(fit.Parameters.LevelMean[i], errors?.LevelMean[i]),
                    Figure(fit.Parameters.LevelDeviation[i], errors?.LevelDeviation[i]));
            })],
            Slopes = [.. slopes.Select((slope, i) => new SlopeFigures(
                (Side)slope,
                paths.Groups.Where(g => DriftClasses.Slope(g.Lobe.Valve.Side) == slope).Select(g => (g.EngineId, g.Lobe)).Distinct().Count(),
                Figure(fit.Parameters.SlopeMean[i], errors?.SlopeMean[i]),
                Figure(fit.Parameters.SlopeDeviation[i], errors?.SlopeDeviation[i])))],
            SigmaMm = Figure(fit.Parameters.Sigma, errors?.Sigma),
            BetweenEnginesMm = Figure(fit.Parameters.ClusterDeviation, errors?.ClusterDeviation),
            LogLikelihood = fit.LogLikelihood,
            Readings = fit.Readings,
            Valves = paths.Groups.Select(g => (g.EngineId, g.Lobe)).Distinct().Count(),
            Engines = paths.Groups.Select(g => g.EngineId).Distinct().Count(),
            Plausible = [.. fit.Plausible.Select(p => p with { Parameters = completion.Complete(p.Parameters) })],
            Warnings = [.. Remarks(fit, borrow)],
        };
    }

    private List<PathPrior> Priors() => [.. pool!.Priors
        .Select(p => p.On switch
        {
            PriorOn.LevelMean or PriorOn.LogLevelDeviation => (Prior: p, Class: DriftClasses.IndexOf(levels, p.Place)),
            PriorOn.SlopeMean or PriorOn.LogSlopeDeviation => (Prior: p, Class: DriftClasses.IndexOf(slopes, p.Place)),
            _ => (Prior: p, Class: 0),
        })
        .Where(p => p.Class >= 0)
        .Select(p => new PathPrior(p.Prior.On, p.Class, p.Prior.Centre, p.Prior.Deviation))];

    private List<DriftWarning> Remarks(PathFit fit, bool borrow)
    {
        var said = new List<DriftWarning>();
        if (borrow)
        {
            said.Add(new DriftWarning(DriftWarningKind.Borrows, Text(
                $"{fit.Readings} readings of its own are few: the figures lean on {pool!.Together.Readings} readings of {pool.Together.Engines} engines of the same valve-train kind.")));
        }

        if (fit.Remarks.Contains(PathRemark.NoSlopeSpread))
        {
            said.Add(new DriftWarning(
                DriftWarningKind.SlopesAlike, "Valves of some side show no difference in drift beyond the errors of reading."));
        }

        if (fit.Remarks.Contains(PathRemark.SigmaNotTold))
        {
            said.Add(new DriftWarning(
                DriftWarningKind.NotTold, "No valve was read twice on one level, so that errors of reading cannot be told from levels."));
        }
        else if (fit.Remarks.Contains(PathRemark.SpreadNotTold))
        {
            said.Add(new DriftWarning(
                DriftWarningKind.NotTold, "Some level's mean or spread cannot be told: its readings all lie in one bracket."));
        }

        return said;
    }

    private int Telling(int slope) => paths.Groups.Count(g =>
        DriftClasses.Slope(g.Lobe.Valve.Side) == slope && g.Legs.Any(l => l.Readings.Any(r => r.X > 0)));

    /// <summary>A figure with its error, where it has one.</summary>
    public static FittedFigure Figure(double value, double? error) => new(value, error > 0 ? error : null);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
