namespace Workshop.Domain.Statistics;

/// <summary>What every computation here demands of its arguments. A breach is a bug of the caller and throws.</summary>
internal static class Guard
{
    /// <summary>Squares of sums of such values stay far from overflow.</summary>
    private const double LargestMagnitude = 1e100;

    public static void Finite(ReadOnlySpan<double> values, string name)
    {
        for (var i = 0; i < values.Length; i++)
        {
            // Written so that NaN fails it too.
            if (!(Math.Abs(values[i]) <= LargestMagnitude))
            {
                throw new ArgumentException(
                    $"Value {i} is {values[i]}; finite values up to {LargestMagnitude} in size are allowed.", name);
            }
        }
    }

    public static void Finite(double value, string name) => Finite([value], name);

    public static void SameLength(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length)
        {
            throw new ArgumentException($"There are {x.Length} x and {y.Length} y; they must be as many.");
        }
    }

    public static void Confidence(double confidence)
    {
        if (!(confidence > 0 && confidence < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(confidence), confidence, "A confidence lies between 0 and 1, for example 0.95.");
        }
    }
}
