using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>The whole card: who comes with what, by which specification, when, where, with whom, and how far it is.</summary>
public static class GetJobCard
{
    public sealed record Request(int Number);

    /// <param name="StartsAt">When the motorcycle is to arrive.</param>
    /// <param name="EndsAt">When it is to be ready.</param>
    /// <param name="Phases">As they are planned, in order of time.</param>
    /// <param name="ComebackOf">The earlier visit because of which it comes; absent where it comes for itself.</param>
    /// <param name="Comebacks">Later visits that came because of this one.</param>
    public sealed record Answer(
        int Number,
        JobCardState State,
        Instant StartsAt,
        Instant EndsAt,
        Instant BookedAt,
        string BookedBy,
        MotorcycleOfCard Motorcycle,
        SpecificationOfCard Specification,
        IReadOnlyList<ItemOfCard> Items,
        int BookedMinutes,
        int PossibleMinutes,
        IReadOnlyList<ResourceOfCard> Resources,
        IReadOnlyList<PlannedPhaseAnswer> Phases,
        CheckInOfCard? CheckIn,
        EndOfCard? SignedOff,
        EndOfCard? Cancelled,
        ComebackOfCard? ComebackOf,
        IReadOnlyList<ComebackOfCard> Comebacks,
        uint RowVersion) : IHasVersion;

    public sealed record MotorcycleOfCard(
        Guid Id, string Registration, string Maker, string Model, int ModelYear, string? Owner, string? OwnerPhone);

    public sealed record SpecificationOfCard(
        Guid EngineModelId, string EngineModel, int Version, Guid EngineId, bool Invented, Provenance Provenance);

    /// <param name="UnderWay">Certain, or begun: it opens what it opens. Else its parts are held ready.</param>
    public sealed record ItemOfCard(string Code, string Name, Likelihood Likelihood, int LabourMinutes, Instant? StartedAt, bool UnderWay);

    public sealed record ResourceOfCard(Guid Id, ResourceKind Kind, string Name, VisitPhase Phase, Instant From, Instant Until);

    /// <param name="OdometerCount">Whole units of the instrument, as typed.</param>
    /// <param name="EngineStoppedAt">When it last ran: before check-in, or since.</param>
    /// <param name="ColdFrom">When the cold soak ends, if nobody starts the engine before.</param>
    public sealed record CheckInOfCard(
        int OdometerCount,
        OdometerUnit OdometerUnit,
        string? OwnersWords,
        string? SeenOnArrival,
        Instant EngineStoppedAt,
        Instant ColdFrom,
        Instant At,
        string By);

    /// <param name="Number">The other card.</param>
    public sealed record ComebackOfCard(int Number, JobCardState State, Instant StartsAt, string Reason);

