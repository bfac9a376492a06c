using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>Vienna in 2026; see <see cref="OpeningCalendarTests"/> for the days on which the clocks change.</summary>
public class WorkingTimeTests
{
    private static readonly WorkshopTime Vienna = new(DateTimeZoneProviders.Tzdb["Europe/Vienna"]);
    private static readonly LocalDate Monday = new(2026, 3, 2);
    private static readonly LocalDate LabourDay = new(2026, 5, 1);
    private static readonly Guid Technician = new(1, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);

    private static readonly OpeningCalendar Calendar = new(
        Vienna,
        Enumerable.Range(1, 5).Select(d => new OpeningHours { Weekday = (IsoDayOfWeek)d, OpensAt = new LocalTime(8, 0), ClosesAt = new LocalTime(17, 0) }),
        [new Holiday { Day = LabourDay, Name = "Labour Day" }]);

    [Fact]
    public void Without_hours_of_his_own_a_technician_works_the_opening_hours_without_his_breaks_and_absences()
    {
        var time = Time([], [Break(IsoDayOfWeek.Monday, 12, 13)], [Away(At(Monday, 15), At(Monday.PlusDays(1), 10))]);

        Assert.Equal([Span(Monday, 8, 12), Span(Monday, 13, 15)], time.On(Monday));
        Assert.Equal([Span(Monday.PlusDays(1), 10, 17)], time.On(Monday.PlusDays(1)));
        Assert.Empty(time.On(Monday.PlusDays(5)));
    }

    [Fact]
    public void With_hours_of_his_own_he_works_those_weekdays_only_and_never_on_a_holiday()
    {
        var time = Time([Hours(IsoDayOfWeek.Saturday, 6, 12), Hours(IsoDayOfWeek.Friday, 7, 12)], [], []);

        Assert.Equal([Span(Monday.PlusDays(5), 6, 12)], time.On(Monday.PlusDays(5)));
        Assert.Empty(time.On(Monday));
        Assert.Empty(time.On(LabourDay));
        Assert.Equal([Span(LabourDay.PlusDays(7), 7, 12)], time.On(LabourDay.PlusDays(7)));
    }

    [Fact]
    public void A_withdrawn_absence_takes_nothing()
    {
        var withdrawn = Away(At(Monday, 9), At(Monday, 11));
        withdrawn.WithdrawnAt = At(Monday, 8);

        Assert.Equal([Span(Monday, 8, 17)], Time([], [], [withdrawn]).On(Monday));
    }

    [Fact]
    public void A_break_in_the_hour_that_the_clocks_skip_is_not_there()
    {
        var sunday = new LocalDate(2026, 3, 29);
        var time = Time([Hours(IsoDayOfWeek.Sunday, 0, 6)], [Break(IsoDayOfWeek.Sunday, 2, 3)], []);

        Assert.Equal(Duration.FromHours(5), Assert.Single(time.On(sunday)).Duration);
    }

    [Fact]
    public void A_span_stands_wrong_where_its_technician_is_away_not_at_work_or_the_workshop_closed_and_touching_is_legal()
    {
        var time = Time([], [Break(IsoDayOfWeek.Monday, 12, 13)], [Away(At(Monday, 15), At(Monday, 16))]);
        Misplacement? Of(ResourceKind kind, Interval span) => Misplacements.Of(kind, time, Calendar, span);

        Assert.Null(Of(ResourceKind.Technician, Span(Monday, 13, 15)));
        Assert.Null(Of(ResourceKind.Technician, Span(Monday, 16, 17)));
        Assert.Equal(Misplacement.Absent, Of(ResourceKind.Technician, Span(Monday, 14, 16)));
        Assert.Equal(Misplacement.NotAtWork, Of(ResourceKind.Technician, Span(Monday, 11, 14)));
        Assert.Equal(Misplacement.Closed, Of(ResourceKind.Technician, Span(Monday, 16, 18)));
        Assert.Null(Of(ResourceKind.Bay, new Interval(At(Monday, 16), At(Monday.PlusDays(1), 9))));
        Assert.Equal(Misplacement.Absent, Of(ResourceKind.Bay, Span(Monday, 8, 16)));
        Assert.Equal(Misplacement.Closed, Misplacements.Of(VisitPhase.HandOver, Calendar, Span(LabourDay, 9, 10)));
        Assert.Null(Misplacements.Of(VisitPhase.ColdSoak, Calendar, Span(LabourDay, 9, 10)));
    }

    private static WorkingTime Time(WorkingHours[] hours, WorkBreak[] breaks, Absence[] absences)
    {
        var days = new DateInterval(Monday.PlusDays(-7), LabourDay.PlusDays(30));
        var technician = new Resource { Id = Technician, Kind = ResourceKind.Technician, Name = "TN" };
        return WorkingTime.Of(technician, new OpeningDays(Calendar, days), days, hours, breaks, absences);
    }

    private static Instant At(LocalDate day, int hour) => (day + new LocalTime(hour, 0)).InZoneLeniently(Vienna.Zone).ToInstant();

    private static Interval Span(LocalDate day, int from, int until) => new(At(day, from), At(day, until));

    private static WorkingHours Hours(IsoDayOfWeek weekday, int from, int until) => new()
    {
        ResourceId = Technician, Weekday = weekday, StartsAt = new LocalTime(from, 0), EndsAt = new LocalTime(until, 0),
    };

    private static WorkBreak Break(IsoDayOfWeek weekday, int from, int until) => new()
    {
        Id = Guid.Empty, ResourceId = Technician, Weekday = weekday, StartsAt = new LocalTime(from, 0), EndsAt = new LocalTime(until, 0),
    };

    private static Absence Away(Instant from, Instant until) => new()
    {
        Id = Guid.Empty, ResourceId = Technician, Span = new Interval(from, until), Reason = AbsenceReason.Leave, EnteredBy = Technician,
        EnteredAt = from,
    };
}
