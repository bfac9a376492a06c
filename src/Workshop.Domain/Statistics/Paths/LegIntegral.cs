namespace Workshop.Domain.Statistics.Paths;

/// <summary>One leg at a given slope, its level integrated out: a single reading in closed form, several by the lattice.</summary>
internal static class LegIntegral
{
    /// <summary>Log-likelihood and expected scores of a leg that has readings.</summary>
    public static (double LogLikelihood, LevelScores Scores) Of(
        GroupReadings readings, int leg, double slope, LevelLattice levels)
    {
        ref readonly var there = ref readings.Leg(leg);
        var at = readings.At(leg, slope);
        if (there.Count == 1)
        {
            return Single(at, there);
        }

        var log = levels.Integrate(at, there.Step, there.GuessAtZero - (slope * there.GuessPerSlope));
        return (there.Constant + log, levels.Scores);
    }

    /// <summary>A leg of one reading: normal about the mean of its class with both variances.</summary>
    private static (double LogLikelihood, LevelScores Scores) Single(in StandardisedLeg at, in LegAtParameters leg)
    {
        var reading = ReadingScore.At(at.Lower[0], at.Upper[0], at.Exact[0]);
        var inverse = at.InverseScale[0];
        var score = reading.Score * inverse;
        return (
            leg.Constant + reading.LogProbability + NormalTails.LogRootTwoPi,
            new LevelScores(
                score,
                reading.Scale * leg.Deviation * inverse * inverse,
                score * at.X[0],
                reading.Scale * at.ScaleShare[0],
                score * at.X[0] * at.X[0],
                score * at.Covariate[0]));
    }
}
