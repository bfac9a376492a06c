using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Findings;

/// <summary>Somebody in the bay found something: where, what, and how much it matters. It waits for the owner's answer.</summary>
public static class RecordFinding
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Where: "front wheel bearing".</summary>
        public string? Place { get; init; }

        /// <summary>What was found.</summary>
        public string? Text { get; init; }

        public FindingGravity? Gravity { get; init; }

        /// <summary>The engine model's service item that puts it right, by code; absent where it is work of another kind.</summary>
        public string? ServiceItem { get; init; }
    }

    public sealed record Answer(Guid Id, int JobCardNumber);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Place).IsGiven("where it is").IsAtMost(Limits.Name).IsOneLine();
            RuleFor(r => r.Text).IsGiven("what was found").IsAtMost(Limits.Remark).IsPlainText();
            RuleFor(r => r.Gravity).NotNull().WithMessage("{PropertyName} is empty: watch, soon or unsafe is allowed.");
            RuleFor(r => r.ServiceItem).IsAtMost(Limits.Code);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var code = string.IsNullOrWhiteSpace(request.ServiceItem) ? null : request.ServiceItem;
        if (code is not null && VisitItems.Find(open.Specification, code) is null)
        {
            return Problem.Impossible("item-unknown", [VisitItems.Unknown(open.Specification, code, "serviceItem")]);
        }

        if (code is not null && open.ItemsUnderWay.Any(i => i.Code == code))
        {
            return Problem.Impossible("item-under-way", "serviceItem",
                $"serviceItem is \"{code}\": it is under way on job card {request.Number} already; leave it empty where it is other work.");
        }

        var finding = new Finding
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, TextRemarkId = Remarks.Add(db, request.Text, actor, clock)!.Value, Place = request.Place!.Trim(),
            Gravity = request.Gravity!.Value, ServiceItemCode = code, FoundBy = actor.PersonId, FoundAt = clock.GetCurrentInstant(),
        };
        db.Findings.Add(finding);
        await db.SaveChangesAsync(ct);
        return new Answer(finding.Id, request.Number);
    }
}
