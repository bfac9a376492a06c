namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// Bracketed readings of many groups, as flat arrays: a group has one slope and one or more legs; a leg has one level and any
/// number of readings; a cluster is a number of groups whose slopes may have a part in common. Built by
/// <see cref="PathDataBuilder"/>.
/// </summary>
/// <remarks>
/// Readings are kept relative to the target of their leg and to an origin of its class of levels, so that large offsets cost
/// no digits.
/// </remarks>
public sealed class PathData
{
    internal PathData(PathDataBuilder.Lists lists)
    {
        ClusterStart = lists.ClusterStart.Append(lists.SlopeClass.Count).ToArray();
        GroupStart = lists.GroupStart.Append(lists.LevelClass.Count).ToArray();
        LegStart = lists.LegStart.Append(lists.X.Count).ToArray();
        SlopeClass = lists.SlopeClass.ToArray();
        LevelClass = lists.LevelClass.ToArray();
        Target = lists.Target.ToArray();
        X = lists.X.ToArray();
        Lower = lists.Lower.ToArray();
        Upper = lists.Upper.ToArray();
        Variance = lists.Variance.ToArray();
        Covariate = lists.Covariate.ToArray();
        LevelClasses = LevelClass.DefaultIfEmpty(-1).Max() + 1;
        SlopeClasses = SlopeClass.DefaultIfEmpty(-1).Max() + 1;
        LevelOrigin = new double[LevelClasses];
        GroupOfLeg = new int[Legs];
        for (var group = 0; group < Groups; group++)
        {
            Array.Fill(GroupOfLeg, group, GroupStart[group], GroupStart[group + 1] - GroupStart[group]);
        }

        Width = TypicalWidth();
        TakeOrigins();
    }

    /// <summary>How many clusters.</summary>
    public int Clusters => ClusterStart.Length - 1;

    /// <summary>How many groups.</summary>
    public int Groups => GroupStart.Length - 1;

    /// <summary>How many legs, those without a reading included.</summary>
    public int Legs => LegStart.Length - 1;

    /// <summary>How many readings.</summary>
    public int Readings => X.Length;

    /// <summary>How many classes of levels: each has a mean and a standard deviation.</summary>
    public int LevelClasses { get; }

    /// <summary>How many classes of slopes: each has a mean and a standard deviation.</summary>
    public int SlopeClasses { get; }

    internal int[] ClusterStart { get; }

    internal int[] GroupStart { get; }

    internal int[] LegStart { get; }

    internal int[] SlopeClass { get; }

    internal int[] LevelClass { get; }

    internal int[] GroupOfLeg { get; }

    /// <summary>What a leg's level is counted from.</summary>
    internal double[] Target { get; }

    /// <summary>What the mean of a class of levels is counted from, inside.</summary>
    internal double[] LevelOrigin { get; }

    internal double[] X { get; }

    internal double[] Lower { get; }

    internal double[] Upper { get; }

    /// <summary>Known variance of a reading, beside sigma squared.</summary>
    internal double[] Variance { get; }

    internal double[] Covariate { get; }

    /// <summary>The median width of the brackets that are closed; 0 where all closed ones are exact, or none is closed.</summary>
    internal double Width { get; }

    /// <summary>
    /// The middle of a reading for a first estimate: where one end is open, half a typical width inside the other; plain
    /// where it is closed.
    /// </summary>
    internal double Middle(int reading)
    {
        var (lower, upper) = (Lower[reading], Upper[reading]);
        return double.IsNegativeInfinity(lower) ? upper - (Width / 2)
            : double.IsPositiveInfinity(upper) ? lower + (Width / 2)
            : lower + ((upper - lower) / 2);
    }

    private double TypicalWidth()
    {
        var widths = Lower.Zip(Upper, (lower, upper) => upper - lower).Where(double.IsFinite).Order().ToArray();
        return widths.Length == 0 ? 0 : widths[widths.Length / 2];
    }

    private void TakeOrigins()
    {
        var seen = new bool[LevelClasses];
        for (var leg = 0; leg < Legs; leg++)
        {
            var level = LevelClass[leg];
            for (var k = LegStart[leg]; k < LegStart[leg + 1]; k++)
            {
                if (!seen[level])
                {
                    seen[level] = true;
                    LevelOrigin[level] = Middle(k) - Target[leg];
                }

                var origin = Target[leg] + LevelOrigin[level];
                Lower[k] -= origin;
                Upper[k] -= origin;
            }
        }
    }
}
