namespace Workshop.Domain.Stores;

/// <summary>
/// The newsvendor's rule: hold the smallest stock that is enough with probability missing / (missing + left) (Snyder and
/// Shen, Fundamentals of Supply Chain Theory, 2nd ed., Wiley 2019, section 4.3).
/// </summary>
public static class Newsvendor
{
    /// <summary>The service level that the two costs ask for.</summary>
    /// <param name="leftCost">Of one piece that is left over, above 0.</param>
    /// <param name="missingCost">Of one piece that is missing, above 0.</param>
    public static double ServiceLevel(double leftCost, double missingCost)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(leftCost);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(missingCost);
        return missingCost / (missingCost + leftCost);
    }
}
