using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Estimates;

/// <summary>The estimates of a visit, newest first, with what was agreed, what it would now be, and what it came to.</summary>
public static class ListEstimates
{
    public sealed record Request(int Number);

    /// <param name="Agreed">The sum of all that was agreed, of the visit and of findings; absent where nothing was.</param>
    /// <param name="WouldNowBe">With what the card now says; agreed prices hold.</param>
    /// <param name="Changes">What makes the difference.</param>
    /// <param name="Final">Once signed off: labour of what was done and parts that were used. A comparison, no bill.</param>
    /// <param name="WithoutPrice">What was done or used and has no price; the final sum lacks it.</param>
    public sealed record Answer(
        int JobCardNumber, string Currency, IReadOnlyList<Row> Estimates, SumView? Agreed, SumView? WouldNowBe, IReadOnlyList<SumChange> Changes,
        SumView? Final, IReadOnlyList<string> WithoutPrice);

    /// <param name="Answer">The last one; absent while nothing was said.</param>
    public sealed record Row(
        Guid Id, int Version, Guid? FindingId, string? FindingPlace, decimal Net, decimal Tax, decimal Gross, LocalDate? ValidUntil, Instant MadeAt, string MadeBy,
        EstimateDecision? Answer, Instant? AnsweredAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var money = await MoneyOfCard.Read(db, open, clock, ct);
        var rows = await (
            from estimate in db.Estimates.AsNoTracking()
            join person in db.People on estimate.MadeBy equals person.Id
            join finding in db.Findings on estimate.FindingId equals finding.Id into findings
            from finding in findings.DefaultIfEmpty()
            let answer = db.EstimateAnswers.Where(a => a.EstimateId == estimate.Id).OrderByDescending(a => a.RecordedAt).ThenByDescending(a => a.Id).FirstOrDefault()
            where estimate.JobCardNumber == request.Number
            orderby estimate.Version descending
            select new Row(
                estimate.Id, estimate.Version, estimate.FindingId, finding.Place, estimate.Net, estimate.Tax, estimate.Gross, estimate.ValidUntil,
                estimate.MadeAt, person.Name, answer == null ? null : answer.Decision, answer == null ? null : answer.SaidAt)).ToListAsync(ct);
        return new Answer(
            request.Number, money.Currency, rows, money.Sum is { } sum ? SumView.Of(sum.Agreed) : null, money.Sum is { } now ? SumView.Of(now.Now) : null,
            money.Sum?.Changes ?? [], money.Final is { } final ? SumView.Of(final.Sums) : null, money.Final?.WithoutPrice ?? []);
    }
}
