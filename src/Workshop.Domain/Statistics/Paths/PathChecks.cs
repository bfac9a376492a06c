namespace Workshop.Domain.Statistics.Paths;

/// <summary>Whether the data can tell the parameters at all, before a search is begun.</summary>
internal static class PathChecks
{
    /// <summary>Why the data cannot tell them; null where they can.</summary>
    public static NotComputable? WhyNot(PathData data, int parameters, bool slopes)
    {
        var means = data.LevelClasses + (slopes ? data.SlopeClasses : 0);
        if (data.Readings <= means)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"{means} mean levels and slopes and the scatter about them need more than {means} readings; there {(data.Readings == 1 ? "is" : "are")} {data.Readings}.");
        }

        var seen = new bool[data.LevelClasses];
        for (var leg = 0; leg < data.Legs; leg++)
        {
            seen[data.LevelClass[leg]] |= data.LegStart[leg + 1] > data.LegStart[leg];
        }

        if (Array.IndexOf(seen, false) is >= 0 and var missing)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints, $"Class {missing} of levels has no reading.");
        }

        if (parameters > data.Readings)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints, $"{parameters} parameters cannot be told from {data.Readings} readings.");
        }

        return !slopes || SlopesAreTold(data)
            ? null
            : new NotComputable(
                NotComputableReason.NoSpreadInX,
                $"The {data.Readings} readings do not lie at different x on comparable levels, so that no slope can be told.");
    }

    /// <summary>Whether any leg has two readings: else sigma and the spread of levels are one.</summary>
    public static bool SigmaIsTold(PathData data)
    {
        for (var leg = 0; leg < data.Legs; leg++)
        {
            if (data.LegStart[leg + 1] - data.LegStart[leg] > 1)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether two clusters have two groups with readings at two places: else own and shared spread are one.</summary>
    public static bool SharingIsTold(PathData data)
    {
        var telling = 0;
        for (var cluster = 0; cluster < data.Clusters && telling < 2; cluster++)
        {
            var groups = 0;
            for (var group = data.ClusterStart[cluster]; group < data.ClusterStart[cluster + 1]; group++)
            {
                var from = data.LegStart[data.GroupStart[group]];
                var end = data.LegStart[data.GroupStart[group + 1]];
                groups += data.X.AsSpan(from, end - from).ContainsAnyExcept(0.0) ? 1 : 0;
            }

            telling += groups > 1 ? 1 : 0;
        }

        return telling == 2;
    }

    /// <summary>
    /// The columns of x, one for each class of slopes, are independent once the mean of each class of levels is taken off.
    /// </summary>
    private static bool SlopesAreTold(PathData data)
    {
        var slopes = data.SlopeClasses;
        var count = new double[data.LevelClasses];
        var mean = new double[data.LevelClasses, slopes];
        ForEach((level, slope, x) =>
        {
            count[level]++;
            mean[level, slope] += x;
        });

        var products = new double[slopes, slopes];
        var size = 0.0;
        for (var level = 0; level < data.LevelClasses; level++)
        {
            for (var j = 0; j < slopes; j++)
            {
                mean[level, j] /= count[level];
            }
        }

        ForEach((level, slope, x) =>
        {
            size = Math.Max(size, Math.Abs(x));
            for (var j = 0; j < slopes; j++)
            {
                for (var i = 0; i < slopes; i++)
                {
                    products[j, i] += ((j == slope ? x : 0) - mean[level, j]) * ((i == slope ? x : 0) - mean[level, i]);
                }
            }
        });

        // A column of equal x leaves the rounding of their mean.
        for (var j = 0; j < slopes; j++)
        {
            if (products[j, j] <= 1e-20 * size * size * data.Readings)
            {
                return false;
            }
        }

        return CholeskyFactor.Of(products, 1e-12) is not null;

        void ForEach(Action<int, int, double> take)
        {
            for (var leg = 0; leg < data.Legs; leg++)
            {
                for (var k = data.LegStart[leg]; k < data.LegStart[leg + 1]; k++)
                {
                    take(data.LevelClass[leg], data.SlopeClass[data.GroupOfLeg[leg]], data.X[k]);
                }
            }
        }
    }
}
