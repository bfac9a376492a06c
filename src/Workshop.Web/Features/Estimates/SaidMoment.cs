using Microsoft.AspNetCore.Mvc.ModelBinding;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Estimates;

/// <summary>When an owner said something, as a form has it: a day, and a time where it is known.</summary>
internal static class SaidMoment
{
    /// <summary>Nothing for "now": today without a time. An earlier day without one counts as noon.</summary>
    public static Instant? Read(WorkshopTime time, LocalDate? day, LocalTime? at, IClock clock, ModelStateDictionary form)
    {
        var today = time.DayOf(clock.GetCurrentInstant());
        if (at is null && (day is null || day == today))
        {
            return null;
        }

        if (time.InstantOf("saidTime", day ?? today, at ?? LocalTime.Noon).TryGet(out var moment, out var problem))
        {
            return moment;
        }

        form.AddModelError("SaidTime", problem.Sentence);
        return null;
    }
}
