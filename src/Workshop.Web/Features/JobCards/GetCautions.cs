using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>Which cautions of a card a page shows: <c>&lt;partial name="_Cautions" model="new CautionsAt(number, stage)" /&gt;</c>.</summary>
public sealed record CautionsAt(int Number, params CautionStage[] Stages);

/// <summary>The cautions of a visit, in the order in which it meets them, with who has read which.</summary>
public static class GetCautions
{
    public sealed record Request(int Number);

    public sealed record Answer(int JobCardNumber, IReadOnlyList<Row> Cautions, string Deference);

    /// <param name="OnlyWhenBegun">Of an item that is held ready, such as an adjustment: read before it is begun.</param>
    public sealed record Row(
        string Code, string Title, string Text, CautionStage Stage, bool OnlyWhenBegun, string? AcknowledgedBy, Instant? AcknowledgedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        (await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem)
            ? new Answer(request.Number, await Read(db, open, ct), Cautions.Deference)
            : problem;

    internal static async Task<IReadOnlyList<Row>> Read(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var certain = open.ItemsUnderWay.SelectMany(i => i.Cautions).ToHashSet(StringComparer.Ordinal);
        var read = await (
            from acknowledged in db.CautionAcknowledgements.AsNoTracking()
            join person in db.People on acknowledged.AcknowledgedBy equals person.Id
            where acknowledged.JobCardNumber == open.Card.Number
            orderby acknowledged.AcknowledgedAt
            select new { acknowledged.CautionCode, person.Name, acknowledged.AcknowledgedAt }).ToListAsync(ct);
        var first = read.GroupBy(r => r.CautionCode).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        return [.. Cautions.InOrder(certain.Concat(open.ItemsHeldReady.SelectMany(i => i.Cautions))).Select(c =>
        {
            var by = first.GetValueOrDefault(c.Code);
            return new Row(c.Code, c.Title, c.Text, c.Stage, !certain.Contains(c.Code), by?.Name, by?.AcknowledgedAt);
        })];
    }
}
