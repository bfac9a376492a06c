using System.Globalization;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>
/// Holds a fit against the readings: are lines curved, is the lever ratio as stated, do visits lie off. Of a large fleet every so
/// many an engine is looked at; that is enough to see what matters.
/// </summary>
internal sealed class DriftExamination(
    IReadOnlyList<DriftEngine> engines, SwapUncertainty uncertainty, PathOptions options, CancellationToken cancellation)
{
    /// <summary>No more engines than about this many are looked at.</summary>
    private const int MostEngines = 250;

    /// <summary>Above this probability a curvature is left unsaid.</summary>
    private const double CurvatureLevel = 0.01;

    /// <summary>Fewer valves of a side that were read twice say nothing of a curvature.</summary>
    private const int FewestForCurvature = 10;

    /// <summary>Fewer known changes of shim say nothing of a lever ratio.</summary>
    private const int FewestChanges = 10;

    private const double RatioConfidence = 0.95;

    /// <summary>The fit with what was found, and the warnings that follow.</summary>
    public DriftFit Of(DriftFit found, DriftPaths paths, IReadOnlyList<int> slopes, PathFit fit)
    {
        var sample = Sample();
        var straight = fit;
        if (sample.Count < engines.Count)
        {
            (paths, _, slopes) = DriftPaths.ForFit(sample, uncertainty);
            var refit = IntervalPaths.Fit(paths.Data, options with { StandardErrors = false }, cancellation);
            if (!refit.HasValue)
            {
                return found;
            }

            straight = refit.Value;
        }

        var examined = found with
        {
            Slopes = [.. found.Slopes.Select(slope => slope with { Curvature = CurvatureOf(paths, slopes, straight, slope.Side) })],
            LeverRatio = LeverRatio(sample, straight),
        };
        var visits = VisitEffect.Of(sample, examined);
        return examined with
        {
            VisitEffectMm = visits?.DeviationMm, Warnings = [.. examined.Warnings.Concat(Warnings(examined, visits))],
        };
    }

    private List<DriftEngine> Sample()
    {
        var read = engines.Where(e => e.Lobes.Any(l => l.Legs.Count > 0)).ToList();
        var step = Math.Max(1, (int)Math.Ceiling((double)read.Count / MostEngines));
        return step == 1 ? [.. engines] : [.. read.Where((_, i) => i % step == 0)];
    }

    private CurvatureFigures? CurvatureOf(DriftPaths paths, IReadOnlyList<int> slopes, PathFit straight, Side side)
    {
        var slopeClass = DriftClasses.IndexOf(slopes, DriftClasses.Slope(side));
        if (slopeClass < 0 || !MayTellCurvature(paths, side))
        {
            return null;
        }

        var test = IntervalPaths.TestCurvature(paths.Data, straight, slopeClass, options, cancellation);
        return test.HasValue
            ? new CurvatureFigures(
                DriftFitting.Figure(test.Value.Coefficient.Value, test.Value.Coefficient.StandardError),
                test.Value.LikelihoodRatio,
                test.Value.PValue)
            : null;
    }

    /// <summary>
    /// Nothing is known of curvature from elsewhere, so that readings open at one end would let it run away: enough valves with
    /// closed ones are asked for, at three distances or more.
    /// </summary>
    private static bool MayTellCurvature(DriftPaths paths, Side side)
    {
        var read = paths.Groups.Where(g => g.Lobe.Valve.Side == side)
            .Select(g => g.Legs.SelectMany(l => l.Readings).Where(r => double.IsFinite(r.UpperMm - r.LowerMm)).Select(r => r.X).ToList())
            .Where(x => x.Count > 1).ToList();
        return read.Count >= FewestForCurvature && read.SelectMany(x => x).Distinct().Count() > 2;
    }

    private LeverRatioFigures? LeverRatio(List<DriftEngine> sample, PathFit straight)
    {
        var (free, _, _) = DriftPaths.ForFit(sample, uncertainty, ratioFree: true);
        var changes = free.Groups.SelectMany(g => g.Legs).Sum(leg =>
            leg.Readings.Zip(leg.Readings.Skip(1), (one, next) => one.ShimEffectMm == next.ShimEffectMm ? 0 : 1).Sum());
        if (changes < FewestChanges)
        {
            return null;
        }

        var profile = IntervalPaths.ProfileCovariate(
            free.Data, RatioConfidence, options with { CovariateCoefficient = 1, Start = straight.Parameters }, cancellation);
        return profile.HasValue ? new LeverRatioFigures(profile.Value.Estimate, profile.Value.Lower, profile.Value.Upper, changes) : null;
    }

    private List<DriftWarning> Warnings(DriftFit fit, VisitEffect? visits)
    {
        var warnings = fit.Slopes.Where(s => s.Curvature is { PValue: < CurvatureLevel }).Select(s => new DriftWarning(
            DriftWarningKind.Curved,
            Text($"The {s.Side.Spoken()} lines are curved ({s.Curvature!.CoefficientMm.Value:+0.0000;-0.0000} mm per (10,000 km) squared, p = {s.Curvature.PValue:0.0000}): a straight line will mislead."))).ToList();
        if (fit.LeverRatio is { Disagrees: true } ratio)
        {
            warnings.Add(new DriftWarning(
                DriftWarningKind.LeverRatio,
                Text($"{ratio.Changes} changes of shim say that the lever ratio is {ratio.Share:0.00} times what the specification states (95 %: {ratio.Lower:0.00} to {ratio.Upper:0.00}). {WhatToDo()}")));
        }

        if (visits is { StandsOut: true })
        {
            warnings.Add(new DriftWarning(
                DriftWarningKind.VisitsLieOff,
                Text($"Readings of one visit lie off together by {visits.DeviationMm:0.000} mm (standard deviation over {visits.Visits} visits): temperature, blades or hand. Forecasts look somewhat surer than they are.")));
        }

        return warnings;
    }

    /// <summary>Where there is no lever the ratio is 1 by construction: then it is not the ratio that is wrong.</summary>
    private string WhatToDo() => engines[0].Specification.ValveTrain == ValveTrainKind.ShimUnderFingerFollower
        ? "Compare it with the maker's document."
        : "Without a lever it is 1 by construction: look at how shims are measured, and whether every change was written down.";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
