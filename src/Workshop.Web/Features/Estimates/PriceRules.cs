using System.Globalization;
using FluentValidation;
using Workshop.Domain.Estimates;

namespace Workshop.Web.Features.Estimates;

/// <summary>What may be typed of money, said once.</summary>
internal static class PriceRules
{
    /// <param name="ofWhat">"an hour", "a piece or a litre".</param>
    public static IRuleBuilderOptions<T, decimal?> IsPrice<T>(this IRuleBuilder<T, decimal?> rule, string ofWhat) =>
        rule.Must(p => p is null || (p >= 0 && p <= Money.LargestPrice && decimal.Round(p.Value, Money.PriceDecimals) == p))
            .WithMessage((_, p) => string.Create(CultureInfo.InvariantCulture,
                $"{{PropertyName}} is {p}: the price of {ofWhat}, from 0 to {Money.LargestPrice} with at most {Money.PriceDecimals} decimals, is allowed."));
}
