using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Features.TorqueSheets;
using Workshop.Web.Http;

namespace Workshop.Web.Data.Seeding;

/// <summary>The time is what the history says.</summary>
internal sealed class HistoryClock(Instant start) : IClock
{
    public Instant Now { get; set; } = start;

    public Instant GetCurrentInstant() => Now;
}

/// <summary>
/// The people, places and instruments that the history is written with: every step of it is a use case, run for one of them
/// at the time at which it happened.
/// </summary>
internal sealed class DemoStaff
{
    private readonly WorkshopDbContext db;
    private readonly IServiceProvider services;
    private readonly List<Instrument> wrenches;
    private readonly List<WrenchAdapter> adapters;

    /// <summary>Since each wrench's calibration, as the ticks of this history make them.</summary>
    private readonly Dictionary<Guid, int> cycles = [];
    private readonly Dictionary<string, Actor> actors = new(StringComparer.Ordinal);

    private DemoStaff(
        WorkshopDbContext db, IServiceProvider services, HistoryClock clock, WorkshopTime time, List<Instrument> wrenches,
        List<WrenchAdapter> adapters) =>
        (this.db, this.services, Clock, Time, this.wrenches, this.adapters) = (db, services, clock, time, wrenches, adapters);

    public HistoryClock Clock { get; }

    public WorkshopTime Time { get; }

    public IReadOnlyList<Resource> Resources { get; private set; } = [];

    public Guid Micrometer { get; private set; }

    private Dictionary<InstrumentKind, Guid> FirstOfKind { get; set; } = [];

    /// <summary>The first instrument of a kind, by serial number.</summary>
    public Guid First(InstrumentKind kind) => FirstOfKind[kind];

    /// <summary>By serial number: the set's id and its blades.</summary>
    public IReadOnlyDictionary<string, (Guid Id, IReadOnlyList<Clearance> Blades)> FeelerSets { get; private set; } =
        new Dictionary<string, (Guid, IReadOnlyList<Clearance>)>();

    public static async Task<DemoStaff> Assemble(
        WorkshopDbContext db,
        IServiceProvider services,
        IReadOnlyList<(DemoPerson Demo, Person Person)> people,
        WorkshopTime time,
        HistoryClock clock,
        CancellationToken ct)
    {
        var instruments = await db.Instruments.AsNoTracking().OrderBy(i => i.SerialNumber).ToListAsync(ct);
        var staff = new DemoStaff(
            db, services, clock, time, instruments.FindAll(i => i.Kind == InstrumentKind.TorqueWrench),
            await db.WrenchAdapters.AsNoTracking().OrderBy(a => a.Name).ToListAsync(ct))
        {
            Resources = await db.Resources.AsNoTracking().ToListAsync(ct),
            Micrometer = instruments.First(i => i.Kind == InstrumentKind.Micrometer).Id,
            FirstOfKind = instruments.GroupBy(i => i.Kind).ToDictionary(g => g.Key, g => g.First().Id),
        };
        foreach (var (demo, person) in people)
        {
            staff.actors.Add(demo.Account, new Actor(person.Id, demo.Roles.ToHashSet(StringComparer.Ordinal)));
        }

        var blades = await (
            from blade in db.FeelerBlades.AsNoTracking()
            join instrument in db.Instruments on blade.InstrumentId equals instrument.Id
            select new { instrument.Id, instrument.SerialNumber, blade.Nominal }).ToListAsync(ct);
        staff.FeelerSets = blades.GroupBy(b => b.SerialNumber).ToDictionary(
            g => g.Key, g => (g.First().Id, (IReadOnlyList<Clearance>)[.. g.Select(b => b.Nominal).Order()]));
        return staff;
    }

    public Guid ResourceOf(ResourceKind kind, string name) => Resources.Single(r => r.Kind == kind && r.Name == name).Id;

    /// <summary>Runs a use case for one of the people; its transaction is the seeder's.</summary>
    public Task<TAnswer> Do<TRequest, TAnswer>(
        string account, TRequest request, Handle<TRequest, TAnswer> handle, CancellationToken ct) =>
        For(account).WriteInside(request, handle, ct);

    public async Task<TAnswer> Look<TRequest, TAnswer>(
        string account, TRequest request, Handle<TRequest, TAnswer> handle, CancellationToken ct)
    {
        var seen = await For(account).Read(request, handle, ct);
        db.ChangeTracker.Clear();
        return seen.Value;
    }

    /// <summary>Somebody tightens a fastener, with the best of what is offered on the clock's day.</summary>
    public Task Tighten(string account, int number, Fastener fastener, CancellationToken ct)
    {
        var best = BestFor(fastener);
        var wrench = best.OnHand.Wrench;
        if (wrench.CalibratedOn <= Time.DayOf(Clock.Now))
        {
            cycles[wrench.Id] = cycles.GetValueOrDefault(wrench.Id) + WrenchCycles.Of(fastener);
        }

        return Do(account, new TickFastener.Request
        {
            Number = number, FastenerCode = fastener.Code, Tightened = true, WrenchId = wrench.Id, AdapterId = best.Adapter?.Id,
            AdapterAngleDegrees = best.AngleDegrees,
        }, TickFastener.Handle, ct);
    }

    /// <summary>The wrench that suits a fastener best on the clock's day.</summary>
    public Guid WrenchFor(Fastener fastener) => BestFor(fastener).OnHand.Wrench.Id;

    private WrenchOffer BestFor(Fastener fastener)
    {
        var choice = WrenchChoice.For(
            WrenchTask.Of(fastener)[^1], [.. wrenches.Select(w => new WrenchOnHand(w, cycles.GetValueOrDefault(w.Id)))], adapters, Time.DayOf(Clock.Now));
        return choice.Offers.Count > 0 ? choice.Offers[0] : throw new InvalidOperationException($"{fastener.Code}: {choice.Missing}.");
    }

    public void SetClock(LocalDate day, int hour, int minute = 0) =>
        Clock.Now = (day + new LocalTime(hour, minute)).InZoneLeniently(Time.Zone).ToInstant();

    private UseCases For(string account) =>
        new(db, Clock, services, new Caller(actors[account], Key: null, RequestId: "first start", Target: "first start"));
}
