using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
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
    private readonly Dictionary<string, Actor> actors = new(StringComparer.Ordinal);

    private DemoStaff(
        WorkshopDbContext db, IServiceProvider services, HistoryClock clock, WorkshopTime time, List<Instrument> wrenches) =>
        (this.db, this.services, Clock, Time, this.wrenches) = (db, services, clock, time, wrenches);

    public HistoryClock Clock { get; }

    public WorkshopTime Time { get; }

    public IReadOnlyList<Resource> Resources { get; private set; } = [];

    public Guid Micrometer { get; private set; }

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
            db, services, clock, time, instruments.FindAll(i => i.Kind == InstrumentKind.TorqueWrench))
        {
            Resources = await db.Resources.AsNoTracking().ToListAsync(ct),
            Micrometer = instruments.First(i => i.Kind == InstrumentKind.Micrometer).Id,
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

    /// <summary>A wrench that suits a torque on the clock's day.</summary>
    public Guid WrenchFor(Torque torque) => TorqueWrench.Suited(wrenches, torque, Time.DayOf(Clock.Now))[0].Id;

    public void SetClock(LocalDate day, int hour, int minute = 0) =>
        Clock.Now = (day + new LocalTime(hour, minute)).InZoneLeniently(Time.Zone).ToInstant();

    private UseCases For(string account) =>
        new(db, Clock, services, new Caller(actors[account], Key: null, RequestId: "first start", Target: "first start"));
}
