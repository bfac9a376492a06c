using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Estimates;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Photos;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Findings;

/// <summary>One finding: its words and photos, its price, what the owner said.</summary>
public static class GetFinding
{
    public sealed record Request(Guid Id);

    /// <param name="Answers">Newest first; the first one holds.</param>
    public sealed record Answer(
        Guid Id, int JobCardNumber, string Place, string Text, FindingGravity Gravity, FindingState State, bool StaysUnsafe, string? ServiceItem, string? ServiceItemName,
        string FoundBy, Instant FoundAt, PriceView? Price, IReadOnlyList<GetEstimate.AnswerView> Answers, IReadOnlyList<PhotoView> Photos,
        string? DoneBy, Instant? DoneAt, string? WithdrawnBy, Instant? WithdrawnAt, string? WithdrawnBecause, uint RowVersion) : IHasVersion;

    /// <summary>The newest estimate of it.</summary>
    public sealed record PriceView(Guid EstimateId, int Version, string Currency, decimal Net, decimal Tax, decimal Gross, LocalDate? ValidUntil);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var number = await db.Findings.Where(f => f.Id == request.Id).Select(f => (int?)f.JobCardNumber).SingleOrDefaultAsync(ct);
        return number is null ? Problem.NotFound($"Finding {request.Id}") : (await Read(db, number.Value, f => f.Id == request.Id, ct)).Single();
    }

    /// <summary>Findings of one card, in order of time.</summary>
    internal static async Task<IReadOnlyList<Answer>> Read(
        WorkshopDbContext db, int number, System.Linq.Expressions.Expression<Func<Finding, bool>> which, CancellationToken ct)
    {
        var specification = (await OpenCard.Find(db, number, ct)).Value.Specification;
        var findings = db.Findings.AsNoTracking().Where(f => f.JobCardNumber == number).Where(which);
        var facts = (await FindingRows.Facts(db, findings, ct)).ToDictionary(f => f.Id);
        var rows = await (
            from finding in findings
            join text in db.Remarks on finding.TextRemarkId equals text.Id
            join finder in db.People on finding.FoundBy equals finder.Id
            join doer in db.People on finding.DoneBy equals doer.Id into doers
            from doer in doers.DefaultIfEmpty()
            join withdrawer in db.People on finding.WithdrawnBy equals withdrawer.Id into withdrawers
            from withdrawer in withdrawers.DefaultIfEmpty()
            join because in db.Remarks on finding.WithdrawnRemarkId equals because.Id into reasons
            from because in reasons.DefaultIfEmpty()
            orderby finding.FoundAt, finding.Id
            select new
            {
                Row = finding, text.Text, Finder = finder.Name, Doer = doer.Name, Withdrawer = withdrawer.Name, Because = because.Text,
                Version = EF.Property<uint>(finding, MappingExtensions.RowVersion),
            }).ToListAsync(ct);
        var photos = (await PhotoRows.Of(db, number, ct)).ToLookup(p => p.FindingId);
        var answers = new List<Answer>();
        foreach (var found in rows)
        {
            var row = found.Row;
            var price = await db.Estimates.AsNoTracking().Where(e => e.FindingId == row.Id).OrderByDescending(e => e.Version)
                .Select(e => new PriceView(e.Id, e.Version, e.Currency, e.Net, e.Tax, e.Gross, e.ValidUntil)).FirstOrDefaultAsync(ct);
            answers.Add(new Answer(
                row.Id, row.JobCardNumber, row.Place, found.Text, row.Gravity, facts[row.Id].State, facts[row.Id].StaysUnsafe, row.ServiceItemCode,
                row.ServiceItemCode is { } code ? VisitItems.Find(specification, code)?.Name ?? code : null, found.Finder, row.FoundAt, price,
                await GetEstimate.Answers(db, a => a.FindingId == row.Id, ct), [.. photos[row.Id]], found.Doer, row.DoneAt, found.Withdrawer, row.WithdrawnAt,
                found.Because, found.Version));
        }

        return answers;
    }
}
