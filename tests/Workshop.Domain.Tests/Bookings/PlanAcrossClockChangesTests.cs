using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>
/// Plans over the nights on which the clocks change, in two zones: Vienna by Directive 2000/84/EC, articles 2 and 3, New York by the
/// Energy Policy Act of 2005, section 110 (second Sunday of March to first Sunday of November). When exactly, NodaTime's tz database says.
/// </summary>
public class PlanAcrossClockChangesTests
{
    public static TheoryData<string, string> Nights { get; } = new()
    {
        { "Europe/Vienna", "2026-03-28" }, { "Europe/Vienna", "2026-10-24" },
        { "America/New_York", "2026-03-07" }, { "America/New_York", "2026-10-31" },
    };

    [Theory]
    [MemberData(nameof(Nights))]
    public void Soak_hours_are_elapsed_hours_and_work_over_the_night_takes_its_minutes(string zone, string saturday)
    {
        var (time, day) = Of(zone, saturday);
        var floor = Floor(time, day);
        var shape = new VisitShape { ArrivalMinutes = 10, Soak = Duration.FromHours(14), WorkMinutes = 9 * 60 };

        var found = SlotSearch.Find(
            new PhasePlanner(floor, shape, new VisitNeeds([], [], TechnicianGrade.Apprentice, []), new PlanTerms { Now = At(time, day, 8) }),
            new SlotQuery(1, 60)).Slots.Single().Plan;

        // It comes at 08:00 on Saturday, and is cold 14 elapsed hours after 08:10: in the night of the change at 22:10, at work when it opens.
        Assert.Equal(At(time, day.PlusDays(1), 8), found.WorkStartsAt);
        var soak = found.Phases.Single(p => p.Phase == VisitPhase.ColdSoak).Span;
        var interval = time.Zone.GetZoneInterval(At(time, day, 12));
        Assert.True(interval.HasEnd && interval.End > At(time, day, 12) && interval.End < At(time, day.PlusDays(1), 12), "the tz database has the change in that night");
        Assert.True(soak.Duration >= shape.Soak);
        // Work from 08:00 to 17:00 by the wall clock, nine hours, on the day after the change.
        Assert.Equal(At(time, day.PlusDays(1), 17), found.Phases.Single(p => p.Phase == VisitPhase.Work).Span.End);
    }

    [Theory]
    [MemberData(nameof(Nights))]
    public void Of_a_soak_through_the_night_of_the_change_the_last_arrival_moves_by_the_hour_of_the_change(string zone, string saturday)
    {
        var (time, day) = Of(zone, saturday);
        var shape = new VisitShape { ArrivalMinutes = 10, Soak = Duration.FromHours(16), WorkMinutes = 60 };
        var planner = new PhasePlanner(
            Floor(time, day), shape, new VisitNeeds([], [], TechnicianGrade.Apprentice, []), new PlanTerms { Now = At(time, day, 8) });

        var plan = planner.Plan(
            planner.Floor.Of(ResourceKind.Bay)[0], planner.Floor.Of(ResourceKind.Technician)[0], At(time, day.PlusDays(1), 8)).Plan!;

        var shift = time.Zone.GetUtcOffset(At(time, day.PlusDays(1), 8)) - time.Zone.GetUtcOffset(At(time, day, 8));
        // 16 hours before 08:00 is 16:00 by the wall clock of an ordinary night; 15:00 when an hour is skipped, 17:00 when one comes twice.
        Assert.Equal(new LocalTime(16, 0).PlusSeconds(-shift.Seconds).PlusMinutes(-10), time.At(plan.ArrivesAt).TimeOfDay);
        Assert.Equal(shape.Soak, plan.WorkStartsAt - plan.Phases[0].Span.End);
    }

    [Theory]
    [MemberData(nameof(Nights))]
    public void Work_that_does_not_fit_before_the_night_goes_on_in_the_morning_with_the_minutes_that_are_left(string zone, string saturday)
    {
        var (time, day) = Of(zone, saturday);
        var planner = new PhasePlanner(
            Floor(time, day), new VisitShape { WorkMinutes = 90 }, new VisitNeeds([], [], TechnicianGrade.Apprentice, []), new PlanTerms { Now = At(time, day, 8) });
        var (bay, technician) = (planner.Floor.Of(ResourceKind.Bay)[0], planner.Floor.Of(ResourceKind.Technician)[0]);

        var plan = planner.Plan(bay, technician, At(time, day, 17)).Plan!;

        Assert.Equal(
            [new Interval(At(time, day, 17), At(time, day, 18)), new Interval(At(time, day.PlusDays(1), 8), At(time, day.PlusDays(1), 8) + Duration.FromMinutes(30))],
            plan.Takes.Where(t => t.ResourceId == technician.Resource.Id).Select(t => t.Span));
        var overnight = plan.Takes.Single(t => t.ResourceId == bay.Resource.Id).Span;
        var ordinary = Duration.FromHours(15) + Duration.FromMinutes(30);
        var shift = time.Zone.GetUtcOffset(overnight.End) - time.Zone.GetUtcOffset(overnight.Start);
        Assert.Equal(ordinary - Duration.FromSeconds(shift.Seconds), overnight.Duration);
        Assert.NotEqual(0, shift.Seconds);
    }

    private static (WorkshopTime, LocalDate) Of(string zone, string day) =>
        (new WorkshopTime(DateTimeZoneProviders.Tzdb[zone]), NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value);

    private static Instant At(WorkshopTime time, LocalDate day, int hour) => (day + new LocalTime(hour, 0)).InZoneStrictly(time.Zone).ToInstant();

    /// <summary>One bay, one technician, one place; open from 08:00 to 18:00 every day.</summary>
    private static WorkshopFloor Floor(WorkshopTime time, LocalDate day)
    {
        var calendar = new OpeningCalendar(
            time,
            Enumerable.Range(1, 7).Select(d => new OpeningHours { Weekday = (IsoDayOfWeek)d, OpensAt = new LocalTime(8, 0), ClosesAt = new LocalTime(18, 0) }),
            []);
        var days = new DateInterval(day, day.PlusDays(10));
        var opening = new OpeningDays(calendar, days);
        return new WorkshopFloor(opening, new Interval(time.WholeDay(day).Start, time.WholeDay(day.PlusDays(10)).End),
            [.. new[] { ResourceKind.Bay, ResourceKind.Technician, ResourceKind.ParkingPlace }.Select((kind, i) => ResourceTimeline.Of(
                new Resource { Id = new Guid(i + 1, 0, 0, new byte[8]), Kind = kind, Name = kind.Spoken() }, opening, days, [], [], [], []))]);
    }
}
