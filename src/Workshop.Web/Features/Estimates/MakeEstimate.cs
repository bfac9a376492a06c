using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>
/// Makes the next version of the estimate of a visit, or of a finding, out of what is proposed and what a person did to it. It is
/// never changed; refused while a line has no price.
/// </summary>
public static class MakeEstimate
{
    private const int MostLines = 200;
    private const decimal LargestQuantity = 100_000;
    private const int MostMinutes = 10_000;
    private const int QuantityDecimals = 4;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>The finding whose work it is; absent for the visit itself.</summary>
        public Guid? FindingId { get; init; }

        /// <summary>Of the preview that was looked at; refused if what is proposed has changed since. May be left out.</summary>
        public string? Basis { get; init; }

        /// <summary>The last day on which it holds.</summary>
        public LocalDate? ValidUntil { get; init; }

        /// <summary>What is done to proposed lines; one that is not named stays as it is.</summary>
        public IReadOnlyList<Line>? Lines { get; init; }

        /// <summary>Lines beside those. One with nothing in it is passed over, as a row of a form that nobody touched.</summary>
        public IReadOnlyList<Other>? Others { get; init; }
    }

    public sealed record Line
    {
        public string? Key { get; init; }

        public bool Dropped { get; init; }

        /// <summary>Another price of one hour, piece or litre, before tax; or one where none is known.</summary>
        public decimal? UnitPrice { get; init; }

        /// <summary>Why it is another.</summary>
        public string? Reason { get; init; }
    }

    public sealed record Other
    {
        public string? Text { get; init; }

        /// <summary>A part of the stores, at its price where none is typed.</summary>
        public string? PartCode { get; init; }

        /// <summary>Pieces, or millilitres of a fluid; one where it is left out.</summary>
        public decimal? Quantity { get; init; }

        /// <summary>Of labour, at the workshop's rate where no price is typed.</summary>
        public int? Minutes { get; init; }

        public decimal? UnitPrice { get; init; }

        public string? Tax { get; init; }

        internal bool IsEmpty => string.IsNullOrWhiteSpace(Text) && string.IsNullOrWhiteSpace(PartCode) && Quantity is null && Minutes is null && UnitPrice is null;
    }

    public sealed record Answer(Guid Id, int JobCardNumber, int Version, string Currency, SumView Sums);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Lines).Must(l => l is null || l.Count <= MostLines).WithMessage($"{{PropertyName}} has more than the {MostLines} lines that are allowed.");
            RuleFor(r => r.Others).Must(l => l is null || l.Count <= MostLines).WithMessage($"{{PropertyName}} has more than the {MostLines} lines that are allowed.");
            RuleForEach(r => r.Lines).ChildRules(line =>
            {
                line.RuleFor(l => l.Key).IsGiven("the key of a proposed line");
                line.RuleFor(l => l.UnitPrice).IsPrice("an hour, a piece or a litre");
                line.RuleFor(l => l.Reason).IsAtMost(Limits.Remark);
            });
            RuleForEach(r => r.Others).ChildRules(other =>
            {
                other.RuleFor(o => o.Text).IsGiven("what it is").When(o => string.IsNullOrWhiteSpace(o.PartCode) && !o.IsEmpty);
                other.RuleFor(o => o.Text).IsAtMost(Limits.Name).IsOneLine();
                other.RuleFor(o => o.PartCode).IsAtMost(Limits.Code);
                other.RuleFor(o => o.Quantity).IsWithin(1m / 10_000, LargestQuantity, QuantityDecimals, "pieces or ml");
                other.RuleFor(o => o.Minutes).IsWhole(1, MostMinutes);
                other.RuleFor(o => o.Minutes).Null().When(o => o.Quantity is not null || !string.IsNullOrWhiteSpace(o.PartCode))
                    .WithMessage("{PropertyName} is given beside a quantity or a part: a line is labour or it is not.");
                other.RuleFor(o => o.UnitPrice).IsPrice("an hour, a piece or a litre");
                other.RuleFor(o => o.Tax).IsAtMost(Limits.Code);
            });
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var others = request.Others ?? [];
        if ((await OpenCard.Lock(db, request.Number, ct)).Problem is { } none)
        {
            return none;
        }

        var named = others.Select(o => o.PartCode).Where(c => !string.IsNullOrWhiteSpace(c)).Select(c => c!).ToList();
        if (!(await EstimateCase.Read(db, request.Number, request.FindingId, named, clock, ct)).TryGet(out var at, out var problem)
            || (problem = Refuse(request, at, others)) is not null)
        {
            return problem;
        }

        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        if (request.ValidUntil < today)
        {
            return Problem.Impossible("valid-until-past", "validUntil",
                $"validUntil is {Days.Write(request.ValidUntil.Value)}: today, {Days.Write(today)}, or a later day is allowed.");
        }

        var drafted = EstimateDraft.Of(
            at.Proposed,
            [.. (request.Lines ?? []).Select(l => new LineEdit(l.Key!, l.Dropped, l.UnitPrice, l.Reason))],
            [.. others.Select(o => o.IsEmpty ? null : new OtherLine(
                string.IsNullOrWhiteSpace(o.Text) ? at.Prices.PartOf(o.PartCode!).Name : o.Text.Trim(), o.Quantity, o.Minutes, o.UnitPrice,
                string.IsNullOrWhiteSpace(o.PartCode) ? null : o.PartCode, string.IsNullOrWhiteSpace(o.Tax) ? null : o.Tax))],
            at.Prices);
        if (!drafted.TryGet(out var lines, out problem))
        {
            return problem;
        }

        var sums = EstimateSums.Of(lines.Where(l => l.IsCharged).Select(l => l.Priced));
        var version = (await db.Estimates.Where(e => e.JobCardNumber == request.Number).MaxAsync(e => (int?)e.Version, ct) ?? 0) + 1;
        var estimate = new Estimate
        {
            Id = NewId.At(now), JobCardNumber = request.Number, Version = version, FindingId = request.FindingId, Currency = at.Prices.Currency,
            Net = sums.Net, Tax = sums.Tax, Gross = sums.Gross, ValidUntil = request.ValidUntil, MadeBy = actor.PersonId, MadeAt = now,
        };
        db.Estimates.Add(estimate);
        db.EstimateLines.AddRange(lines.Select((line, index) => Row(estimate.Id, index + 1, line, Remarks.Add(db, line.Reason, actor, clock))));
        await db.SaveChangesAsync(ct);
        return new Answer(estimate.Id, request.Number, version, estimate.Currency, SumView.Of(sums));
    }

    private static Problem? Refuse(Request request, EstimateCase at, IReadOnlyList<Other> others)
    {
        if (AnswerRules.RefuseChange(at.Open.Card) is { } closed)
        {
            return closed;
        }

        if (at.Finding is { } finding && (finding.WithdrawnAt is not null || finding.DoneAt is not null))
        {
            return Problem.Conflict("finding-over", $"{finding.Place}: the finding is {(finding.DoneAt is null ? "withdrawn" : "done")}; nothing of it is priced any more.");
        }

        if (!string.IsNullOrEmpty(request.Basis) && request.Basis != at.Basis)
        {
            return new Problem(ProblemKind.Stale, "proposal-changed",
                "The items or the prices have changed since you looked; look at the proposal again and repeat your changes.");
        }

        var unknown = others.Select((o, i) => (o.PartCode, Field: $"others[{i}].partCode"))
            .Where(o => !string.IsNullOrWhiteSpace(o.PartCode) && !at.Prices.Parts.ContainsKey(o.PartCode))
            .Select(o => new FieldFault(o.Field, $"{o.Field} is \"{o.PartCode}\": the stores have no such part.")).ToList();
        return unknown.Count == 0 ? null : Problem.Impossible("part-unknown", unknown);
    }

    private static EstimateLine Row(Guid estimate, int place, DraftLine line, Guid? reason) => new()
    {
        EstimateId = estimate, Place = place, Source = line.Source, Kind = line.Kind, Charge = line.Charge, Option = line.Option, Text = line.Text,
        PartCode = line.PartCode, Quantity = line.Priced.Quantity, Unit = line.Priced.Unit, UnitPrice = line.Priced.UnitPrice,
        ProposedUnitPrice = line.ProposedUnitPrice, ReasonRemarkId = reason, UnitCost = line.Priced.UnitCost, TaxCode = line.Priced.TaxCode,
        TaxPercent = line.Priced.TaxPercent, Net = line.Priced.Net, Dropped = line.Dropped,
    };
}
