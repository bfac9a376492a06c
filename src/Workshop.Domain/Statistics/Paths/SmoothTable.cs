namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// A smooth function known at equally spaced places, in between by the cubic through the four nearest (Lagrange): exact for
/// the logarithm of a normal density.
/// </summary>
internal static class SmoothTable
{
    /// <summary>The function between place i and the next, at a share of the way from 0 to 1.</summary>
    public static double Between(ReadOnlySpan<double> values, int place, double share)
    {
        if (share == 0)
        {
            return values[place];
        }

        if (values.Length < 4)
        {
            return values[place] + (share * (values[place + 1] - values[place]));
        }

        var first = Math.Clamp(place - 1, 0, values.Length - 4);
        var t = place - first + share;
        var (a, b, c, d) = (values[first], values[first + 1], values[first + 2], values[first + 3]);
        return (-a * (t - 1) * (t - 2) * (t - 3) / 6)
            + (b * t * (t - 2) * (t - 3) / 2)
            - (c * t * (t - 1) * (t - 3) / 2)
            + (d * t * (t - 1) * (t - 2) / 6);
    }
}
