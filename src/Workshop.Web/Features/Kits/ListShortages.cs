using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// What the visits to come lack, and what it delays: which part, how many, expected when, which visits wait for it, and the
/// earliest day on which each can be done.
/// </summary>
public static class ListShortages
{
    /// <param name="Number">Only what this card lacks, shared out among all.</param>
    public sealed record Request(int? Number = null);

    /// <param name="Parts">By the first visit that lacks them.</param>
    /// <param name="Visits">In the order in which they are planned; those that wait for nothing are left out.</param>
    public sealed record Answer(IReadOnlyList<MissingPart> Parts, IReadOnlyList<Waiting> Visits);

    /// <param name="Name">Absent where the stores do not know the part.</param>
    /// <param name="ShortBy">Of all visits together, what is used in any case.</param>
    /// <param name="ReadyShortBy">The same of what only lies ready: it delays nothing.</param>
    /// <param name="Discontinued">It is made no more.</param>
    /// <param name="Replacement">What took its place, or may stand in for it.</param>
    public sealed record MissingPart(
        string PartCode, string? Name, PartUnit Unit, decimal ShortBy, decimal ReadyShortBy, bool Discontinued,
        IReadOnlyList<Coming> Deliveries, IReadOnlyList<KitOnShelf.OtherPart> Alternatives, IReadOnlyList<PartOfVisit> Visits);

    public sealed record Coming(LocalDate ExpectedOn, decimal Quantity);

    /// <param name="On">The day on which its work begins.</param>
    /// <param name="ShortBy">Of what is used in any case, what is not there now.</param>
    /// <param name="ShortOnDay">Of that, what no delivery brings until its day: what the projected stock calls short.</param>
    /// <param name="Ordered">Deliveries are expected that bring all of it.</param>
    /// <param name="ComesOn">When enough for this visit is here, if the rest is ordered today; absent where nobody knows, or nothing waits for it.</param>
    public sealed record PartOfVisit(
        int JobCardNumber, string Registration, Instant StartsAt, LocalDate On, decimal ShortBy, decimal ReadyShortBy, decimal ShortOnDay, bool Ordered,
        LocalDate? ComesOn)
    {
        /// <summary>Of what lies there, what expires before the visit, in words; absent where all of it lasts.</summary>
        public string? Ends { get; init; }
    }

    /// <param name="EarliestOn">The earliest day on which its work can be done; absent where nobody knows when a part comes.</param>
    /// <param name="Delayed">It is planned before that day, or nobody knows the day.</param>
    public sealed record Waiting(int JobCardNumber, string Registration, Instant StartsAt, LocalDate? EarliestOn, bool Delayed, string Sentence);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var book = await ShortageBook.Read(db, clock, ct);
        return request.Number is { } number ? book.Of(number) : book.All;
    }
}
