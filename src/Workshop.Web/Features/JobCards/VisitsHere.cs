using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>A motorcycle that is here: checked in and not signed off.</summary>
/// <param name="Motorcycle">Registration, maker and model.</param>
/// <param name="ReadyAt">As planned.</param>
/// <param name="Begun">In order of time.</param>
/// <param name="Moves">In order of time.</param>
/// <param name="Takes">Live occupancies of every kind.</param>
/// <param name="ColdFrom">When its soak is over, where it needs a cold engine.</param>
/// <param name="Tag">What hangs on its handlebar.</param>
internal sealed record VisitHere(
    int Number,
    string Registration,
    string Motorcycle,
    Instant CheckedInAt,
    Instant ReadyAt,
    IReadOnlyList<PhaseStart> Begun,
    IReadOnlyList<MotorcycleMove> Moves,
    VisitWait? Waits,
    IReadOnlyList<(Take Take, ResourceKind Kind)> Takes,
    Instant? ColdFrom,
    string? Tag)
{
    public VisitPhase? Phase => Begun.Count == 0 ? null : Begun[^1].Phase;

    public Instant Since => Begun.Count == 0 ? CheckedInAt : Begun[^1].StartedAt;

    public Guid? StandsIn(Instant now) => StandingPlace.Of(
        Begun, Moves, [.. Takes.Where(t => t.Kind is ResourceKind.Bay or ResourceKind.ParkingPlace).Select(t => t.Take)], now);
}

/// <summary>All motorcycles that are here, with how far each visit is: few, whatever the books hold.</summary>
internal static class VisitsHere
{
    public static async Task<IReadOnlyList<VisitHere>> Read(WorkshopDbContext db, CancellationToken ct)
    {
        var cards = await (
            from card in db.JobCards.AsNoTracking()
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            join checkIn in db.CheckIns on card.Number equals checkIn.JobCardNumber
            where card.State == JobCardState.CheckedIn
            select new
            {
                card, motorcycle.Registration, motorcycle.Maker, motorcycle.Model, checkIn,
                StoppedSince = db.EngineStops.Where(s => s.JobCardNumber == card.Number).Max(s => (Instant?)s.StoppedAt),
            }).ToListAsync(ct);
        var numbers = cards.Select(c => c.card.Number).ToArray();
        var begun = (await db.PhaseStarts.AsNoTracking().Where(s => numbers.Contains(s.JobCardNumber))
            .OrderBy(s => s.StartedAt).ThenBy(s => s.Id).ToListAsync(ct)).ToLookup(s => s.JobCardNumber);
        var moves = (await db.MotorcycleMoves.AsNoTracking().Where(m => numbers.Contains(m.JobCardNumber))
            .OrderBy(m => m.MovedAt).ThenBy(m => m.Id).ToListAsync(ct)).ToLookup(m => m.JobCardNumber);
        var waits = await db.VisitWaits.AsNoTracking().Where(w => numbers.Contains(w.JobCardNumber) && w.EndedAt == null)
            .ToDictionaryAsync(w => w.JobCardNumber, ct);
        var takes = (await (
            from occupancy in db.Occupancies.AsNoTracking()
            join resource in db.Resources on occupancy.ResourceId equals resource.Id
            where occupancy.Live && numbers.Contains(occupancy.JobCardNumber)
            select new { occupancy.JobCardNumber, occupancy.Phase, occupancy.ResourceId, occupancy.Span, resource.Kind }).ToListAsync(ct))
            .ToLookup(t => t.JobCardNumber, t => (new Take(t.Phase, t.ResourceId, t.Span), t.Kind));
        var cold = await ColdConditions(db, numbers, [.. cards.Select(c => c.card.EngineModelVersionId).Distinct()], ct);
        var tags = moves.ToDictionary(m => m.Key, m => VisitSoFar.TagOf([.. begun[m.Key]], [.. m]));
        Guid[] remarks = [.. tags.Values.Where(t => t is not null).Select(t => t!.Value)];
        var texts = await db.Remarks.AsNoTracking().Where(r => remarks.Contains(r.Id)).ToDictionaryAsync(r => r.Id, r => r.Text, ct);
        return [.. cards.OrderBy(c => c.card.Number).Select(c =>
        {
            var number = c.card.Number;
            var stopped = CardRules.EngineStoppedAt(c.checkIn.EngineStoppedAt, c.StoppedSince);
            return new VisitHere(
                number, c.Registration, $"{c.Registration}, {c.Maker} {c.Model}", c.checkIn.CheckedInAt, c.card.EndsAt,
                [.. begun[number]], [.. moves[number]], waits.GetValueOrDefault(number), [.. takes[number]],
                cold(number, c.card.EngineModelVersionId) is { } condition ? CardRules.SoakEndsAt(stopped, condition) : null,
                tags.GetValueOrDefault(number) is { } tag ? texts.GetValueOrDefault(tag) : null);
        })];
    }

    /// <summary>The cold condition of a card, where its items need a cold engine.</summary>
    private static async Task<Func<int, Guid, ColdCondition?>> ColdConditions(
        WorkshopDbContext db, int[] numbers, Guid[] versions, CancellationToken ct)
    {
        var specifications = await db.EngineModelVersions.AsNoTracking().Where(v => versions.Contains(v.Id))
            .ToDictionaryAsync(v => v.Id, v => v.Specification, ct);
        var items = (await db.JobCardItems.AsNoTracking().Where(i => numbers.Contains(i.JobCardNumber)).ToListAsync(ct))
            .ToLookup(i => i.JobCardNumber);
        return (number, version) => specifications[version] is var specification && items[number].Any(i =>
            (i.Likelihood != Likelihood.Possible || i.StartedAt is not null)
            && VisitShape.NeedsColdEngine(specification.ServiceItems.Single(s => s.Code == i.ServiceItemCode)))
            ? specification.Cold
            : null;
    }
}
