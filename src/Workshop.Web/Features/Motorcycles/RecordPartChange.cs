using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>A part that the clearance depends on was replaced or ground: from there the drift of its valves begins anew.</summary>
public static class RecordPartChange
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid MotorcycleId { get; init; }

        public ValvePart? Part { get; init; }

        public PartChangeKind? Kind { get; init; }

        /// <summary>Absent where the part serves every valve of the engine.</summary>
        public ValveKey? Valve { get; init; }

        public LocalDate? ChangedOn { get; init; }

        /// <summary>Whole kilometres or miles, as the motorcycle's own instrument counts.</summary>
        public int? Odometer { get; init; }

        public string? Remark { get; init; }
    }

    public sealed record Answer(Guid Id, Guid EngineId);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Part).IsChosen("the part", PartChangeWords.Spoken);
            RuleFor(r => r.Kind).IsChosen("what was done to it", PartChangeWords.Spoken);
            RuleFor(r => r.ChangedOn).IsGiven("the day on which it was done");
            RuleFor(r => r.Odometer).IsGiven("what the odometer showed, in whole units").IsOdometerCount();
            RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!await db.Motorcycles.AnyAsync(m => m.Id == request.MotorcycleId, ct))
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        var changedOn = request.ChangedOn!.Value;
        if (await FittedEngine.On(db, request.MotorcycleId, changedOn, ct) is not { } engine)
        {
            return Problem.Impossible("no-engine", "changedOn",
                $"changedOn is {changedOn:uuuu-MM-dd}: no engine was in the motorcycle on that day; see its history for when one was.");
        }

        if (request.Valve is { } valve && engine.Specification.Valves.All(v => v.Key != valve))
        {
            return Problem.Impossible("valve-unknown", "valve",
                $"valve is {valve}: the engine has {string.Join(", ", engine.Specification.Valves.Select(v => v.Key))}.");
        }

        var typed = new OdometerEntry.Typed("odometer", request.Odometer!.Value, changedOn) { DayField = "changedOn" };
        if (!(await OdometerEntry.Add(db, request.MotorcycleId, typed, actor, clock, ct)).TryGet(out var reading, out var problem))
        {
            return problem;
        }

        var change = new PartChange
        {
            Id = NewId.At(clock),
            EngineId = engine.EngineId,
            Valve = request.Valve,
            Part = request.Part!.Value,
            Kind = request.Kind!.Value,
            OdometerReadingId = reading.Id,
            ChangedOn = changedOn,
            EnteredBy = actor.PersonId,
            EnteredAt = clock.GetCurrentInstant(),
            RemarkId = AddRemark(request.Remark, db, actor, clock),
        };
        db.PartChanges.Add(change);
        await ForecastRows.Rewrite(db, engine.EngineId, clock, ct);
        await DueRows.Rewrite(db, request.MotorcycleId, clock, ct);
        await Refits.RequestFor(db, [engine.EngineId], clock, ct);
        return new Answer(change.Id, engine.EngineId);
    }

    private static Guid? AddRemark(string? text, WorkshopDbContext db, Actor actor, IClock clock)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        var remark = new Remark
        {
            Id = NewId.At(clock), Text = text, WrittenBy = actor.PersonId, WrittenAt = clock.GetCurrentInstant(),
        };
        db.Remarks.Add(remark);
        return remark.Id;
    }
}
