using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

/// <summary>One reading of a study. A second one of the same part, trial and person corrects the first, and says why.</summary>
public static class RecordGaugeReading
{
    private const decimal Largest = 100_000m;
    private const int Decimals = 4;

    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        public Guid? AppraiserId { get; init; }

        public int? Part { get; init; }

        public int? Trial { get; init; }

        /// <summary>In the study's unit.</summary>
        public decimal? Value { get; init; }

        /// <summary>Asked for where a reading is corrected.</summary>
        public string? Reason { get; init; }
    }

    /// <param name="NextPart">What this person reads next; absent when all is read.</param>
    public sealed record Answer(Guid ReadingId, int Missing, int? NextPart, int? NextTrial);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.AppraiserId).IsGiven("who measured");
            RuleFor(r => r.Part).IsGiven("the part's number").IsWhole(1, GaugeTrial.MostParts);
            RuleFor(r => r.Trial).IsGiven("which time it was read").IsWhole(1, GaugeTrial.MostTrials);
            RuleFor(r => r.Value).IsGiven("what was read").IsWithin(-Largest, Largest, Decimals, "of the study's unit");
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        // Held, so that two hands never correct the same reading, and nobody reads on in a study that is given up meanwhile.
        await db.Database.ExecuteSqlAsync($"select 1 from gauge_trials where id = {request.Id} for no key update", ct);
        if (await GaugeTrialRows.Find(db, request.Id, ct) is not { } rows)
        {
            return Problem.NotFound($"Gauge study {request.Id}");
        }

        if (Refuse(request, rows) is { } refused)
        {
            return refused;
        }

        var before = rows.Standing.SingleOrDefault(r => r.AppraiserId == request.AppraiserId && r.Part == request.Part && r.Trial == request.Trial);
        if (before is not null && string.IsNullOrWhiteSpace(request.Reason))
        {
            return new Problem(ProblemKind.Conflict, "read-already",
                $"Part {request.Part}, trial {request.Trial} is read already; to correct it, say why in reason.")
            {
                Faults = [new FieldFault("reason", "reason is empty: give why the reading is corrected.")],
            };
        }

        var now = clock.GetCurrentInstant();
        var remark = before is null ? null : new Remark { Id = NewId.At(now), Text = request.Reason!.Trim(), WrittenBy = actor.PersonId, WrittenAt = now };
        if (remark is not null)
        {
            db.Remarks.Add(remark);
        }

        var reading = new GaugeTrialReading
        {
            Id = NewId.At(now), TrialId = request.Id, AppraiserId = request.AppraiserId!.Value, Part = request.Part!.Value, Trial = request.Trial!.Value,
            Value = request.Value!.Value, SupersedesId = before?.Id, ReasonRemarkId = remark?.Id, EnteredBy = actor.PersonId, EnteredAt = now,
        };
        db.GaugeTrialReadings.Add(reading);
        await db.SaveChangesAsync(ct);
        var standing = rows.Standing.Where(r => r.Id != before?.Id).Append(reading).ToList();
        var next = GaugeTrialPlan.Next(rows.Trial, reading.AppraiserId, standing);
        return new Answer(reading.Id, rows.Wanted - standing.Count, next?.Part, next?.Trial);
    }

    private static Problem? Refuse(Request request, GaugeTrialRows rows)
    {
        if (rows.Trial.GivenUpAt is not null)
        {
            return Problem.Conflict("given-up", $"The study \"{rows.Trial.Name}\" was given up; nothing is read in it any more.");
        }

        var faults = new List<FieldFault>();
        if (rows.Appraisers.All(a => a.PersonId != request.AppraiserId))
        {
            faults.Add(new FieldFault("appraiserId",
                $"appraiserId is {request.AppraiserId}: in this study measure {string.Join(", ", rows.Appraisers.Select(a => $"{a.Name} ({a.PersonId})"))}."));
        }

        if (request.Part > rows.Trial.Parts)
        {
            faults.Add(new FieldFault("part", $"part is {request.Part}: this study has 1 to {rows.Trial.Parts}."));
        }

        if (request.Trial > rows.Trial.Trials)
        {
            faults.Add(new FieldFault("trial", $"trial is {request.Trial}: this study has 1 to {rows.Trial.Trials}."));
        }

        return faults.Count > 0 ? Problem.Impossible("not-in-study", faults) : null;
    }
}
