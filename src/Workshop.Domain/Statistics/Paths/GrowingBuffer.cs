namespace Workshop.Domain.Statistics.Paths;

/// <summary>Numbers appended one after the other to an array that is kept from one use to the next.</summary>
internal sealed class GrowingBuffer(int capacity = 256)
{
    private double[] values = new double[capacity];

    public int Count { get; private set; }

    public double this[int index] => values[index];

    public void Clear() => Count = 0;

    public void Add(double value)
    {
        if (Count == values.Length)
        {
            Array.Resize(ref values, 2 * Count);
        }

        values[Count++] = value;
    }

    /// <summary>What was added since the buffer held so many.</summary>
    public Span<double> From(int first) => values.AsSpan(first, Count - first);

    /// <summary>A stretch of what was added.</summary>
    public ReadOnlySpan<double> Slice(int first, int count) => values.AsSpan(first, count);
}
