using System.Text.Json.Serialization;
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
/// The workshop's week, sent whole: a weekday without hours is closed. Booked visits stay where they are; the answer names those
/// that now lie outside.
/// </summary>
public static class SetOpeningHours
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public uint? RowVersion { get; init; }

        // A list that can be added to: the page's binder fills it in place.
        public IList<Day> Days { get; init; } = [];
    }

    public sealed record Day
    {
        public IsoDayOfWeek? Weekday { get; init; }

        public LocalTime? OpensAt { get; init; }

        public LocalTime? ClosesAt { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Days).IsAWeek(d => d.Weekday);
            RuleFor(r => r.Days).Custom((days, context) =>
            {
                foreach (var fault in (days ?? []).SelectMany((d, at) =>
                    WorkingWeek.StretchFaults($"days[{at}].opensAt", d?.OpensAt, $"days[{at}].closesAt", d?.ClosesAt)))
                {
                    context.AddFailure(fault.Field, fault.Sentence);
                }
            });
        }
    }

    public static async Task<Outcome<EditWorkshop.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var profile = await db.WorkshopProfiles.SingleAsync(ct);
        var wanted = request.Days.Where(d => d.OpensAt is not null).ToDictionary(d => d.Weekday!.Value);
        var rows = await db.OpeningHours.ToDictionaryAsync(h => h.Weekday, ct);
        db.OpeningHours.RemoveRange(rows.Values.Where(r => !wanted.ContainsKey(r.Weekday)));
        foreach (var day in wanted.Values)
        {
            if (rows.TryGetValue(day.Weekday!.Value, out var row))
            {
                (row.OpensAt, row.ClosesAt) = (day.OpensAt!.Value, day.ClosesAt!.Value);
            }
            else
            {
                db.OpeningHours.Add(new OpeningHours
                {
                    Weekday = day.Weekday.Value, OpensAt = day.OpensAt!.Value, ClosesAt = day.ClosesAt!.Value,
                });
            }
        }

        var version = await EditWorkshop.Save(db, profile, request.RowVersion!.Value, ct);
        return new EditWorkshop.Answer(version, await StandingVisits.Read(db, resourceId: null, clock.GetCurrentInstant(), ct));
    }
}
