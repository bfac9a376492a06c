using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Statistics.Gauges;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

/// <summary>Begins a study of how well something is measured: who reads which parts how often, with what.</summary>
public static class StartGaugeTrial
{
    public const decimal SmallestTolerance = 0.0001m;
    public const decimal LargestTolerance = 1000m;

    public sealed record Request
    {
        public string? Name { get; init; }

        public GaugeDesign? Design { get; init; }

        public Guid? InstrumentId { get; init; }

        public string? Unit { get; init; }

        public int? Parts { get; init; }

        public int? Trials { get; init; }

        /// <summary>Upper less lower limit of what is measured, in the unit.</summary>
        public decimal? Tolerance { get; init; }

        // A list that can be added to: the page's binder fills it in place.
        public IList<Guid> AppraiserIds { get; init; } = [];
    }

    public sealed record Answer(Guid Id);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Name).IsGiven("what is studied").IsAtMost(Limits.Name);
            RuleFor(r => r.Design).IsGiven("crossed, where everybody measures the same parts, or nested");
            RuleFor(r => r.Unit).IsGiven("the unit of the readings").IsAtMost(12);
            RuleFor(r => r.Parts).IsGiven("how many parts are measured").IsWhole(2, GaugeTrial.MostParts);
            RuleFor(r => r.Trials).IsGiven("how often each part is read").IsWhole(2, GaugeTrial.MostTrials);
            RuleFor(r => r.Tolerance).IsWithin(SmallestTolerance, LargestTolerance, 4, "of the unit");
            RuleFor(r => r.AppraiserIds).Must(ids => ids is not null && ids.Distinct().Count() is >= 2 and <= GaugeTrial.MostAppraisers && ids.Distinct().Count() == ids.Count)
                .WithMessage((r, ids) => $"appraiserIds names {ids?.Count ?? 0}: 2 to {GaugeTrial.MostAppraisers} different people are allowed.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var known = await db.People.Where(p => request.AppraiserIds.Contains(p.Id) && p.IsStaff).Select(p => p.Id).ToListAsync(ct);
        if (request.AppraiserIds.Except(known).Select(id => (Guid?)id).FirstOrDefault() is { } stranger)
        {
            return Problem.Impossible("person-unknown", "appraiserIds",
                $"appraiserIds names {stranger}: nobody of the workshop has it; choose of GET /api/v1/people.");
        }

        if (request.InstrumentId is { } id)
        {
            var instrument = await db.Instruments.AsNoTracking().SingleOrDefaultAsync(i => i.Id == id, ct);
            if (instrument is null)
            {
                return Problem.Impossible("instrument-unknown", "instrumentId",
                    $"instrumentId is {id}: no instrument has it; choose one of GET /api/v1/instruments.");
            }

            if (instrument.Unit != request.Unit)
            {
                return Problem.Impossible("unit-differs", "unit",
                    $"unit is \"{request.Unit}\", but {instrument.Name} ({instrument.SerialNumber}) reads in {instrument.Unit}; give that.");
            }
        }

        var trial = new GaugeTrial
        {
            Id = NewId.At(clock), Name = request.Name!, Design = request.Design!.Value, InstrumentId = request.InstrumentId, Unit = request.Unit!,
            Parts = request.Parts!.Value, Trials = request.Trials!.Value, Tolerance = request.Tolerance,
            StartedBy = actor.PersonId, StartedAt = clock.GetCurrentInstant(),
        };
        db.GaugeTrials.Add(trial);
        db.GaugeTrialAppraisers.AddRange(request.AppraiserIds.Select((person, place) => new GaugeTrialAppraiser
        {
            TrialId = trial.Id, PersonId = person, Place = place + 1,
        }));
        await db.SaveChangesAsync(ct);
        return new Answer(trial.Id);
    }
}
