using System.Globalization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Web.Http;

/// <summary>
/// What may be typed, said once: each rule takes its limits from the value type and names field, value and what is allowed.
/// </summary>
internal static class Rules
{
    /// <summary>Fields are named as the caller writes them.</summary>
    public static void NameFieldsAsTyped() =>
        ValidatorOptions.Global.DisplayNameResolver = (_, member, _) => member is null ? null : FieldNames.Camel(member.Name);

    public static IRuleBuilderOptions<T, decimal?> IsClearance<T>(this IRuleBuilder<T, decimal?> rule) =>
        rule.IsWithin(Clearance.SmallestMm, Clearance.LargestMm, Clearance.DecimalsMm, "mm");

    public static IRuleBuilderOptions<T, decimal?> IsShimThickness<T>(this IRuleBuilder<T, decimal?> rule) =>
        rule.IsWithin(ShimThickness.SmallestMm, ShimThickness.LargestMm, ShimThickness.DecimalsMm, "mm");

    /// <summary>A valve by its key; whether the engine has it is asked later.</summary>
    public static IRuleBuilderOptions<T, string?> IsValve<T>(this IRuleBuilder<T, string?> rule) =>
        rule.Must(v => ValveKey.TryParse(v, null, out _))
            .WithMessage((_, v) => Text($"{{PropertyName}} is \"{v}\": {ValveKey.Form}, is allowed."));

    public static IRuleBuilderOptions<T, decimal?> IsTemperature<T>(this IRuleBuilder<T, decimal?> rule) =>
        rule.IsWithin(Temperature.SmallestC, Temperature.LargestC, Temperature.DecimalsC, "°C");

    public static IRuleBuilderOptions<T, decimal?> IsPressure<T>(this IRuleBuilder<T, decimal?> rule) =>
        rule.IsWithin(Pressure.SmallestKpa, Pressure.LargestKpa, Pressure.DecimalsKpa, "kPa");

    /// <summary>A pressure that is typed in bar, as most gauges of engines show it.</summary>
    public static IRuleBuilderOptions<T, decimal?> IsBar<T>(this IRuleBuilder<T, decimal?> rule) =>
        rule.IsWithin(Pressure.SmallestKpa / Pressure.KilopascalsPerBar, Pressure.LargestKpa / Pressure.KilopascalsPerBar, 3, "bar");

    public static IRuleBuilderOptions<T, decimal?> IsWithin<T>(
        this IRuleBuilder<T, decimal?> rule, decimal smallest, decimal largest, int decimals, string unit) =>
        rule.Must(v => v is null || (v >= smallest && v <= largest && decimal.Round(v.Value, decimals) == v))
            .WithMessage((_, v) => Text(
                $"{{PropertyName}} is {v} {unit}: {smallest} to {largest} {unit} with at most {decimals} decimals is allowed."));

    public static IRuleBuilderOptions<T, int?> IsOdometerCount<T>(this IRuleBuilder<T, int?> rule) =>
        rule.IsWhole(OdometerCount.Smallest, OdometerCount.Largest);

    public static IRuleBuilderOptions<T, int?> IsWhole<T>(this IRuleBuilder<T, int?> rule, int smallest, int largest) =>
        rule.Must(v => v is null || (v >= smallest && v <= largest))
            .WithMessage((_, v) => Text($"{{PropertyName}} is {v}: a whole number from {smallest} to {largest} is allowed."));

    /// <summary>A day of the calendar in an address, as ISO 8601 writes it; see <see cref="Days"/>.</summary>
    public static IRuleBuilderOptions<T, string?> IsDay<T>(this IRuleBuilder<T, string?> rule) =>
        rule.Must(v => string.IsNullOrEmpty(v) || Days.TryRead(v, out _))
            .WithMessage((_, v) => $"{{PropertyName}} is \"{v}\": a day such as 2026-03-02 is allowed.");

    /// <summary>One word of a fixed set in an address; see <see cref="Words"/>.</summary>
    public static IRuleBuilderOptions<T, string?> IsWordOf<T, TWord>(this IRuleBuilder<T, string?> rule)
        where TWord : struct, Enum =>
        rule.Must(v => string.IsNullOrEmpty(v) || Words.Read<TWord>(v) is not null)
            .WithMessage((_, v) => $"{{PropertyName}} is \"{v}\": one of {string.Join(", ", Words.All<TWord>())} is allowed.");

    /// <summary>
    /// Must be one of a fixed set of words: the API's names at the API, the spoken ones on a page. Say what it is for before them.
    /// </summary>
    public static IRuleBuilderOptions<T, TWord?> IsChosen<T, TWord>(this IRuleBuilder<T, TWord?> rule, string what, Func<TWord, string> spoken)
        where TWord : struct, Enum =>
        rule.NotNull()
            .WithMessage($"{{PropertyName}} is empty: give {what}: {string.Join(", ", Words.All<TWord>())}.")
            .WithState((_, _) => new OnPage($"{what} is not chosen yet: {string.Join(", ", Enum.GetValues<TWord>().Select(spoken))}."));

    /// <summary>A zone of the tz database by its name.</summary>
    public static IRuleBuilderOptions<T, string?> IsTimeZone<T>(this IRuleBuilder<T, string?> rule) =>
        rule.Must(v => string.IsNullOrEmpty(v) || DateTimeZoneProviders.Tzdb.GetZoneOrNull(v) is not null)
            .WithMessage((_, v) => $"{{PropertyName}} is \"{v}\": a zone of the tz database such as Europe/Vienna is allowed.");

    /// <summary>Must be there; say what it is for.</summary>
    public static IRuleBuilderOptions<T, TValue> IsGiven<T, TValue>(this IRuleBuilder<T, TValue> rule, string what) =>
        rule.NotEmpty().WithMessage($"{{PropertyName}} is empty: give {what}.");

    public static IRuleBuilderOptions<T, string?> IsAtMost<T>(this IRuleBuilder<T, string?> rule, int characters) =>
        rule.Must(v => v is null || v.Length <= characters)
            .WithMessage((_, v) => Text(
                $"{{PropertyName}} has {v?.Length} characters: at most {characters} are allowed."));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>What a rule says on a page, where at the API it lists the API's words.</summary>
internal sealed record OnPage(string Sentence);
