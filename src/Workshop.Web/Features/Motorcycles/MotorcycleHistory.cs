using Microsoft.EntityFrameworkCore;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>The queries behind a motorcycle's history, each newest first.</summary>
internal sealed class MotorcycleHistory(WorkshopDbContext db, Guid motorcycleId)
{
    public Task<List<GetMotorcycle.Fitting>> Engines(CancellationToken ct) => (
        from fitting in db.EngineFittings.AsNoTracking()
        join engine in db.Engines on fitting.EngineId equals engine.Id
        join model in db.EngineModels on engine.EngineModelId equals model.Id
        where fitting.MotorcycleId == motorcycleId
        orderby fitting.FittedOn descending
        select new GetMotorcycle.Fitting(
            engine.Id, model.Id, model.Maker + " " + model.Name, model.Invented, engine.SerialNumber, fitting.FittedOn,
            fitting.RemovedOn, fitting.MotorcycleDistance, fitting.EngineDistance,
            db.ClearanceReadings.Count(r => r.EngineId == engine.Id))).ToListAsync(ct);

    public Task<List<GetMotorcycle.Instrument>> Odometers(CancellationToken ct) => db.Odometers.AsNoTracking()
        .Where(o => o.MotorcycleId == motorcycleId)
        .OrderByDescending(o => o.FittedOn)
        .Select(o => new GetMotorcycle.Instrument(o.Id, o.Unit, o.FittedOn, o.RemovedOn, o.Offset))
        .ToListAsync(ct);

    public Task<List<GetMotorcycle.Reading>> OdometerReadings(CancellationToken ct) => (
        from reading in db.OdometerReadings.AsNoTracking()
        join person in db.People on reading.EnteredBy equals person.Id
        where reading.MotorcycleId == motorcycleId
        orderby reading.ReadOn descending, reading.Distance descending, reading.EnteredAt descending
        select new GetMotorcycle.Reading(
            reading.Id, reading.ReadOn, reading.Count, reading.Unit, reading.Distance, reading.JobCardNumber, reading.SupersedesId,
            db.OdometerReadings.Where(later => later.SupersedesId == reading.Id).Select(later => (Guid?)later.Id).FirstOrDefault(),
            db.Remarks.Where(remark => remark.Id == reading.ReasonRemarkId).Select(remark => remark.Text).FirstOrDefault(),
            person.Name, reading.EnteredAt)).ToListAsync(ct);

    /// <summary>What was done, named as the engine models of its engines name it now.</summary>
    public async Task<IReadOnlyList<GetMotorcycle.Done>> DoneItems(
        IReadOnlyList<GetMotorcycle.Fitting> engines, CancellationToken ct)
    {
        var names = await ItemNames([.. engines.Select(e => e.EngineModelId).Distinct()], ct);
        var done = await (
            from item in db.DoneItems.AsNoTracking()
            join person in db.People on item.DoneBy equals person.Id
            where item.MotorcycleId == motorcycleId
            orderby item.DoneOn descending, item.ServiceItemCode
            select new GetMotorcycle.Done(item.ServiceItemCode, item.DoneOn, item.Distance, item.JobCardNumber, person.Name))
            .ToListAsync(ct);
        return [.. done.Select(d => d with { Name = names.GetValueOrDefault(d.Code, d.Code) })];
    }

    /// <summary>Of service items by code, as these engine models name them now.</summary>
    public async Task<IReadOnlyDictionary<string, string>> ItemNames(IReadOnlyList<Guid> models, CancellationToken ct)
    {
        var specifications = await (
            from version in db.EngineModelVersions.AsNoTracking()
            join model in db.EngineModels on version.EngineModelId equals model.Id
            where models.Contains(model.Id) && version.Version == model.CurrentVersion
            select version.Specification).ToListAsync(ct);
        return specifications.SelectMany(s => s.ServiceItems).DistinctBy(i => i.Code).ToDictionary(i => i.Code, i => i.Name);
    }

    public Task<List<GetMotorcycle.Card>> JobCards(CancellationToken ct) => db.JobCards.AsNoTracking()
        .Where(c => c.MotorcycleId == motorcycleId)
        .OrderByDescending(c => c.StartsAt)
        .Select(c => new GetMotorcycle.Card(
            c.Number, c.State, c.StartsAt, c.EndsAt,
            db.Comebacks.Where(b => b.JobCardNumber == c.Number).Select(b => (int?)b.OfJobCardNumber).SingleOrDefault(),
            db.Comebacks.Where(b => b.JobCardNumber == c.Number)
                .Select(b => db.Remarks.Where(r => r.Id == b.ReasonRemarkId).Select(r => r.Text).SingleOrDefault()).SingleOrDefault()))
        .ToListAsync(ct);

    public Task<List<GetMotorcycle.Change>> PartChanges(IReadOnlyList<Guid> engines, CancellationToken ct) => (
        from change in db.PartChanges.AsNoTracking()
        join reading in db.OdometerReadings on change.OdometerReadingId equals reading.Id
        join person in db.People on change.EnteredBy equals person.Id
        where engines.Contains(change.EngineId)
        orderby change.ChangedOn descending
        select new GetMotorcycle.Change(
            change.Id, change.EngineId, change.Part, change.Kind, change.Valve, change.ChangedOn, reading.Distance, change.JobCardNumber,
            db.Remarks.Where(remark => remark.Id == change.RemarkId).Select(remark => remark.Text).FirstOrDefault(),
            person.Name)).ToListAsync(ct);
}
