using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Shims;
using Workshop.Web.Features.Tooling;

namespace Workshop.Web.Features.Clearances;

/// <summary>Who measured, when and with what; the same for readings and for shims.</summary>
public interface IMeasuredEntry
{
    /// <summary>Now, where it is not given.</summary>
    Instant? MeasuredAt { get; }

    /// <summary>Who sends it, where it is not given.</summary>
    Guid? MeasuredBy { get; }

    Guid? MicrometerId { get; }

    /// <summary>Why an earlier entry is replaced.</summary>
    string? Reason { get; }
}

/// <summary>
/// One send of measurements to a card, all or nothing: gathers every fault before anything is written, and knows what each
/// new row carries.
/// </summary>
internal sealed class VisitEntry
{
    private readonly List<string> replaced = [];
    private readonly List<Remark> remarks = [];
    private readonly List<FieldFault> faults = [];
    private readonly List<FieldFault> shortages = [];
    private readonly List<(string Field, int Attempt, ClearanceReading By)> overtaken = [];
    private bool adjusts;

    private VisitEntry(
        WorkshopDbContext db, OpenCard open, CardMeasurements known, IMeasuredEntry request, Actor actor, Instant now)
    {
        (Db, Open, Known, Reason, Actor, Now) = (db, open, known, request.Reason, actor, now);
        MeasuredAt = request.MeasuredAt ?? now;
        MeasuredBy = request.MeasuredBy ?? actor.PersonId;
    }

    public WorkshopDbContext Db { get; }

    public OpenCard Open { get; }

    /// <summary>What stands on the card, and what this send has added so far.</summary>
    public CardMeasurements Known { get; }

    public Actor Actor { get; }

    public Instant Now { get; }

    public Instant MeasuredAt { get; }

    public Guid MeasuredBy { get; }

    public LocalDate Day { get; private set; }

    /// <summary>The check-in's reading: the distance that every measurement of the visit stands at.</summary>
    public Guid OdometerReadingId => Open.CheckIn!.OdometerReadingId;

    public EngineSpecification Specification => Open.Specification;

    public List<string> Warnings { get; } = [];

    /// <summary>What happened to shims, in order; written last, what came out before what went in.</summary>
    public List<StockMovement> ShimMovements { get; } = [];

    private string? Reason { get; }

    /// <summary>Locks the card and reads what stands on it; refused where it is not open for work.</summary>
    public static async Task<Outcome<VisitEntry>> Begin(
        WorkshopDbContext db, int number, IMeasuredEntry request, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var known = await CardMeasurements.Load(db, number, ct);
        var entry = new VisitEntry(db, open, known, request, actor, clock.GetCurrentInstant());
        await entry.CheckWhoAndWhen(request, ct);
        await entry.CheckInstrument("micrometerId", request.MicrometerId, InstrumentKind.Micrometer, ct);
        return entry;
    }

    public void Add(FieldFault? fault)
    {
        if (fault is not null)
        {
            faults.Add(fault);
        }
    }

    /// <summary>The stores lack it: answered as a conflict, where nothing else is wrong.</summary>
    public void AddShortage(string field, string sentence) => shortages.Add(new FieldFault(field, sentence));

    /// <summary>Somebody else has read the lobe since the caller looked.</summary>
    public void AddOvertaken(string field, int attempt, ClearanceReading by) => overtaken.Add((field, attempt, by));

    /// <summary>Notes that a new row takes the place of an earlier one; a reason is asked for.</summary>
    public void Replaces(string what) => replaced.Add(what);

    /// <summary>The remark that explains a row, or none: why it replaces another, why it was kept though not cold.</summary>
    public Guid? RemarkFor(bool replacing, string? keptWhyNotCold)
    {
        var text = string.Join(" ", new[]
        {
            replacing ? Reason?.Trim() : null,
            keptWhyNotCold is null ? null : $"Not cold: {keptWhyNotCold.Trim()}",
        }.Where(t => t is { Length: > 0 }));
        if (text.Length == 0)
        {
            return null;
        }

        var remark = remarks.Find(r => r.Text == text);
        if (remark is null)
        {
            remark = new Remark { Id = NewId.At(Now), Text = text, WrittenBy = Actor.PersonId, WrittenAt = Now };
            remarks.Add(remark);
        }

        return remark.Id;
    }

