using System.Globalization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Comebacks;

/// <summary>Visits that came because of an earlier one, newest first: of which, why, after how long, and what was found. It names nobody who worked on them.</summary>
public static class ListComebacks
{
    public sealed record Request
    {
        /// <summary>What <c>next</c> of the page before said.</summary>
        public string? After { get; init; }

        public int? Take { get; init; }
    }

    public sealed record Answer(IReadOnlyList<Row> Rows, string? Next);

    /// <param name="DaysSince">From the sign-off of the earlier visit to the arrival of this one, planned or come.</param>
    /// <param name="KmSince">Ridden between the two; absent until it is here.</param>
    /// <param name="Found">Findings of the visit; empty while there are none.</param>
    public sealed record Row(
        int Number, JobCardState State, Guid MotorcycleId, string Registration, int OfNumber, string Reason, Instant ArrivedAt, Instant EarlierSignedAt,
        int DaysSince, decimal? KmSince, IReadOnlyList<string> Found, string? SignedRemark);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.After).Must(a => string.IsNullOrEmpty(a) || int.TryParse(a, NumberStyles.None, CultureInfo.InvariantCulture, out _))
                .WithMessage((_, a) => $"{{PropertyName}} is \"{a}\": what next of the page before said is allowed.");
            RuleFor(r => r.Take).IsPageSize();
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var before = string.IsNullOrEmpty(request.After) ? int.MaxValue : int.Parse(request.After, CultureInfo.InvariantCulture);
        var slice = await (
            from comeback in db.Comebacks.AsNoTracking()
            join card in db.JobCards on comeback.JobCardNumber equals card.Number
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            join reason in db.Remarks on comeback.ReasonRemarkId equals reason.Id
            join signed in db.SignOffs on comeback.OfJobCardNumber equals signed.JobCardNumber
            join left in db.OdometerReadings on signed.OdometerReadingId equals left.Id
            join checkIn in db.CheckIns on card.Number equals checkIn.JobCardNumber into checkIns
            from checkIn in checkIns.DefaultIfEmpty()
            join came in db.OdometerReadings on checkIn.OdometerReadingId equals came.Id into cameReadings
            from came in cameReadings.DefaultIfEmpty()
            where comeback.JobCardNumber < before
            orderby comeback.JobCardNumber descending
            select new
            {
                comeback.JobCardNumber, comeback.OfJobCardNumber, card.State, card.StartsAt, motorcycle.Id, motorcycle.Registration, Reason = reason.Text,
                signed.SignedAt, Left = left.Distance, Came = came, CheckIn = checkIn,
            }).ToSlice(request.Take, r => r.JobCardNumber.ToString(CultureInfo.InvariantCulture), ct);
        var numbers = slice.Rows.Select(r => r.JobCardNumber).ToList();
        var found = (await (
            from finding in db.Findings.AsNoTracking()
            join text in db.Remarks on finding.TextRemarkId equals text.Id
            where numbers.Contains(finding.JobCardNumber) && finding.WithdrawnAt == null
            orderby finding.FoundAt
            select new { finding.JobCardNumber, finding.Place, text.Text }).ToListAsync(ct)).ToLookup(f => f.JobCardNumber, f => $"{f.Place}: {f.Text}");
        var remarks = await (
            from signed in db.SignOffs.AsNoTracking()
            join remark in db.Remarks on signed.RemarkId equals remark.Id
            where numbers.Contains(signed.JobCardNumber)
            select new { signed.JobCardNumber, remark.Text }).ToDictionaryAsync(r => r.JobCardNumber, r => r.Text, ct);
        return new Answer([.. slice.Rows.Select(r =>
        {
            var arrived = r.CheckIn?.CheckedInAt ?? r.StartsAt;
            return new Row(
                r.JobCardNumber, r.State, r.Id, r.Registration, r.OfJobCardNumber, r.Reason, arrived, r.SignedAt,
                Period.DaysBetween(time.DayOf(r.SignedAt), time.DayOf(arrived)), r.Came is null ? null : (r.Came.Distance - r.Left).Kilometres,
                [.. found[r.JobCardNumber]], remarks.GetValueOrDefault(r.JobCardNumber));
        })], slice.Next);
    }
}
