using System.Linq.Expressions;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>
/// A moment as it is sent: an instant, as programs do, or else a day and a time of the workshop's own clock, as forms do.
/// </summary>
internal static class Moments
{
    /// <summary>One of the two forms is given, and whole.</summary>
    /// <param name="what">What it is for: "when the work starts".</param>
    public static void MomentIsGiven<T>(
        this AbstractValidator<T> rules,
        Expression<Func<T, Instant?>> instant,
        Expression<Func<T, LocalDate?>> day,
        Expression<Func<T, LocalTime?>> time,
        string what)
    {
        var (dayOf, timeOf) = (day.Compile(), time.Compile());
        rules.RuleFor(instant).IsGiven(what).When(r => dayOf(r) is null && timeOf(r) is null);
        rules.RuleFor(instant).Null().When(r => dayOf(r) is not null || timeOf(r) is not null)
            .WithMessage("{PropertyName} is given beside a day and a time: give one or the other.");
        rules.RuleFor(day).IsGiven($"the day, {what}").When(r => timeOf(r) is not null);
        rules.RuleFor(time).IsGiven($"the time, {what}").When(r => dayOf(r) is not null);
    }

    /// <summary>The moment, and the field that a refusal of it is about.</summary>
    public static (string Field, Outcome<Instant> Moment) Read(
        WorkshopTime clock, string instantField, Instant? instant, string timeField, LocalDate? day, LocalTime? time) =>
        instant is { } given
            ? (instantField, given)
            : (timeField, clock.InstantOf(timeField, day!.Value, time!.Value));
}
