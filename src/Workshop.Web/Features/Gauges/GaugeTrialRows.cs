using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Gauges;

/// <summary>A study with who measures in it and what was read.</summary>
internal sealed record GaugeTrialRows(
    GaugeTrial Trial, uint Version, IReadOnlyList<GaugeTrialRows.Appraiser> Appraisers, IReadOnlyList<GaugeTrialReading> Readings)
{
    public sealed record Appraiser(Guid PersonId, string Name);

    public IReadOnlyList<GaugeTrialReading> Standing { get; } = GaugeTrialPlan.Standing(Readings);

    public int Wanted => Trial.Parts * Trial.Trials * Appraisers.Count;

    public static async Task<GaugeTrialRows?> Find(WorkshopDbContext db, Guid id, CancellationToken ct)
    {
        var found = await db.GaugeTrials.AsNoTracking().Where(t => t.Id == id)
            .Select(t => new { Trial = t, Version = EF.Property<uint>(t, MappingExtensions.RowVersion) }).SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return null;
        }

        var appraisers = await (
            from appraiser in db.GaugeTrialAppraisers.AsNoTracking()
            join person in db.People on appraiser.PersonId equals person.Id
            where appraiser.TrialId == id
            orderby appraiser.Place
            select new Appraiser(person.Id, person.Name)).ToListAsync(ct);
        var readings = await db.GaugeTrialReadings.AsNoTracking().Where(r => r.TrialId == id).OrderBy(r => r.EnteredAt).ThenBy(r => r.Id).ToListAsync(ct);
        return new GaugeTrialRows(found.Trial, found.Version, appraisers, readings);
    }
}
