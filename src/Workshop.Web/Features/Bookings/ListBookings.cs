using System.Globalization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// Visits by the start of their work, a page at a time. The next page starts after the last visit of this one, by start and
/// number, so that visits booked meanwhile move nothing.
/// </summary>
public static class ListBookings
{
    /// <param name="State">Only cards in that state.</param>
    /// <param name="From">The first day, on the workshop's calendar.</param>
    /// <param name="LatestFirst">Back from the newest instead of on from the oldest.</param>
    public sealed record Request(
        string? After = null, int? Take = null, string? State = null, string? From = null, bool LatestFirst = false);

    public sealed record Row(
        int Number,
        JobCardState State,
        Instant StartsAt,
        Instant EndsAt,
        Guid MotorcycleId,
        string Registration,
        string Motorcycle,
        string? Owner,
        IReadOnlyList<string> Items);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.State).IsWordOf<Request, JobCardState>();
            RuleFor(r => r.From).IsDay();
            RuleFor(r => r.After).Must(after => after is null || TryRead(after, out _, out _))
                .WithMessage("{PropertyName} is \"{PropertyValue}\": send back what the page before gave as next.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var cards = db.JobCards.AsNoTracking();
        if (Words.Read<JobCardState>(request.State) is { } state)
        {
            cards = cards.Where(c => c.State == state);
        }

        if (request.From is { Length: > 0 } from)
        {
            var first = (await WorkshopTimes.Read(db, ct)).WholeDay(Days.Read(from)).Start;
            cards = cards.Where(c => c.StartsAt >= first);
        }

        if (request.After is { } after && TryRead(after, out var startsAt, out var number))
        {
            cards = request.LatestFirst
                ? cards.Where(c => c.StartsAt < startsAt || (c.StartsAt == startsAt && c.Number < number))
                : cards.Where(c => c.StartsAt > startsAt || (c.StartsAt == startsAt && c.Number > number));
        }

        cards = request.LatestFirst
            ? cards.OrderByDescending(c => c.StartsAt).ThenByDescending(c => c.Number)
            : cards.OrderBy(c => c.StartsAt).ThenBy(c => c.Number);
        var slice = await (
            from card in cards
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            join person in db.People on motorcycle.OwnerId equals person.Id into owners
            from owner in owners.DefaultIfEmpty()
            select new { card, motorcycle, Owner = owner!.Name }).ToSlice(request.Take, r => Write(r.card), ct);
        return new Slice<Row>(
            await WithItems(db, [.. slice.Rows.Select(r => (r.card, r.motorcycle.Registration, $"{r.motorcycle.Maker} {r.motorcycle.Model}", (string?)r.Owner))], ct),
            slice.Next);
    }

    private static async Task<IReadOnlyList<Row>> WithItems(
        WorkshopDbContext db, IReadOnlyList<(JobCard Card, string Registration, string Motorcycle, string? Owner)> rows, CancellationToken ct)
    {
        var numbers = rows.Select(r => r.Card.Number).ToList();
        var versionIds = rows.Select(r => r.Card.EngineModelVersionId).Distinct().ToList();
        var items = (await db.JobCardItems.AsNoTracking().Where(i => numbers.Contains(i.JobCardNumber))
            .OrderBy(i => i.ServiceItemCode).ToListAsync(ct)).ToLookup(i => i.JobCardNumber);
        var names = (await db.EngineModelVersions.AsNoTracking().Where(v => versionIds.Contains(v.Id)).ToListAsync(ct))
            .ToDictionary(v => v.Id, v => v.Specification.ServiceItems.ToDictionary(i => i.Code, i => i.Name, StringComparer.Ordinal));
        return [.. rows.Select(r => new Row(
            r.Card.Number, r.Card.State, r.Card.StartsAt, r.Card.EndsAt, r.Card.MotorcycleId, r.Registration, r.Motorcycle, r.Owner,
            [.. items[r.Card.Number].OrderBy(i => i.Likelihood).Select(i => Say(names[r.Card.EngineModelVersionId][i.ServiceItemCode], i))]))];
    }

    private static string Say(string name, JobCardItem item) =>
        item.Likelihood == Likelihood.Certain || item.StartedAt is not null ? name : $"{name} ({item.Likelihood.Spoken()})";

    private static string Write(JobCard card) =>
        string.Create(CultureInfo.InvariantCulture, $"{InstantPattern.ExtendedIso.Format(card.StartsAt)}_{card.Number}");

    private static bool TryRead(string after, out Instant startsAt, out int number)
    {
        (startsAt, number) = (default, 0);
        return after.Split('_') is [var start, var last]
            && InstantPattern.ExtendedIso.Parse(start).TryGetValue(default, out startsAt)
            && int.TryParse(last, NumberStyles.None, CultureInfo.InvariantCulture, out number);
    }
}
