using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Gauges;
using Workshop.Web.Features.Gauges;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// A study of the micrometer that is complete, with readings drawn from a fixed seed, another that waits for its readings, and a
/// blade that was found bent.
/// </summary>
internal sealed class DemoGauges(WorkshopDbContext db, DemoStaff staff)
{
    private const string Manager = "otto";
    private const int Parts = 6;
    private const int Trials = 2;

    private static readonly string[] Readers = ["Tilda", "Bram", "Jorun"];

    public async Task Write(Instant now, CancellationToken ct)
    {
        var people = await db.People.AsNoTracking().Where(p => p.IsStaff).ToListAsync(ct);
        List<Guid> readers = [.. Readers.Select(name => people.Single(p => p.Name.StartsWith(name, StringComparison.Ordinal)).Id)];
        staff.SetClock(staff.Time.DayOf(now).PlusDays(-20), 9, 0);
        var study = await Start("Shims of 8.9 mm by micrometer", Parts, 0.05m, readers, ct);
        var random = new RandomSource(8);
        double[] truth = [.. Enumerable.Range(0, Parts).Select(part => 2.1 + (0.05 * part) + random.Normal(0, 0.004))];
        foreach (var (reader, bias) in readers.Zip(new[] { 0.0, 0.0015, -0.001 }))
        {
            for (var trial = 1; trial <= Trials; trial++)
            {
                for (var part = 1; part <= Parts; part++)
                {
                    await staff.Do(Manager, new RecordGaugeReading.Request
                    {
                        Id = study, AppraiserId = reader, Part = part, Trial = trial,
                        Value = decimal.Round((decimal)(truth[part - 1] + bias + random.Normal(0, 0.0012)), 3),
                    }, RecordGaugeReading.Handle, ct);
                }
            }
        }

        await Start("Intake clearance of the test head, set FB-01", 4, 0.1m, readers, ct);
        var blade = await db.FeelerBlades.AsNoTracking().OrderBy(b => b.InstrumentId).ThenByDescending(b => b.Nominal).Select(b => b.Id).FirstAsync(ct);
        await staff.Do(Manager, new CheckBlade.Request { BladeId = blade, Withdrawn = true, Remark = "Bent at the tip." }, CheckBlade.Handle, ct);
        staff.Clock.Now = now;
    }

    private async Task<Guid> Start(string name, int parts, decimal tolerance, List<Guid> readers, CancellationToken ct) =>
        (await staff.Do(Manager, new StartGaugeTrial.Request
        {
            Name = name, Design = GaugeDesign.Crossed, Unit = "mm", Parts = parts, Trials = Trials, Tolerance = tolerance, AppraiserIds = readers,
        }, StartGaugeTrial.Handle, ct)).Id;
}
