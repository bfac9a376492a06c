using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>The workshop itself: name, time zone, minutes of the phases, opening hours, holidays from this year on.</summary>
public static class GetWorkshop
{
    public sealed record Request;

    /// <param name="OpeningHours">Weekdays on which it opens.</param>
    /// <param name="Standing">Booked visits that now lie outside the hours, or in an absence.</param>
    public sealed record Answer(
        string Name,
        string TimeZone,
        string? Phone,
        int ArrivalMinutes,
        int WarmRunMinutes,
        int TestRideMinutes,
        int HandOverMinutes,
        IReadOnlyList<Day> OpeningHours,
        IReadOnlyList<NamedDay> Holidays,
        IReadOnlyList<StandingVisit> Standing,
        uint RowVersion) : IHasVersion;

    public sealed record Day(IsoDayOfWeek Weekday, LocalTime OpensAt, LocalTime ClosesAt);

    public sealed record NamedDay(LocalDate Day, string Name);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var read = await db.WorkshopProfiles.AsNoTracking()
            .Select(p => new { Profile = p, Version = EF.Property<uint>(p, MappingExtensions.RowVersion) }).SingleAsync(ct);
        var profile = read.Profile;
        var yearBegins = new LocalDate(WorkshopTime.Of(profile).DayOf(now).Year, 1, 1);
        return new Answer(
            profile.Name, profile.TimeZone, profile.Phone, profile.ArrivalMinutes, profile.WarmRunMinutes, profile.TestRideMinutes, profile.HandOverMinutes,
            [.. (await db.OpeningHours.AsNoTracking().ToListAsync(ct)).OrderBy(h => h.Weekday).Select(h => new Day(h.Weekday, h.OpensAt, h.ClosesAt))],
            [.. (await db.Holidays.AsNoTracking().Where(h => h.Day >= yearBegins).OrderBy(h => h.Day).ToListAsync(ct))
                .Select(h => new NamedDay(h.Day, h.Name))],
            await StandingVisits.Read(db, resourceId: null, now, ct),
            read.Version);
    }
}
