using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.EngineModels;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Kits;

/// <summary>The old seals of what a visit opens that may go back in, with what their inspections say.</summary>
public static class GetSeals
{
    public sealed record Request(int Number);

    /// <param name="NotInspected">How many of those that must be inspected are not yet.</param>
    public sealed record Answer(int JobCardNumber, JobCardState State, int NotInspected, IReadOnlyList<Seal> Seals);

    /// <param name="PlaceCode">Of the joint or fastener that it seals.</param>
    /// <param name="Name">Absent where the stores do not know the part.</param>
    /// <param name="Quantity">How many sit there, in the part's unit.</param>
    /// <param name="Allowed">Where the maker says that it may be fitted again, for what is otherwise fitted once.</param>
    /// <param name="Inspection">The one that stands.</param>
    /// <param name="Earlier">Those that it corrected, latest first.</param>
    public sealed record Seal(
        string PlaceCode, string Place, string PartCode, string? Name, PartUnit Unit, decimal Quantity, SealPolicy Policy,
        string? Allowed, Inspection? Inspection, IReadOnlyList<Inspection> Earlier);

    /// <param name="Taken">How many new ones were taken.</param>
    public sealed record Inspection(SealVerdict Verdict, decimal Taken, string? Remark, string By, Instant At);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        (await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem) ? await Read(db, open, ct) : problem;

    internal static async Task<Answer> Read(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var number = open.Card.Number;
        var parts = await NamedParts.Read(db, open.Specification, ct);
        var rows = await (
            from inspection in db.SealInspections.AsNoTracking()
            join person in db.People on inspection.InspectedBy equals person.Id
            join remark in db.Remarks on inspection.RemarkId equals remark.Id into remarks
            from remark in remarks.DefaultIfEmpty()
            where inspection.JobCardNumber == number
            select new { Row = inspection, By = person.Name, Remark = remark == null ? null : remark.Text }).ToListAsync(ct);
        var said = rows.ToDictionary(r => r.Row.Id, r => (r.Row, Said: new Inspection(r.Row.Verdict, r.Row.Taken, r.Remark, r.By, r.Row.InspectedAt)));
        var standing = OpenedSeals.Standing([.. rows.Select(r => r.Row)]).ToDictionary(i => (i.PlaceCode, i.PartCode), i => (Guid?)i.Id);
        var seals = OpenedSeals.Of(open.Specification, open.ItemsUnderWay, parts).Select(seal =>
        {
            var all = new List<Inspection>();
            for (var id = standing.GetValueOrDefault((seal.PlaceCode, seal.PartCode)); id is { } at; id = said[at].Row.SupersedesId)
            {
                all.Add(said[at].Said);
            }

            var part = parts.GetValueOrDefault(seal.PartCode);
            return new Seal(
                seal.PlaceCode, seal.Place, seal.PartCode, part?.Name, part?.Unit ?? PartUnit.Piece, seal.Quantity, seal.Policy,
                AllowedBy(open.Specification, seal), all.FirstOrDefault(), [.. all.Skip(1)]);
        }).ToList();
        return new Answer(
            number, open.Card.State, seals.Count(s => s.Policy == SealPolicy.InspectAndReuse && s.Inspection is null), seals);
    }

    private static string? AllowedBy(EngineSpecification specification, SealToInspect seal) =>
        specification.Joints.Where(j => j.Code == seal.PlaceCode).SelectMany(j => j.Seals)
            .Concat(specification.Fasteners.Where(f => f.Code == seal.PlaceCode).SelectMany(f => f.Seals))
            .FirstOrDefault(s => s.PartCode == seal.PartCode && s.ReuseAllowedBy is not null)?.ReuseAllowedBy;
}
