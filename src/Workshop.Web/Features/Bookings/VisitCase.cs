using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Bookings;

/// <summary>A visit before it has a time: what it is for, how long its phases take, what it needs, what was wished.</summary>
internal sealed record VisitCase(
    EngineSpecification Specification, IReadOnlyList<ChosenItem> Items, VisitShape Shape, VisitNeeds Needs, VisitWishes Wishes)
{
    /// <summary>How far beyond its start a single visit is looked at: longer than any visit with the closed days in it.</summary>
    private const int LongestVisitDays = 45;

    /// <summary>How far before its work a motorcycle may arrive.</summary>
    private const int LongestSoakDays = 14;

    public VisitDuration Labour => VisitDuration.Of(Specification, Items);

    public static async Task<VisitCase> Of(
        WorkshopDbContext db, EngineSpecification specification, IReadOnlyList<ChosenItem> items, VisitWishes wishes, CancellationToken ct)
    {
        var profile = await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct);
        return new VisitCase(
            specification, items,
            VisitShape.Of(specification, items, profile, wishes.TestRunAtArrival, wishes.WorkMinutes),
            VisitNeeds.Of(items), wishes);
    }

    /// <summary>Of a card that stands: its items as they are now, and the wishes that were kept with it.</summary>
    public static async Task<VisitCase> OfCard(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var number = open.Card.Number;
        var wishes = await db.VisitWishes.SingleOrDefaultAsync(w => w.JobCardNumber == number, ct) ?? new VisitWishes { JobCardNumber = number };
        return await Of(
            db, open.Specification,
            [.. open.Items.Select(i => new ChosenItem(open.ItemOf(i), i.StartedAt is null ? i.Likelihood : Likelihood.Certain))],
            wishes, ct);
    }

    /// <summary>The terms of this visit from now on.</summary>
    public PlanTerms Terms(Instant now, Instant? partsFrom = null, StandsHere? here = null) => new()
    {
        Now = now, NotBefore = Wishes.NotBefore, ReadyBy = Wishes.ReadyBy, PartsFrom = partsFrom, Here = here,
    };

    /// <summary>
    /// Locks bay, technician, every tool that may serve and, where something soaks, the parking places, in order of id; then reads
    /// them as they are. An absence that is being entered for one of them waits, or is waited for: its row points at the resource's.
    /// </summary>
    public async Task<WorkshopFloor> LockAndRead(
        WorkshopDbContext db, OpeningCalendar calendar, Guid bay, Guid technician, Instant workStart, Instant now, int[] exceptCards, CancellationToken ct)
    {
        string[] codes = [.. Needs.SpecialTools];
        var tools = await db.Resources.Where(r => r.Kind == ResourceKind.SpecialTool && r.Capabilities.Any(c => codes.Contains(c)))
            .Select(r => r.Id).ToListAsync(ct);
        var places = Shape.Soak > Duration.Zero
            ? await db.Resources.Where(r => r.Kind == ResourceKind.ParkingPlace).Select(r => r.Id).ToListAsync(ct)
            : [];
        Guid[] ids = [.. tools.Concat(places).Append(bay).Append(technician).Distinct()];
        await PlanWriter.Lock(db, ids, ct);
        return await FloorReader.Read(
            db, calendar, Instant.Min(workStart - Duration.FromDays(LongestSoakDays), now),
            Instant.Max(workStart, now) + Duration.FromDays(LongestVisitDays), exceptCards, ids, ct);
    }

    /// <summary>The whole floor, for a search that looks for arrivals from now on and for work from a later moment on.</summary>
    public static Task<WorkshopFloor> ReadAll(
        WorkshopDbContext db, OpeningCalendar calendar, Instant now, Instant from, int[] exceptCards, CancellationToken ct) =>
        FloorReader.Read(
            db, calendar, Instant.Max(now, from - Duration.FromDays(LongestSoakDays)),
            from + Duration.FromDays(SlotSearch.HorizonDays + LongestVisitDays), exceptCards, null, ct);
}
