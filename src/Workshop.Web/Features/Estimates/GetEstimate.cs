using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Estimates;

/// <summary>An estimate as it was made, with what was said to it.</summary>
public static class GetEstimate
{
    public sealed record Request(Guid Id);

    /// <param name="Replaced">A newer one of the visit, or of the same finding, stands.</param>
    /// <param name="Expired">Its last day is over.</param>
    /// <param name="Answers">Newest first; the first one holds.</param>
    /// <param name="Margin">The manager's alone.</param>
    public sealed record Answer(
        Guid Id, int JobCardNumber, int Version, Guid? FindingId, string? FindingPlace, Guid MotorcycleId, string Registration, string Motorcycle,
        Guid? OwnerId, string? Owner, string Currency, IReadOnlyList<LineView> Lines, SumView Sums, IReadOnlyList<OptionView> Options,
        LocalDate? ValidUntil, Instant MadeAt, string MadeBy, bool Replaced, bool Expired, bool MayBeAnswered, IReadOnlyList<AnswerView> Answers,
        EstimateMargin? Margin);

    /// <param name="By">Who said it; nothing where somebody else did, whom the remark names, or a person who was erased.</param>
    public sealed record AnswerView(
        EstimateDecision Decision, AnswerWay Way, Instant SaidAt, string? By, bool ToldOfDanger, string? Remark, Instant RecordedAt, string RecordedBy);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var estimate = await db.Estimates.AsNoTracking().SingleOrDefaultAsync(e => e.Id == request.Id, ct);
        if (estimate is null)
        {
            return Problem.NotFound($"Estimate {request.Id}");
        }

        if (!(await OpenCard.Find(db, estimate.JobCardNumber, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var motorcycle = await db.Motorcycles.AsNoTracking().SingleAsync(m => m.Id == open.Card.MotorcycleId, ct);
        var owner = await db.People.AsNoTracking().SingleOrDefaultAsync(p => p.Id == motorcycle.OwnerId, ct);
        var place = await db.Findings.Where(f => f.Id == estimate.FindingId).Select(f => f.Place).SingleOrDefaultAsync(ct);
        var newest = await db.Estimates.Where(e => e.JobCardNumber == estimate.JobCardNumber && e.FindingId == estimate.FindingId).MaxAsync(e => e.Version, ct);
        var lines = await (
            from line in db.EstimateLines.AsNoTracking()
            join remark in db.Remarks on line.ReasonRemarkId equals remark.Id into remarks
            from remark in remarks.DefaultIfEmpty()
            where line.EstimateId == estimate.Id
            orderby line.Place
            select new { Line = line, Reason = remark.Text }).ToListAsync(ct);
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var seesCosts = TodaysPrices.SeesCosts(actor);
        var rows = lines.Select(l => l.Line).ToList();
        return new Answer(
            estimate.Id, estimate.JobCardNumber, estimate.Version, estimate.FindingId, place, motorcycle.Id, motorcycle.Registration,
            $"{motorcycle.Maker} {motorcycle.Model}", owner?.Id, owner?.Name, estimate.Currency,
            [.. lines.Select(l => View(l.Line, PreviewEstimate.NameOf(open.Specification, l.Line.Option), l.Reason, seesCosts))],
            SumView.Of(EstimateSums.Of(Charged(rows, null))),
            [.. rows.Where(l => l is { Option: not null, Dropped: false, Charge: EstimateCharge.Always }).GroupBy(l => l.Option!)
                .Select(g => new OptionView(g.Key, PreviewEstimate.NameOf(open.Specification, g.Key)!, SumView.Of(EstimateSums.Of(Charged(rows, g.Key)))))],
            estimate.ValidUntil, estimate.MadeAt, await db.People.Where(p => p.Id == estimate.MadeBy).Select(p => p.Name).SingleAsync(ct),
            newest != estimate.Version, estimate.ValidUntil < today, newest == estimate.Version && AnswerRules.RefuseChange(open.Card) is null,
            await Answers(db, a => a.EstimateId == estimate.Id, ct), seesCosts ? EstimateMargin.Of(Charged(rows, null)) : null);
    }

    /// <summary>Newest first.</summary>
    internal static async Task<IReadOnlyList<AnswerView>> Answers(
        WorkshopDbContext db, System.Linq.Expressions.Expression<Func<EstimateAnswer, bool>> which, CancellationToken ct) => await (
            from answer in db.EstimateAnswers.AsNoTracking().Where(which)
            join recorder in db.People on answer.RecordedBy equals recorder.Id
            join person in db.People on answer.PersonId equals person.Id into people
            from person in people.DefaultIfEmpty()
            join remark in db.Remarks on answer.RemarkId equals remark.Id into remarks
            from remark in remarks.DefaultIfEmpty()
            orderby answer.RecordedAt descending, answer.Id descending
            select new AnswerView(answer.Decision, answer.Way, answer.SaidAt, person.Name == "" ? null : person.Name, answer.ToldOfDanger, remark.Text, answer.RecordedAt, recorder.Name))
        .ToListAsync(ct);

    internal static PricedQuantity Priced(EstimateLine line) =>
        new(line.Quantity, line.Unit, line.UnitPrice, line.UnitCost, line.TaxCode, line.TaxPercent);

    private static IEnumerable<PricedQuantity> Charged(IEnumerable<EstimateLine> lines, string? option) =>
        lines.Where(l => l is { Dropped: false, Charge: EstimateCharge.Always } && l.Option == option).Select(Priced);

    private static LineView View(EstimateLine line, string? optionName, string? reason, bool seesCosts) => new(
        $"{line.Place}", line.Kind, line.Charge, line.Option, optionName, line.Text, line.PartCode, line.Quantity, line.Unit, line.UnitPrice,
        line.TaxCode, line.TaxPercent, line.Net, seesCosts ? line.UnitCost : null, null, line.Dropped, line.ProposedUnitPrice, reason);
}
