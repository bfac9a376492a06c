using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Records;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Records;

/// <summary>
/// Writes the record of a card that was signed before records were kept, from what now stands, and says so on it. What was not done and
/// why is part of its remark then.
/// </summary>
public static class WriteRecord
{
    public sealed record Request([property: JsonIgnore] int Number);

    public sealed record Answer(int JobCardNumber, Instant IssuedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Lock(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (open.Card.State != JobCardState.SignedOff)
        {
            return Problem.Conflict("not-signed-off", $"Job card {request.Number} is {open.Card.State.Spoken()}: its record is written at the sign-off.");
        }

        if (await db.IssuedRecords.AnyAsync(r => r.JobCardNumber == request.Number, ct))
        {
            return Problem.Conflict("record-written", $"The record of job card {request.Number} is written, and stays as it is.");
        }

        var remark = await (
            from signOff in db.SignOffs
            join r in db.Remarks on signOff.RemarkId equals r.Id
            where signOff.JobCardNumber == request.Number && r.Text != ""
            select r.Text).SingleOrDefaultAsync(ct);
        var written = new Dictionary<string, string>(StringComparer.Ordinal);
        if (remark is not null)
        {
            written.Add(RecordWords.Remark, remark);
        }

        await RecordWriter.Write(db, open, await SignOffCase.Gather(db, open, ct), written, isLater: true, actor, clock, ct);
        return new Answer(request.Number, clock.GetCurrentInstant());
    }
}
