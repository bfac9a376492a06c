using FluentValidation;
using NodaTime;

namespace Workshop.Web.Features.Resources;

/// <summary>The days of a week, from Monday (ISO 8601).</summary>
internal static class Week
{
    public static readonly IReadOnlyList<IsoDayOfWeek> Days = [.. Enumerable.Range(1, 7).Select(d => (IsoDayOfWeek)d)];

    /// <summary>Weekdays, each at most once.</summary>
    public static void IsAWeek<T, TDay>(this IRuleBuilder<T, IList<TDay>> rule, Func<TDay, IsoDayOfWeek?> weekday)
    {
        rule.Must(days => days is { Count: <= 7 } && days.All(d => d is not null && weekday(d) is { } day && Days.Contains(day)))
            .WithMessage("days is not a list of weekdays: at most seven, each with its weekday from monday to sunday, are allowed.");
        rule.Must(days => days is null || days.DistinctBy(weekday).Count() == days.Count)
            .WithMessage("days names a weekday more than once; each has one row.");
    }
}
