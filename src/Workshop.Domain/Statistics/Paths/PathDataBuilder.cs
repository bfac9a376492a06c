namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// Takes readings in their order: <see cref="Cluster"/>, in it <see cref="Group"/>, in it <see cref="Leg"/>, in it
/// <see cref="Reading"/>. What is missing in between is an error of the caller.
/// </summary>
public sealed class PathDataBuilder
{
    private readonly Lists lists = new();

    /// <summary>Begins a cluster: what the groups of one cluster have in common they share with no other.</summary>
    /// <returns>Its number, counted from 0.</returns>
    public int Cluster()
    {
        lists.ClusterStart.Add(lists.SlopeClass.Count);
        return lists.ClusterStart.Count - 1;
    }

    /// <summary>Begins a group: its legs share one slope.</summary>
    /// <param name="slopeClass">Class of its slope, 0 or above.</param>
    /// <returns>Its number, counted from 0 over all clusters.</returns>
    public int Group(int slopeClass = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(slopeClass);
        Require(lists.ClusterStart.Count > 0, "A group belongs to a cluster.");
        lists.GroupStart.Add(lists.LevelClass.Count);
        lists.SlopeClass.Add(slopeClass);
        return lists.SlopeClass.Count - 1;
    }

    /// <summary>Begins a leg: its readings share one level. A leg without readings is one that is set but not yet seen.</summary>
    /// <param name="levelClass">Class of its level, 0 or above.</param>
    /// <param name="target">What the level was meant to be: the class has the mean of the difference. 0 where nothing was meant.</param>
    /// <returns>Its number, counted from 0 over all groups.</returns>
    public int Leg(int levelClass = 0, double target = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(levelClass);
        Guard.Finite(target, nameof(target));
        Require(lists.SlopeClass.Count > lists.ClusterStart.LastOrDefault(int.MaxValue), "A leg belongs to a group of the cluster begun last.");
        lists.LegStart.Add(lists.X.Count);
        lists.LevelClass.Add(levelClass);
        lists.Target.Add(target);
        return lists.LevelClass.Count - 1;
    }

    /// <summary>
    /// Takes a reading: level + slope x + error lies between two ends. Both ends the same: an exact value. Both ends open says
    /// nothing and is left out.
    /// </summary>
    /// <param name="x">How far along its leg.</param>
    /// <param name="lower">Lower end, minus infinity where it is open.</param>
    /// <param name="upper">Upper end, infinity where it is open.</param>
    /// <param name="variance">Known variance of this reading beside the common one.</param>
    /// <param name="covariate">What the common coefficient of the model multiplies, where it has one.</param>
    /// <exception cref="ArgumentException">Upper is below lower, or a value is no number.</exception>
    public void Reading(double x, double lower, double upper, double variance = 0, double covariate = 0)
    {
        Guard.Finite(x, nameof(x));
        Guard.Finite(variance, nameof(variance));
        Guard.Finite(covariate, nameof(covariate));
        ArgumentOutOfRangeException.ThrowIfNegative(variance);
        Require(
            lists.LevelClass.Count > lists.GroupStart.LastOrDefault(int.MaxValue), "A reading belongs to a leg of the group begun last.");
        var sound = lower <= upper && lower < double.PositiveInfinity && upper > double.NegativeInfinity;
        if (!sound)
        {
            throw new ArgumentException($"A reading from {lower} to {upper} does not run upwards between two ends.");
        }

        if (double.IsInfinity(lower) && double.IsInfinity(upper))
        {
            return;
        }

        lists.X.Add(x);
        lists.Lower.Add(lower);
        lists.Upper.Add(upper);
        lists.Variance.Add(variance);
        lists.Covariate.Add(covariate);
    }

    /// <summary>The data taken so far.</summary>
    public PathData Build() => new(lists);

    private static void Require(bool held, string otherwise)
    {
        if (!held)
        {
            throw new InvalidOperationException(otherwise);
        }
    }

    internal sealed class Lists
    {
        public List<int> ClusterStart { get; } = [];

        public List<int> GroupStart { get; } = [];

        public List<int> LegStart { get; } = [];

        public List<int> SlopeClass { get; } = [];

        public List<int> LevelClass { get; } = [];

        public List<double> Target { get; } = [];

        public List<double> X { get; } = [];

        public List<double> Lower { get; } = [];

        public List<double> Upper { get; } = [];

        public List<double> Variance { get; } = [];

        public List<double> Covariate { get; } = [];
    }
}
