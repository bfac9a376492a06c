using System.Globalization;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>A day of the workshop as a drawing and a table. Shown by <c>&lt;partial name="_DayTable" model="Model.Day" /&gt;</c>.</summary>
public sealed record DayView(AvailabilityOf.Answer Day, WorkshopTime Time)
{
    public TimeBars Bars => TimeBars.Of(
        Time,
        new Interval(Day.OpensAt, Day.ClosesAt),
        [.. Day.Resources.Select(r => new TimeBarRow(
            r.Name, [.. r.Taken.Select(t => (new Interval(t.From, t.Until), t.JobCardNumber.ToString(CultureInfo.InvariantCulture)))]))],
        $"What is taken on {Days.Write(Day.Date)}, hatched; the same in words in the table below.");

    /// <summary>The time of day; with its date where it is of another day.</summary>
    public string Clock(Instant instant) => Time.DayOf(instant) == Day.Date
        ? Time.At(instant).ToString("HH:mm", CultureInfo.InvariantCulture)
        : Time.Say(instant);
}
