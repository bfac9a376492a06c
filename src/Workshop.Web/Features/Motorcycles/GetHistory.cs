using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>Every service item that was done to a motorcycle, here or elsewhere, newest first, a page at a time.</summary>
public static class GetHistory
{
    public sealed record Request
    {
        public Guid MotorcycleId { get; init; }

        /// <summary>What <c>next</c> of the page before said.</summary>
        public Guid? After { get; init; }

        public int? Take { get; init; }

        /// <summary>The whole of it, for a file.</summary>
        [JsonIgnore]
        public bool All { get; init; }
    }

    /// <param name="Registration">Of the motorcycle.</param>
    public sealed record Answer(Guid MotorcycleId, string Registration, IReadOnlyList<Row> Rows, string? Next);

    /// <param name="Name">As the engine model names the item now; the code where it no longer does.</param>
    /// <param name="Distance">What the motorcycle had done in all.</param>
    /// <param name="Odometer">What the odometer of that day showed, whole units.</param>
    /// <param name="JobCardNumber">Absent for what was done before or elsewhere.</param>
    /// <param name="DoneBy">Who did it; who entered it, where it was done before or elsewhere.</param>
    /// <param name="ImportedFrom">The name of the file that it came from.</param>
    public sealed record Row(
        Guid Id,
        string Code,
        string Name,
        LocalDate DoneOn,
        [property: JsonPropertyName("distanceKm")] Distance Distance,
        int Odometer,
        OdometerUnit OdometerUnit,
        int? JobCardNumber,
        string DoneBy,
        string? ImportedFrom,
        string? Note);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Take).IsPageSize();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var registration = await db.Motorcycles.Where(m => m.Id == request.MotorcycleId).Select(m => m.Registration).SingleOrDefaultAsync(ct);
        if (registration is null)
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        var done = db.DoneItems.AsNoTracking().Where(d => d.MotorcycleId == request.MotorcycleId);
        if (request.After is { } after)
        {
            var last = await done.SingleOrDefaultAsync(d => d.Id == after, ct);
            if (last is null)
            {
                return Problem.Impossible("after-unknown", "after", $"after is {after}: no item done to {registration} has it; send what next said.");
            }

            done = done.Where(d => d.DoneOn < last.DoneOn || (d.DoneOn == last.DoneOn && d.Id < last.Id));
        }

        var rows =
            from item in done
            join person in db.People on item.DoneBy equals person.Id
            orderby item.DoneOn descending, item.Id descending
            select new Found(
                item.Id, item.ServiceItemCode, item.DoneOn, item.Distance, item.JobCardNumber, person.Name,
                db.HistoryImports.Where(i => i.Id == item.ImportId).Select(i => i.FileName).FirstOrDefault(),
                db.Remarks.Where(r => r.Id == item.RemarkId).Select(r => r.Text).FirstOrDefault());
        var slice = request.All ? new Slice<Found>(await rows.ToListAsync(ct), null) : await rows.ToSlice(request.Take, r => r.Id.ToString(), ct);
        var history = new MotorcycleHistory(db, request.MotorcycleId);
        var names = await history.ItemNames([.. (await history.Engines(ct)).Select(e => e.EngineModelId).Distinct()], ct);
        var instruments = await db.Odometers.AsNoTracking().Where(o => o.MotorcycleId == request.MotorcycleId).OrderBy(o => o.FittedOn).ToListAsync(ct);
        return new Answer(request.MotorcycleId, registration, [.. slice.Rows.Select(r => r.With(names, instruments))], slice.Next);
    }

    private sealed record Found(
        Guid Id, string Code, LocalDate DoneOn, Distance Distance, int? JobCardNumber, string DoneBy, string? ImportedFrom, string? Note)
    {
        public Row With(IReadOnlyDictionary<string, string> names, List<Odometer> instruments)
        {
            var instrument = instruments.LastOrDefault(o => o.FittedOn <= DoneOn) ?? instruments[0];
            return new Row(
                Id, Code, names.GetValueOrDefault(Code, Code), DoneOn, Distance, instrument.Unit.CountOf(Distance - instrument.Offset),
                instrument.Unit, JobCardNumber, DoneBy, ImportedFrom, Note);
        }
    }
}
