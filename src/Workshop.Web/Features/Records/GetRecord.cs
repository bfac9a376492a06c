using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Records;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Records;

/// <summary>The owner's record of a card, as it was written.</summary>
public static class GetRecord
{
    public sealed record Request(int Number);

    /// <param name="IsLater">Written after the sign-off: due and expected are those of that later day.</param>
    /// <param name="Words">What people wrote, by name: "remark", "not-done:code", "answer:finding", "caption:photo". Empty after an erasure.</param>
    public sealed record Answer(
        int JobCardNumber, Instant IssuedAt, bool IsLater, ServiceRecord Record, IReadOnlyDictionary<string, string> Words)
    {
        internal static Answer Of(IssuedRecord issued) => new(issued.JobCardNumber, issued.IssuedAt, issued.IsLater, issued.Document, issued.Words);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await db.IssuedRecords.AsNoTracking().SingleOrDefaultAsync(r => r.JobCardNumber == request.Number, ct) is { } issued)
        {
            return Answer.Of(issued);
        }

        var state = await db.JobCards.Where(c => c.Number == request.Number).Select(c => (JobCardState?)c.State).SingleOrDefaultAsync(ct);
        return state switch
        {
            null => Problem.NotFound($"Job card {request.Number}"),
            JobCardState.SignedOff => Problem.Conflict("record-not-written", $"Job card {request.Number} was signed before records were kept; write its record first."),
            _ => Problem.Conflict("not-signed-off", $"Job card {request.Number} is {state.Value.Spoken()}: its record is written at the sign-off."),
        };
    }
}