    /// <summary>An instrument that is named must exist, be of its kind, in use, and in calibration on the day.</summary>
    public async Task CheckInstrument(string field, Guid? id, InstrumentKind kind, CancellationToken ct) =>
        Add(await UsableInstrument.FaultOf(Db, field, id, kind, Day, ct));

    /// <summary>A shim went in or a screw was turned: the booked adjustment begins, if it has not.</summary>
    public void Adjusts() => adjusts = true;

    /// <summary>Saves what was added and writes the forecasts anew; or says everything that is wrong.</summary>
    public async Task<Problem?> Finish(IClock clock, CancellationToken ct)
    {
        if (overtaken.Count > 0)
        {
            return await Overtaken(ct);
        }

        Add(Attempts.FaultOfReason(Reason, replaced));
        if (faults.Count > 0)
        {
            return Problem.Impossible("not-possible", [.. faults, .. shortages]);
        }

        if (shortages.Count > 0)
        {
            return Problem.Conflict("stock-short", string.Join(" ", shortages.Select(s => s.Sentence))) with { Faults = shortages };
        }

        Db.Remarks.AddRange(remarks);
        await Db.SaveChangesAsync(ct);
        await ShimLedger.Write(Db, ShimMovements, ct);
        if (adjusts)
        {
            await StartAdjustment(clock, ct);
        }

        await ForecastRows.Rewrite(Db, Open.Card.EngineId, clock, ct);
        return null;
    }

    /// <summary>Both values, so that a person can decide which stands.</summary>
    private async Task<Problem> Overtaken(CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(Db, ct);
        var ids = overtaken.Select(o => o.By.MeasuredBy).Distinct().ToList();
        var names = await Db.People.Where(p => ids.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Name, ct);
        var faulty = overtaken.Select(o => new FieldFault(o.Field,
            $"{o.Field} is {o.Attempt}: {o.By.Key.Spoken} {o.By.Stage.Spoken()} was read meanwhile, {o.By.Bracket} "
            + $"by {names[o.By.MeasuredBy]} at {time.Say(o.By.MeasuredAt)}, attempt {o.By.Attempt}.")).ToList();
        return Problem.Conflict("overtaken", string.Join(" ", faulty.Select(f => f.Sentence))) with
        {
            Faults = faulty,
            Extras = new Dictionary<string, object?>
            {
                ["standing"] = overtaken.Select(o => new
                {
                    o.By.Valve, o.By.Lobe, o.By.Stage, o.By.Attempt, Reading = o.By.Bracket.ToString(),
                    MeasuredBy = names[o.By.MeasuredBy], MeasuredAt = time.Say(o.By.MeasuredAt),
                }).ToArray(),
            },
        };
    }

    private async Task StartAdjustment(IClock clock, CancellationToken ct)
    {
        var adjustments = Open.Items.Where(i => Open.ItemOf(i).Kind == ServiceItemKind.ValveClearanceAdjustment).ToList();
        if (adjustments.Count == 0)
        {
            Warnings.Add("No clearance adjustment stands on this card: begin it there, so that what it opens comes on the torque sheet.");
        }

        foreach (var item in adjustments.Where(i => i.Likelihood != Likelihood.Certain && i.StartedAt is null))
        {
            var request = new StartItem.Request { Number = Open.Card.Number, Code = item.ServiceItemCode };
            Warnings.AddRange((await StartItem.Handle(request, Db, Actor, clock, ct)).Value.Warnings);
        }
    }

    private async Task CheckWhoAndWhen(IMeasuredEntry request, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(Db, ct);
        Day = time.DayOf(MeasuredAt);
        faults.AddRange(await WhoAndWhen.FaultsOf(Db, Open, time, MeasuredAt, request.MeasuredBy, Now, ct));
    }
}
