namespace Workshop.Domain.Tests.Statistics;

/// <summary>
/// How many leading digits a computed value shares with a certified one: the log relative error of B. D. McCullough,
/// The American Statistician 52 (1998) 358-366, from 0 to 15 (a double holds no more).
/// </summary>
internal static class DigitsOfAgreement
{
    private const double Most = 15;

    public static double Between(double computed, double certified)
    {
        if (!double.IsFinite(computed))
        {
            return 0;
        }

        var error = Math.Abs(computed - certified) / (certified == 0 ? 1 : Math.Abs(certified));
        return error == 0 ? Most : Math.Clamp(-Math.Log10(error), 0, Most);
    }

    public static void AtLeast(double digits, double computed, double certified, string what)
    {
        var agreed = Between(computed, certified);
        Assert.True(agreed >= digits, $"{what}: {computed:R} agrees with {certified:R} in {agreed:F1} digits, not {digits}.");
    }
}
