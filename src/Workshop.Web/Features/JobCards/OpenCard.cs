using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// What every stage of a visit starts from: the card, its items, its check-in, and the specification that it pinned.
/// </summary>
/// <param name="EngineStoppedAt">When the engine last ran, as far as anybody wrote it down: at check-in, or since.</param>
public sealed record OpenCard(
    JobCard Card, EngineSpecification Specification, IReadOnlyList<JobCardItem> Items, CheckIn? CheckIn, Instant? EngineStoppedAt)
{
    /// <summary>When the cold soak is over, if nobody starts the engine before; absent before check-in.</summary>
    public Instant? ColdFrom => EngineStoppedAt is { } stopped ? CardRules.SoakEndsAt(stopped, Specification.Cold) : null;

    /// <summary>Certain items, and likely or possible ones that were begun: what is opened and must be closed again.</summary>
    public IReadOnlyList<ServiceItem> ItemsUnderWay => [.. UnderWay.Select(i => i.Item)];

    /// <summary>The same with when each was begun, where that is known.</summary>
    public IReadOnlyList<ItemUnderWay> UnderWay => [.. Items
        .Where(i => i.Likelihood == Likelihood.Certain || i.StartedAt is not null)
        .Select(i => new ItemUnderWay(ItemOf(i), i.StartedAt))];

    /// <summary>Likely and possible items that nobody has begun: their parts are "have ready".</summary>
    public IReadOnlyList<ServiceItem> ItemsHeldReady => [.. Items
        .Where(i => i.Likelihood != Likelihood.Certain && i.StartedAt is null)
        .Select(ItemOf)];

    public ServiceItem ItemOf(JobCardItem item) =>
        Specification.ServiceItems.Single(s => s.Code == item.ServiceItemCode);

    /// <summary>Reads a card for looking at, whatever its state.</summary>
    public static async Task<Outcome<OpenCard>> Find(WorkshopDbContext db, int number, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(db);
        var card = await db.JobCards.SingleOrDefaultAsync(c => c.Number == number, ct);
        if (card is null)
        {
            return Problem.NotFound($"Job card {number}");
        }

        var version = await db.EngineModelVersions.AsNoTracking().SingleAsync(v => v.Id == card.EngineModelVersionId, ct);
        var items = await db.JobCardItems.Where(i => i.JobCardNumber == number).OrderBy(i => i.ServiceItemCode).ToListAsync(ct);
        var arrived = await db.CheckIns.AsNoTracking().Where(c => c.JobCardNumber == number)
            .Select(c => new
            {
                CheckIn = c, StoppedSince = db.EngineStops.Where(s => s.JobCardNumber == number).Max(s => (Instant?)s.StoppedAt),
            }).SingleOrDefaultAsync(ct);
        return new OpenCard(
            card, version.Specification, items, arrived?.CheckIn,
            arrived is null ? null : CardRules.EngineStoppedAt(arrived.CheckIn.EngineStoppedAt, arrived.StoppedSince));
    }

    /// <summary>
    /// Reads a card to change it, whatever its state. Locks the card's row, so that two changes of a card never pass each
    /// other.
    /// </summary>
    public static async Task<Outcome<OpenCard>> Lock(WorkshopDbContext db, int number, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(db);
        await db.Database.ExecuteSqlAsync($"select 1 from job_cards where number = {number} for update", ct);
        return await Find(db, number, ct);
    }

    /// <summary>Reads and locks a card to work on: the motorcycle is here and the card not signed off.</summary>
    public static async Task<Outcome<OpenCard>> ForWork(WorkshopDbContext db, int number, CancellationToken ct) =>
        (await Lock(db, number, ct)).Then(open => open.Card.State switch
        {
            JobCardState.CheckedIn => (Outcome<OpenCard>)open,
            JobCardState.Booked => Problem.Conflict("not-checked-in",
                $"Job card {number} is booked, but the motorcycle is not checked in; check it in first."),
            JobCardState.SignedOff => Problem.Conflict("signed-off",
                $"Job card {number} is signed off and stays as it is; later work goes on a new card."),
            JobCardState.NoShow => Problem.Conflict("no-show", $"The motorcycle of job card {number} did not come."),
            _ => Problem.Conflict("cancelled", $"Job card {number} is cancelled."),
        });
}
