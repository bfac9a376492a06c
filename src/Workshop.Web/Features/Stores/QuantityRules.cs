using FluentValidation;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>What may be typed as a quantity or a code in the stores.</summary>
internal static class QuantityRules
{
    public const decimal Smallest = 0.0001m;
    public const decimal Largest = 1_000_000m;
    public const int Decimals = 4;
    public const int LongestLot = 60;

    public static IRuleBuilderOptions<T, decimal?> IsQuantity<T>(this IRuleBuilder<T, decimal?> rule) =>
        rule.IsWithin(Smallest, Largest, Decimals, "pieces or ml");

    /// <summary>Of a new part or place.</summary>
    public static IRuleBuilderOptions<T, string?> IsStockCode<T>(this IRuleBuilder<T, string?> rule) =>
        rule.IsAtMost(Limits.Code).Must(c => string.IsNullOrEmpty(c) || StockCodes.IsCode(c))
            .WithMessage((_, c) => $"{{PropertyName}} is \"{c}\": {StockCodes.Form}, is allowed.");
}
