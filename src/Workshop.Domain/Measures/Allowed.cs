namespace Workshop.Domain.Measures;

/// <summary>The one guard of the value types: a value outside what a type allows is a bug by the time it gets here.</summary>
internal static class Allowed
{
    public static decimal Within(decimal value, decimal smallest, decimal largest, int decimals)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(value, smallest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, largest);
        return HasAtMost(value, decimals)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, $"At most {decimals} decimals are allowed.");
    }

    public static bool HasAtMost(decimal value, int decimals) => decimal.Round(value, decimals) == value;
}
