using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Gauges;

namespace Workshop.Domain.Tooling;

/// <summary>One reading that a study asks for.</summary>
/// <param name="Part">From 1 on.</param>
/// <param name="Trial">From 1 on.</param>
public readonly record struct GaugeStep(int Part, int Trial);

/// <summary>
/// In which order an appraiser reads the parts of a study: every trial goes once through all parts, each time in another order that
/// nobody can foresee or remember. The same study has the same order in every copy of the service.
/// </summary>
public static class GaugeTrialPlan
{
    /// <summary>All steps of one appraiser, in order.</summary>
    public static IReadOnlyList<GaugeStep> Of(GaugeTrial trial, Guid appraiserId)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var steps = new List<GaugeStep>(trial.Parts * trial.Trials);
        for (var round = 1; round <= trial.Trials; round++)
        {
            var random = new RandomSource(0).Stream($"{trial.Id}/{appraiserId}/{round}");
            var parts = Enumerable.Range(1, trial.Parts).ToArray();
            for (var last = parts.Length - 1; last > 0; last--)
            {
                var other = random.WholeNumber(0, last);
                (parts[last], parts[other]) = (parts[other], parts[last]);
            }

            steps.AddRange(parts.Select(part => new GaugeStep(part, round)));
        }

        return steps;
    }

    /// <summary>The first step that is not read yet; nothing where the appraiser has read all.</summary>
    public static GaugeStep? Next(GaugeTrial trial, Guid appraiserId, IEnumerable<GaugeTrialReading> standing)
    {
        var read = standing.Where(r => r.AppraiserId == appraiserId).Select(r => new GaugeStep(r.Part, r.Trial)).ToHashSet();
        return Of(trial, appraiserId).Select(step => (GaugeStep?)step).FirstOrDefault(step => !read.Contains(step!.Value));
    }

    /// <summary>The readings that hold: those that no other supersedes.</summary>
    public static IReadOnlyList<GaugeTrialReading> Standing(IReadOnlyCollection<GaugeTrialReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var superseded = readings.Select(r => r.SupersedesId).OfType<Guid>().ToHashSet();
        return [.. readings.Where(r => !superseded.Contains(r.Id))];
    }

    /// <summary>What the study found; a reason instead while readings are missing.</summary>
    /// <param name="appraisers">In their order.</param>
    /// <param name="standing">The readings that hold.</param>
    public static Computed<GaugeAnalysis> Analyse(
        GaugeTrial trial, IReadOnlyList<Guid> appraisers, IReadOnlyCollection<GaugeTrialReading> standing, InteractionRule rule)
    {
        ArgumentNullException.ThrowIfNull(trial);
        ArgumentNullException.ThrowIfNull(standing);
        var wanted = trial.Parts * trial.Trials * appraisers.Count;
        if (standing.Count < wanted)
        {
            return new NotComputable(NotComputableReason.TooFewPoints, $"{standing.Count} of {wanted} readings are in; the study is worked out when all are.");
        }

        var values = standing.ToDictionary(r => (r.AppraiserId, r.Part, r.Trial), r => (double)r.Value);
        return GaugeStudy.Fit(
            [.. appraisers.Select(person => Enumerable.Range(1, trial.Parts)
                .Select(part => Enumerable.Range(1, trial.Trials).Select(round => values[(person, part, round)]).ToArray())
                .ToArray())],
            trial.Design,
            rule);
    }
}
