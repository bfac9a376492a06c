using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Utilisation;

/// <summary>Hours sold, worked and idle of bays and technicians over some days, and how many bays would be needed.</summary>
public static class GetUtilisation
{
    public const int UsualDays = 28;
    private const int MostDays = 366;

    /// <param name="From">First day; absent: four weeks back from the last.</param>
    /// <param name="Until">Last day; absent: today. What is still to come is not counted.</param>
    public sealed record Request(string? From = null, string? Until = null);

    /// <param name="CountedUntil">The end of the last day, or now.</param>
    public sealed record Answer(
        LocalDate From, LocalDate Until, Instant CountedUntil, IReadOnlyList<Hours> Bays, IReadOnlyList<Hours> Technicians, BaysNeeded BaysNeeded);

    /// <param name="HeldBesideHours">Held outside of the hours that are available: a bay overnight.</param>
    public sealed record Hours(
        Guid Id, string Name, double AvailableHours, double HeldHours, double HeldBesideHours, double IdleHours, double SoldHours,
        double? HeldShare, double? SoldPerHeld);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.From).IsDay();
            RuleFor(r => r.Until).IsDay();
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var (calendar, now) = (await WorkshopTimes.ReadCalendar(db, ct), clock.GetCurrentInstant());
        var until = Read(request.Until) ?? calendar.Time.DayOf(now);
        var from = Read(request.From) ?? until.PlusDays(1 - UsualDays);
        if (until < from || Period.DaysBetween(from, until) >= MostDays)
        {
            return Problem.Impossible("period", "from",
                $"from is {Days.Write(from)} and until is {Days.Write(until)}: 1 to {MostDays} days, the first before the last, are allowed.");
        }

        var end = Instant.Min(calendar.Time.WholeDay(until).End, now);
        var period = new Interval(calendar.Time.WholeDay(from).Start, Instant.Max(end, calendar.Time.WholeDay(from).Start));
        Interval[] open = [.. TakenAtOnce.Cut(
            new DateInterval(from, until).Select(day => calendar.OpenOn(day)).OfType<Interval>(), [period])];
        var floor = await FloorReader.Read(db, calendar, period.Start, calendar.Time.WholeDay(until).End, [], null, ct);
        var held = await HeldReader.Read(db, period, ct);
        var uses = ResourceHours.Of(
            period,
            [.. floor.Resources
                .Where(r => r.Resource.Kind is ResourceKind.Bay or ResourceKind.Technician)
                .Select(r => (r.Resource, r.Resource.Kind == ResourceKind.Bay ? TakenAtOnce.Cut(r.There(period), open) : r.There(period)))],
            held,
            await HeldReader.Sold(db, period, ct));
        var bays = uses.Where(u => u.Resource.Kind == ResourceKind.Bay).ToList();
        var ids = bays.Select(b => b.Resource.Id).ToHashSet();
        return new Answer(
            from, until, period.End, Say(bays), Say(uses.Where(u => u.Resource.Kind == ResourceKind.Technician)),
            BaysNeeded.Of([.. held.Where(h => ids.Contains(h.ResourceId))], open, bays.Count));
    }

    private static LocalDate? Read(string? day) => string.IsNullOrEmpty(day) ? null : Days.Read(day);

    private static IReadOnlyList<Hours> Say(IEnumerable<ResourceUse> uses) =>
        [.. uses.OrderBy(u => u.Resource.Name, StringComparer.Ordinal).Select(u => new Hours(
            u.Resource.Id, u.Resource.Name, u.Available.TotalHours, u.Held.TotalHours, u.HeldBeside.TotalHours, u.Idle.TotalHours,
            u.Sold.TotalHours, u.HeldShare, u.SoldPerHeld))];
}