    public sealed record EndOfCard(Instant At, string By, string? Remark);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem)
            || !(await CardHead.Load(db, request.Number, ct)).TryGet(out var head, out problem))
        {
            return problem;
        }

        var number = request.Number;
        var motorcycle = await db.Motorcycles.AsNoTracking().SingleAsync(m => m.Id == open.Card.MotorcycleId, ct);
        var owner = await db.People.AsNoTracking().SingleOrDefaultAsync(p => p.Id == motorcycle.OwnerId, ct);
        var version = await db.EngineModelVersions.AsNoTracking().Where(v => v.Id == open.Card.EngineModelVersionId)
            .Select(v => new { v.EngineModelId, v.Version }).SingleAsync(ct);
        var duration = VisitDuration.Of(open.Specification, [.. open.Items.Select(i => new ChosenItem(
            open.ItemOf(i), i.StartedAt is null ? i.Likelihood : Likelihood.Certain))]);
        return new Answer(
            number,
            open.Card.State,
            open.Card.StartsAt,
            open.Card.EndsAt,
            open.Card.BookedAt,
            await NameOf(db, open.Card.BookedBy, ct),
            new MotorcycleOfCard(motorcycle.Id, motorcycle.Registration, motorcycle.Maker, motorcycle.Model, motorcycle.ModelYear,
                owner?.Name, Policies.SeesContactData(actor) ? owner?.Phone : null),
            new SpecificationOfCard(version.EngineModelId, head.EngineModel, version.Version, open.Card.EngineId, head.Invented,
                open.Specification.Provenance),
            [.. open.Items.OrderBy(i => i.Likelihood).ThenBy(i => i.ServiceItemCode, StringComparer.Ordinal).Select(i => ItemOf(open, i))],
            duration.BookedMinutes,
            duration.PossibleMinutes,
            await Resources(db, number, ct),
            [.. (await db.PlannedPhases.AsNoTracking().Where(p => p.JobCardNumber == number).ToListAsync(ct))
                .OrderBy(p => p.Span.Start).ThenBy(p => p.Phase).Select(p => new PlannedPhaseAnswer(p.Phase, p.Span.Start, p.Span.End))],
            open.CheckIn is null ? null : await CheckedIn(db, open, open.CheckIn, ct),
            await SignedOff(db, number, ct),
            await Cancelled(db, number, ct),
            await Others(db, c => c.JobCardNumber == number, c => c.OfJobCardNumber).SingleOrDefaultAsync(ct),
            await Others(db, c => c.OfJobCardNumber == number, c => c.JobCardNumber).ToListAsync(ct),
            head.RowVersion);
    }

    /// <summary>The cards at the other end of comebacks, with why.</summary>
    private static IQueryable<ComebackOfCard> Others(
        WorkshopDbContext db, Expression<Func<Comeback, bool>> which, Expression<Func<Comeback, int>> other) =>
        from comeback in db.Comebacks.AsNoTracking().Where(which)
            .Join(db.JobCards, other, card => card.Number, (comeback, card) => new { comeback.ReasonRemarkId, card })
        join reason in db.Remarks on comeback.ReasonRemarkId equals reason.Id
        orderby comeback.card.StartsAt, comeback.card.Number
        select new ComebackOfCard(comeback.card.Number, comeback.card.State, comeback.card.StartsAt, reason.Text);

    private static ItemOfCard ItemOf(OpenCard open, JobCardItem item)
    {
        var service = open.ItemOf(item);
        return new ItemOfCard(service.Code, service.Name, item.Likelihood, service.LabourMinutes, item.StartedAt,
            item.Likelihood == Likelihood.Certain || item.StartedAt is not null);
    }

    private static async Task<IReadOnlyList<ResourceOfCard>> Resources(WorkshopDbContext db, int number, CancellationToken ct)
    {
        var rows = await (
            from occupancy in db.Occupancies.AsNoTracking()
            join resource in db.Resources on occupancy.ResourceId equals resource.Id
            where occupancy.JobCardNumber == number && occupancy.Live
            select new { resource.Id, resource.Kind, resource.Name, occupancy.Phase, occupancy.Span }).ToListAsync(ct);
        return [.. rows
            .Select(r => new ResourceOfCard(r.Id, r.Kind, r.Name, r.Phase, r.Span.Start, r.Span.End))
            .OrderBy(r => r.Kind).ThenBy(r => r.Name, StringComparer.Ordinal).ThenBy(r => r.From)];
    }

    private static async Task<CheckInOfCard> CheckedIn(WorkshopDbContext db, OpenCard open, CheckIn checkIn, CancellationToken ct)
    {
        var reading = await db.OdometerReadings.AsNoTracking().SingleAsync(r => r.Id == checkIn.OdometerReadingId, ct);
        return new CheckInOfCard(
            reading.Count,
            reading.Unit,
            await TextOf(db, checkIn.OwnersWordsRemarkId, ct),
            await TextOf(db, checkIn.SeenOnArrivalRemarkId, ct),
            open.EngineStoppedAt!.Value,
            open.ColdFrom!.Value,
            checkIn.CheckedInAt,
            await NameOf(db, checkIn.CheckedInBy, ct));
    }

    private static async Task<EndOfCard?> SignedOff(WorkshopDbContext db, int number, CancellationToken ct) =>
        await db.SignOffs.AsNoTracking().SingleOrDefaultAsync(s => s.JobCardNumber == number, ct) is { } end
            ? new EndOfCard(end.SignedAt, await NameOf(db, end.SignedBy, ct), await TextOf(db, end.RemarkId, ct))
            : null;

    private static async Task<EndOfCard?> Cancelled(WorkshopDbContext db, int number, CancellationToken ct) =>
        await db.Cancellations.AsNoTracking().SingleOrDefaultAsync(c => c.JobCardNumber == number, ct) is { } end
            ? new EndOfCard(end.CancelledAt, await NameOf(db, end.CancelledBy, ct), await TextOf(db, end.ReasonRemarkId, ct))
            : null;

    private static Task<string> NameOf(WorkshopDbContext db, Guid person, CancellationToken ct) =>
        db.People.Where(p => p.Id == person).Select(p => p.Name).SingleAsync(ct);

    private static async Task<string?> TextOf(WorkshopDbContext db, Guid? remark, CancellationToken ct) =>
        remark is null ? null : await db.Remarks.Where(r => r.Id == remark).Select(r => r.Text).SingleAsync(ct);
}
