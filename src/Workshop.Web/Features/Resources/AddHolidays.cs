using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>
/// Holidays, one or a list of several years; all of them or none. A day that is entered already takes the new name. Booked
/// visits stay where they are; the answer names those that now lie on a closed day.
/// </summary>
public static class AddHolidays
{
    private const int Most = 1000;

    public sealed record Request
    {
        // A list that can be added to.
        public IList<Item> Holidays { get; init; } = [];
    }

    public sealed record Item
    {
        public LocalDate? Day { get; init; }

        public string? Name { get; init; }
    }

    /// <param name="Unchanged">Entered before under the same name.</param>
    public sealed record Answer(int Added, int Renamed, int Unchanged, IReadOnlyList<StandingVisit> Standing);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Holidays).Must(h => h is { Count: > 0 and <= Most })
                .WithMessage($"holidays holds none or too many: 1 to {Most} days are allowed.");
            RuleForEach(r => r.Holidays).ChildRules(item =>
            {
                item.RuleFor(i => i.Day).IsGiven("the day, such as 2027-01-01");
                item.RuleFor(i => i.Name).IsGiven("what the holiday is called").IsAtMost(Limits.HolidayName);
            });
            RuleFor(r => r.Holidays).Must(h => h is null || h.Where(i => i?.Day is not null).DistinctBy(i => i.Day).Count() == h.Count(i => i?.Day is not null))
                .WithMessage((_, h) => $"holidays names {Days.Write(h.Where(i => i?.Day is not null).GroupBy(i => i.Day).First(g => g.Count() > 1).Key!.Value)} more than once; each day has one name.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var days = request.Holidays.Select(h => h.Day!.Value).ToList();
        var rows = await db.Holidays.Where(h => days.Contains(h.Day)).ToDictionaryAsync(h => h.Day, ct);
        var (added, renamed) = (0, 0);
        foreach (var item in request.Holidays)
        {
            if (!rows.TryGetValue(item.Day!.Value, out var row))
            {
                db.Holidays.Add(new Holiday { Day = item.Day.Value, Name = item.Name! });
                added++;
            }
            else if (row.Name != item.Name)
            {
                row.Name = item.Name!;
                renamed++;
            }
        }

        await db.SaveChangesAsync(ct);
        var standing = await StandingVisits.Read(db, resourceId: null, clock.GetCurrentInstant(), ct);
        return new Answer(added, renamed, request.Holidays.Count - added - renamed, standing);
    }
}
