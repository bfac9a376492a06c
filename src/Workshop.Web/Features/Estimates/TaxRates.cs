using Workshop.Domain.Outcomes;

namespace Workshop.Web.Features.Estimates;

/// <summary>What is said of tax rates in several places.</summary>
internal static class TaxRates
{
    public const int PercentDecimals = 3;
    public const decimal LargestPercent = 100;

    public static Problem Unknown(string field, string code, IReadOnlyList<string> known) => Problem.Impossible("tax-unknown", field,
        $"{field} is \"{code}\": {(known.Count == 0 ? "no tax rate is entered yet" : $"{string.Join(", ", known)} are allowed")}.");
}
