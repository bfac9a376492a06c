using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>What still stands in the way of signing a card off; or, once it is signed, who did, when, and what was done.</summary>
public static class GetSignOff
{
    public sealed record Request(int Number);

    public sealed record Answer(int JobCardNumber, JobCardState State, IReadOnlyList<Reason> Reasons, IReadOnlyList<Item> Items, Signature? Signature);

    /// <param name="Subject">What it is about: <c>fasteners.drain-plug</c>, <c>valves.1-intake-1</c>.</param>
    /// <param name="Address">The page on which it is put right.</param>
    public sealed record Reason(string Subject, string Sentence, SignOffPlace Place, string Address);

    /// <param name="Done">Absent until the card is signed.</param>
    public sealed record Item(string Code, string Name, bool? Done);

    public sealed record Signature(string By, Instant At, int OdometerCount, OdometerUnit OdometerUnit, string? Remark);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var signed = await ReadSignature(db, request.Number, ct);
        var done = await db.DoneItems.Where(d => d.JobCardNumber == request.Number).Select(d => d.ServiceItemCode).ToListAsync(ct);
        var reasons = signed is null ? SignOffRules.Against(await SignOffCase.Gather(db, open, ct)) : [];
        return new Answer(
            request.Number,
            open.Card.State,
            [.. reasons.Select(r => new Reason(r.Subject, r.Sentence, r.Place, SignOffCase.AddressOf(request.Number, r.Place)))],
            [.. open.ItemsUnderWay.Select(i => new Item(i.Code, i.Name, signed is null ? null : done.Contains(i.Code)))],
            signed);
    }

    private static Task<Signature?> ReadSignature(WorkshopDbContext db, int number, CancellationToken ct) => (
        from signOff in db.SignOffs.AsNoTracking()
        join person in db.People on signOff.SignedBy equals person.Id
        join reading in db.OdometerReadings on signOff.OdometerReadingId equals reading.Id
        join remark in db.Remarks on signOff.RemarkId equals remark.Id into remarks
        from remark in remarks.DefaultIfEmpty()
        where signOff.JobCardNumber == number
        select new Signature(person.Name, signOff.SignedAt, reading.Count, reading.Unit, remark.Text)).SingleOrDefaultAsync(ct);
}
