using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Estimates;
using Workshop.Domain.Records;
using Workshop.Web.Data;
using Workshop.Web.Features.Estimates;
using Workshop.Web.Features.Findings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Records;

/// <summary>Findings of a visit with the owner's answers, and what was agreed, for its record. Nobody's name is among them.</summary>
internal sealed record RecordedFindings(IReadOnlyList<RecordedFinding> Findings, IReadOnlyDictionary<string, string> Words)
{
    public static async Task<RecordedFindings> Read(WorkshopDbContext db, int number, WorkshopTime time, CancellationToken ct)
    {
        var words = new Dictionary<string, string>(StringComparer.Ordinal);
        if (!await db.Findings.AnyAsync(f => f.JobCardNumber == number && f.WithdrawnAt == null, ct))
        {
            return new RecordedFindings([], words);
        }

        var findings = (await GetFinding.Read(db, number, f => f.WithdrawnAt == null, ct)).Select(f =>
        {
            var answer = f.Answers.Count > 0 ? f.Answers[0] : null;
            Keep(RecordWords.AnswerTo(f.Id), answer?.Remark);
            var photos = f.Photos.Where(p => p.Removed is null).ToList();
            photos.ForEach(p => Keep(RecordWords.Caption(p.Id), p.Caption));
            return new RecordedFinding(
                f.Id, f.Place, f.Text, f.Gravity, f.State, answer is null ? null : Say(answer, time), f.StaysUnsafe,
                f.Price is { } price ? new RecordedPrice(price.Gross, price.Currency) : null, [.. photos.Select(p => p.Id)]);
        }).ToList();
        return new RecordedFindings(findings, words);

        void Keep(string name, string? text)
        {
            if (!string.IsNullOrEmpty(text))
            {
                words[name] = text;
            }
        }
    }

    /// <summary>The sum that the owner agreed to, of the visit and of findings; nothing where nothing was agreed.</summary>
    public static async Task<RecordedPrice?> Agreed(WorkshopDbContext db, OpenCard open, IClock clock, CancellationToken ct)
    {
        if (!await db.Estimates.AnyAsync(e => e.JobCardNumber == open.Card.Number, ct))
        {
            return null;
        }

        var money = await MoneyOfCard.Read(db, open, clock, ct);
        return money.Sum is { } sum ? new RecordedPrice(sum.Agreed.Gross, money.Currency) : null;
    }

    private static string Say(GetEstimate.AnswerView answer, WorkshopTime time)
    {
        var decision = answer.Decision == EstimateDecision.Agreed ? "Agreed" : "Declined";
        return $"{decision} {answer.Way.Spoken()} on {RecordWords.Day(time.DayOf(answer.SaidAt))}{(answer.ToldOfDanger ? ", told not to ride like this" : "")}";
    }
}
