using FluentValidation;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// The earliest moments at which a visit fits, over all bays, technicians, special tools and parking places. Nothing is held: what
/// is found may be gone when it is booked.
/// </summary>
public static class FindSlots
{
    private const int MostSlots = 20;
    private const int UsualSlots = 5;
    private const int LongestApart = 7 * 24 * 60;

    public sealed record Request
    {
        public Guid? MotorcycleId { get; init; }

        public IList<BookVisit.Item> Items { get; init; } = [];

        public Wishes? Wishes { get; init; }

        /// <summary>How many; absent: 5.</summary>
        public int? Count { get; init; }

        /// <summary>Between one start and the next, at least; absent: 60 minutes.</summary>
        public int? ApartMinutes { get; init; }

        /// <summary>Say why it cannot be earlier.</summary>
        public bool Explain { get; init; }
    }

    /// <param name="Parts">What the stores lack; a start waits for those of which it is known when they come.</param>
    /// <param name="WhyNotEarlier">In sentences, what held longest first; empty unless asked for.</param>
    public sealed record Answer(
        int WorkMinutes, IReadOnlyList<SlotAnswer> Slots, PartsShort Parts, IReadOnlyList<string> WhyNotEarlier);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.MotorcycleId).IsGiven("the motorcycle that comes");
            this.ItemsAreGiven(r => r.Items);
            RuleFor(r => r.Wishes!).SetValidator(new Wishes.Validator()).When(r => r.Wishes is not null);
            RuleFor(r => r.Count).IsWhole(1, MostSlots);
            RuleFor(r => r.ApartMinutes).IsWhole(SlotSearch.GridMinutes, LongestApart);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var now = clock.GetCurrentInstant();
        if (!(await VisitSubject.Find(db, request.MotorcycleId!.Value, calendar.Time.DayOf(now), ct)).TryGet(out var subject, out var problem)
            || !VisitItems.Choose(subject.Version.Specification, [.. request.Items.Select(i => new NamedItem(i.Code!, i.Likelihood))])
                .TryGet(out var items, out problem)
            || !(request.Wishes ?? new Wishes()).Read(calendar.Time).TryGet(out var wishes, out problem))
        {
            return problem;
        }

        var visit = await VisitCase.Of(db, subject.Version.Specification, items, wishes, ct);
        var parts = await PartsShort.Read(db, visit, calendar, cardNumber: null, now, ct);
        var terms = visit.Terms(now, parts.From);
        var floor = await VisitCase.ReadAll(db, calendar, now, Instant.Max(now, terms.PartsFrom ?? now), [], ct);
        var found = SlotSearch.Find(
            new PhasePlanner(floor, visit.Shape, visit.Needs, terms),
            new SlotQuery(request.Count ?? UsualSlots, request.ApartMinutes ?? SlotSearch.UsualApartMinutes, wishes.BayId, wishes.TechnicianId, request.Explain));
        return new Answer(
            visit.Shape.WorkMinutes,
            [.. found.Slots.Select(SlotAnswer.Of)],
            parts,
            request.Explain ? [.. parts.Parts.Where(p => p.From is not null).Select(p => p.Sentence), .. found.WhyNotEarlier] : []);
    }
}
