using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>What was done before the motorcycle came into the books, or elsewhere: the next due counts from there.</summary>
public static class RecordDoneItems
{
    private const int MostItems = 50;

    public sealed record Request
    {
        [JsonIgnore]
        public Guid MotorcycleId { get; init; }

        /// <summary>Codes of service items of the engine model. No list to begin with: a form's binder would not fill it.</summary>
        public IReadOnlyList<string>? Items { get; init; }

        public LocalDate? DoneOn { get; init; }

        /// <summary>Whole kilometres or miles, as the motorcycle's own instrument counted.</summary>
        public int? Odometer { get; init; }
    }

    public sealed record Answer(
        IReadOnlyList<Guid> Ids, LocalDate DoneOn, [property: JsonPropertyName("distanceKm")] Distance Distance);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Items).IsGiven("at least one item that was done");
            RuleFor(r => r.Items)
                .Must(items => items is null || items.Count <= MostItems)
                .WithMessage((_, items) => $"items has {items!.Count} entries: at most {MostItems} are allowed.");
            RuleFor(r => r.DoneOn).IsGiven("the day on which it was done");
            RuleFor(r => r.Odometer).IsGiven("what the odometer showed, in whole units").IsOdometerCount();
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!await db.Motorcycles.AnyAsync(m => m.Id == request.MotorcycleId, ct))
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        var doneOn = request.DoneOn!.Value;
        if (await FittedEngine.On(db, request.MotorcycleId, doneOn, ct) is not { } engine)
        {
            return Problem.Impossible("no-engine", "doneOn",
                $"doneOn is {doneOn:uuuu-MM-dd}: no engine was in the motorcycle on that day; see its history for when one was.");
        }

        var typed = new OdometerEntry.Typed("odometer", request.Odometer!.Value, doneOn) { DayField = "doneOn" };
        if (!(await OdometerEntry.Add(db, request.MotorcycleId, typed, actor, clock, ct)).TryGet(out var reading, out var problem))
        {
            return problem;
        }

        var recorded = await db.DoneItems
            .Where(d => d.MotorcycleId == request.MotorcycleId && d.DoneOn == doneOn && d.Distance == reading.Distance)
            .Select(d => d.ServiceItemCode).ToListAsync(ct);
        if (Faults(request.Items!, engine.Specification, recorded) is { Count: > 0 } faults)
        {
            return Problem.Impossible("items", faults);
        }

        var done = request.Items!.Select(code => new DoneItem
        {
            Id = NewId.At(clock),
            MotorcycleId = request.MotorcycleId,
            ServiceItemCode = code,
            DoneOn = doneOn,
            Distance = reading.Distance,
            DoneBy = actor.PersonId,
            EnteredAt = clock.GetCurrentInstant(),
        }).ToList();
        db.DoneItems.AddRange(done);
        await ForecastRows.Rewrite(db, await RecordOdometer.EnginesOf(db, request.MotorcycleId, ct), clock, ct);
        await DueRows.Rewrite(db, request.MotorcycleId, clock, ct);
        return new Answer([.. done.Select(d => d.Id)], doneOn, reading.Distance);
    }

    private static List<FieldFault> Faults(
        IReadOnlyList<string> items, EngineSpecification specification, List<string> recorded)
    {
        var codes = specification.ServiceItems.Select(s => s.Code).ToList();
        var faults = new List<FieldFault>();
        for (var i = 0; i < items.Count; i++)
        {
            var field = $"items[{i}]";
            if (!codes.Contains(items[i]))
            {
                faults.Add(new(field, $"{field} is \"{items[i]}\": the engine model has {string.Join(", ", codes)}."));
            }
            else if (recorded.Contains(items[i]))
            {
                faults.Add(new(field, $"{field} is \"{items[i]}\": it is recorded for that day and distance already."));
            }
            else if (items.Take(i).Contains(items[i]))
            {
                faults.Add(new(field, $"{field} is \"{items[i]}\": it stands in the list before; name each item once."));
            }
        }

        return faults;
    }
}
