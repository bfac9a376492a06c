using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Findings;

/// <summary>
/// Whom somebody has to ask: findings without an answer on visits that are under way, and estimates of visits that nobody has
/// answered. What is not safe comes first, then what waits longest.
/// </summary>
public static class ListWaiting
{
    public sealed record Request;

    public sealed record Answer(IReadOnlyList<Row> Rows);

    /// <param name="FindingId">Absent of an estimate of the visit itself.</param>
    /// <param name="EstimateId">Absent while nobody has said what it costs.</param>
    /// <param name="AgreedToPhone">Whether the owner has agreed to be called.</param>
    /// <param name="LastContact">When somebody last spoke or wrote to the owner, or tried.</param>
    public sealed record Row(
        int JobCardNumber, Guid MotorcycleId, string Registration, Guid? FindingId, string What, FindingGravity? Gravity, FindingState State, Instant Since,
        Guid? EstimateId, decimal? Gross, string? Currency, LocalDate? ValidUntil, Guid? OwnerId, string? Owner, string? Phone, bool AgreedToPhone,
        Instant? LastContact, ContactOutcome? LastOutcome);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var open = db.JobCards.Where(c => c.State == JobCardState.CheckedIn || c.State == JobCardState.Booked).Select(c => c.Number);
        var facts = (await FindingRows.Facts(db, db.Findings.Where(f => open.Contains(f.JobCardNumber) && f.WithdrawnAt == null && f.DoneAt == null), ct))
            .Where(f => f.Waits).ToDictionary(f => f.Id);
        var ids = facts.Keys.ToList();
        var findings = await db.Findings.AsNoTracking().Where(f => ids.Contains(f.Id)).ToListAsync(ct);
        var prices = (await db.Estimates.AsNoTracking().Where(e => e.FindingId != null && ids.Contains(e.FindingId.Value)).ToListAsync(ct))
            .GroupBy(e => e.FindingId!.Value).ToDictionary(g => g.Key, g => g.MaxBy(e => e.Version)!);

        // The newest estimate of a visit waits while nobody has answered it.
        var visits = (await db.Estimates.AsNoTracking().Where(e => e.FindingId == null && open.Contains(e.JobCardNumber)).ToListAsync(ct))
            .GroupBy(e => e.JobCardNumber).Select(g => g.MaxBy(e => e.Version)!).ToList();
        var made = visits.Select(e => e.Id).ToList();
        var answered = (await db.EstimateAnswers.Where(a => a.EstimateId != null && made.Contains(a.EstimateId.Value)).Select(a => a.EstimateId!.Value).Distinct().ToListAsync(ct)).ToHashSet();
        var waiting = findings
            .Select(f => (f.JobCardNumber, Finding: (Finding?)f, Estimate: prices.GetValueOrDefault(f.Id), Since: f.FoundAt))
            .Concat(visits.Where(e => !answered.Contains(e.Id)).Select(e => (e.JobCardNumber, Finding: (Finding?)null, Estimate: (Estimate?)e, Since: e.MadeAt)))
            .ToList();
        var owners = await Owners(db, [.. waiting.Select(w => w.JobCardNumber).Distinct()], ct);
        return new Answer([.. waiting
            .Select(w => RowOf(owners[w.JobCardNumber], w.Finding, w.Estimate, w.Since, w.Finding is { } f ? facts[f.Id].State : FindingState.WaitsForAnswer))
            .OrderByDescending(r => r.Gravity == FindingGravity.Unsafe).ThenBy(r => r.Since).ThenBy(r => r.JobCardNumber)]);
    }

    private static Row RowOf(OwnerOfCard owner, Finding? finding, Estimate? estimate, Instant since, FindingState state) => new(
        owner.JobCardNumber, owner.MotorcycleId, owner.Registration, finding?.Id, finding?.Place ?? $"Estimate {estimate!.Version} of the visit", finding?.Gravity, state, since,
        estimate?.Id, estimate?.Gross, estimate?.Currency, estimate?.ValidUntil, owner.Owner?.Id, owner.Owner?.Name, owner.Owner?.Phone, owner.AgreedToPhone,
        owner.Last?.At, owner.Last?.Outcome);

    private sealed record OwnerOfCard(int JobCardNumber, Guid MotorcycleId, string Registration, Person? Owner, bool AgreedToPhone, Contact? Last);

    private static async Task<Dictionary<int, OwnerOfCard>> Owners(WorkshopDbContext db, IReadOnlyList<int> cards, CancellationToken ct) => (await (
        from card in db.JobCards.AsNoTracking()
        join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
        join person in db.People on motorcycle.OwnerId equals person.Id into people
        from person in people.DefaultIfEmpty()
        where cards.Contains(card.Number)
        select new
        {
            card.Number, motorcycle.Id, motorcycle.Registration, Person = person,
            Agreed = db.Consents.Any(c => c.PersonId == motorcycle.OwnerId && c.Channel == ContactChannel.Phone && c.WithdrawnAt == null),
            Last = db.Contacts.Where(c => c.PersonId == motorcycle.OwnerId).OrderByDescending(c => c.At).ThenByDescending(c => c.Id).FirstOrDefault(),
        }).ToListAsync(ct)).ToDictionary(o => o.Number, o => new OwnerOfCard(o.Number, o.Id, o.Registration, o.Person, o.Agreed, o.Last));
}
