using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Intervals;

/// <summary>What the fleet rides: worked out with the whole fleet, read with every motorcycle.</summary>
internal static class FleetRidings
{
    /// <summary>As many motorcycles tell what a hundred thousand would.</summary>
    private const int MostMotorcycles = 4000;

    public static async Task<FleetRiding> Current(WorkshopDbContext db, CancellationToken ct) =>
        (await db.FleetRidings.AsNoTracking().OrderByDescending(r => r.Version).FirstOrDefaultAsync(ct))?.Riding ?? FleetRiding.Usual;

    /// <summary>Works it out anew, from a sample of the motorcycles that the readings alone decide, and adds a version.</summary>
    public static async Task<int> Renew(WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        // By a digest of the id, since ids go up with the time of entry: the oldest customers are no sample.
        var sample = await db.Database.SqlQuery<Guid>(
            $"""select id as "Value" from motorcycles where not retired order by hashtextextended(id::text, 0), id limit {MostMotorcycles}""").ToListAsync(ct);
        var riding = FleetRiding.Of((await Odometers.Load(db, sample, ct)).Values.Select(o => o.Track));
        var version = (await db.FleetRidings.MaxAsync(r => (int?)r.Version, ct) ?? 0) + 1;
        db.FleetRidings.Add(new FleetRidingVersion
        {
            Version = version,
            ComputedAt = clock.GetCurrentInstant(),
            PerDay = riding.PerDay,
            LogDeviation = riding.LogDeviation,
            WanderDays = riding.WanderDays,
            SeasonCosine = riding.Season.Cosine,
            SeasonSine = riding.Season.Sine,
            SeasonProbability = riding.SeasonProbability,
            Motorcycles = riding.Motorcycles,
        });
        await db.SaveChangesAsync(ct);
        return version;
    }
}
