using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>
/// Forgets a customer for good: name, telephone, address, what was said by and about them, why they put things off, their consents'
/// words, what was written on their records and their messages are blanked; links to those records end. What was done to the motorcycles stays; they have no owner on record any more.
/// </summary>
public static class ErasePerson
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        /// <summary>The person's name, typed once more: there is no way back.</summary>
        public string? ConfirmName { get; init; }
    }

    /// <param name="Motorcycles">That were theirs.</param>
    /// <param name="Remarks">That were blanked.</param>
    /// <param name="Messages">That were blanked.</param>
    public sealed record Answer(Guid Id, int Motorcycles, int Remarks, int Messages);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.ConfirmName).IsGiven("the person's name once more: an erasure cannot be undone").IsAtMost(Limits.Name);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!await db.People.AnyAsync(p => p.Id == request.Id, ct))
        {
            return Problem.NotFound($"Person {request.Id}");
        }

        if (!(await CustomerRows.Lock(db, request.Id, "id", ct)).TryGet(out var person, out var problem))
        {
            return problem;
        }

        if (request.ConfirmName!.Trim() != person.Name.Trim())
        {
            return Problem.Impossible("name-differs", "confirmName",
                $"confirmName is \"{request.ConfirmName}\": type the name as it stands, \"{person.Name}\", to erase that person for good.");
        }

        if (await db.OutboxMessages.AnyAsync(m => m.PersonId == person.Id && m.State == OutboxState.BeingSent, ct))
        {
            return Problem.Conflict("being-sent", "A message to this person is being sent; try again in a moment.");
        }

        var now = clock.GetCurrentInstant();
        (person.Name, person.Phone, person.Email, person.ErasedAt) = ("", null, null, now);
        await db.SaveChangesAsync(ct);
        var remarks = await BlankRemarks(db, person.Id, now, ct);
        var messages = await BlankMessages(db, person.Id, ct);
        await db.Consents.Where(c => c.PersonId == person.Id).ExecuteUpdateAsync(
            set => set.SetProperty(c => c.HowGiven, "")
                .SetProperty(c => c.WithdrawnBy, c => c.WithdrawnAt == null ? actor.PersonId : c.WithdrawnBy)
                .SetProperty(c => c.WithdrawnAt, c => c.WithdrawnAt ?? now), ct);
        await db.PutOffs.Where(p => db.Motorcycles.Any(m => m.Id == p.MotorcycleId && m.OwnerId == person.Id))
            .ExecuteUpdateAsync(set => set.SetProperty(p => p.Reason, ""), ct);
        await EndRecords(db, person.Id, actor, now, ct);
        var motorcycles = await db.Motorcycles.Where(m => m.OwnerId == person.Id)
            .ExecuteUpdateAsync(set => set.SetProperty(m => m.OwnerId, (Guid?)null), ct);
        return new Answer(person.Id, motorcycles, remarks, messages);
    }

    /// <summary>What was said at contacts, at check-in, and why visits were called off or ended; technical remarks stay.</summary>
    private static async Task<int> BlankRemarks(WorkshopDbContext db, Guid person, Instant now, CancellationToken ct)
    {
        var cards =
            from card in db.JobCards
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            where motorcycle.OwnerId == person
            select card.Number;
        var said = db.Contacts.Where(c => c.PersonId == person).Select(c => c.RemarkId)
            .Concat(db.CheckIns.Where(c => cards.Contains(c.JobCardNumber)).Select(c => c.OwnersWordsRemarkId))
            .Concat(db.CheckIns.Where(c => cards.Contains(c.JobCardNumber)).Select(c => c.SeenOnArrivalRemarkId))
            .Concat(db.Cancellations.Where(c => cards.Contains(c.JobCardNumber)).Select(c => (Guid?)c.ReasonRemarkId))
            .Concat(db.VisitWaits.Where(c => cards.Contains(c.JobCardNumber)).Select(c => c.RemarkId))
            .Concat(db.SignOffs.Where(c => cards.Contains(c.JobCardNumber)).Select(c => c.RemarkId))
            .Concat(db.ArrivalNotes.Where(n => cards.Contains(n.JobCardNumber)).Select(n => n.WordsRemarkId))
            .Concat(db.Comebacks.Where(c => cards.Contains(c.JobCardNumber)).Select(c => (Guid?)c.ReasonRemarkId))
            .Concat(OnEstimates(db, cards));
        return await db.Remarks.Where(r => said.Contains(r.Id) && r.ErasedAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(r => r.Text, "").SetProperty(r => r.ErasedAt, now), ct);
    }

    /// <summary>Nobody reads the records of the person's visits by a link any more, and what people wrote is gone from them.</summary>
    private static async Task EndRecords(WorkshopDbContext db, Guid person, Actor actor, Instant now, CancellationToken ct)
    {
        var cards =
            from card in db.JobCards
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            where motorcycle.OwnerId == person
            select card.Number;
        await db.RecordLinks.Where(l => cards.Contains(l.JobCardNumber) && l.RevokedAt == null).ExecuteUpdateAsync(
            set => set.SetProperty(l => l.RevokedAt, now).SetProperty(l => l.RevokedBy, actor.PersonId), ct);
        await db.IssuedRecords.Where(r => cards.Contains(r.JobCardNumber)).ExecuteUpdateAsync(
            set => set.SetProperty(r => r.Words, new Dictionary<string, string>()), ct);
    }

    /// <summary>What was said to estimates and findings, why prices were changed, and what stands beside photos.</summary>
    private static IQueryable<Guid?> OnEstimates(WorkshopDbContext db, IQueryable<int> cards)
    {
        var estimates = db.Estimates.Where(e => cards.Contains(e.JobCardNumber)).Select(e => e.Id);
        var findings = db.Findings.Where(f => cards.Contains(f.JobCardNumber)).Select(f => f.Id);
        return db.EstimateAnswers
            .Where(a => (a.EstimateId != null && estimates.Contains(a.EstimateId.Value)) || (a.FindingId != null && findings.Contains(a.FindingId.Value)))
            .Select(a => a.RemarkId)
            .Concat(db.EstimateLines.Where(l => estimates.Contains(l.EstimateId)).Select(l => l.ReasonRemarkId))
            .Concat(db.Findings.Where(f => cards.Contains(f.JobCardNumber)).Select(f => f.WithdrawnRemarkId))
            .Concat(db.Photos.Where(p => cards.Contains(p.JobCardNumber)).Select(p => p.CaptionRemarkId))
            .Concat(db.Photos.Where(p => cards.Contains(p.JobCardNumber)).Select(p => p.RemovedRemarkId));
    }

    private static Task<int> BlankMessages(WorkshopDbContext db, Guid person, CancellationToken ct) =>
        db.OutboxMessages.Where(m => m.PersonId == person).ExecuteUpdateAsync(
            set => set.SetProperty(m => m.To, "").SetProperty(m => m.Subject, "").SetProperty(m => m.Body, "")
                .SetProperty(m => m.LastFault, (string?)null).SetProperty(m => m.NextTryAt, (Instant?)null)
                .SetProperty(m => m.State, m => m.State == OutboxState.Sent || m.State == OutboxState.Copied ? m.State : OutboxState.Discarded), ct);
}
