using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// The motorcycle is pushed to another bay or parking place, or a tag is hung on it where it stands. What it had of the old
/// place from now on is free; the new one is taken, unless another visit has it.
/// </summary>
public static class MoveMotorcycle
{
    /// <summary>For how long a place is taken where no plan says how long.</summary>
    private static readonly Duration AtLeast = Duration.FromHours(1);

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>The bay or parking place.</summary>
        public Guid? ResourceId { get; init; }

        /// <summary>What the tag on the handlebar says: "No oil, do not start". Empty: no tag.</summary>
        public string? Tag { get; init; }

        /// <summary>How long it stands there; or else <see cref="UntilDay"/> and <see cref="UntilTime"/>. Absent: as long as was planned.</summary>
        public Instant? Until { get; init; }

        public LocalDate? UntilDay { get; init; }

        public LocalTime? UntilTime { get; init; }
    }

    public sealed record Answer(int Number, Guid ResourceId, string Place, string? Tag, Instant MovedAt, IReadOnlyList<string> Warnings);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.ResourceId).IsGiven("the bay or parking place that it stands in from now on");
            RuleFor(r => r.Tag).IsAtMost(Limits.Name);
            When(
                r => r.Until is not null || r.UntilDay is not null || r.UntilTime is not null,
                () => this.MomentIsGiven(r => r.Until, r => r.UntilDay, r => r.UntilTime, "how long it stands there"));
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var now = clock.GetCurrentInstant();
        if (!(await VisitState.ForWork(db, request.Number, ct)).TryGet(out var visit, out var problem)
            || !(await Place(db, request, ct)).TryGet(out var place, out problem)
            || !Until(request, time, now).TryGet(out var until, out problem))
        {
            return problem;
        }

        var stands = visit.StandsIn(now);
        var warnings = new List<string>();
        if (stands != place.Id)
        {
            await TakeWhatIsFree.Lock(db, visit.Places.Select(p => p.Resource.Id).Append(place.Id), ct);
            if (await WhoStandsThere(db, visit, place, now, ct) is { } other)
            {
                return other;
            }

            if (await Take(db, visit, place, stands, until.At, time, clock, ct) is { } taken)
            {
                return taken;
            }

            if (place.Kind == ResourceKind.ParkingPlace && visit.SoFar.WorkBegunAt is not null)
            {
                warnings.Add("Its bay is free from now on; the rest of its work takes one when it goes on.");
            }
        }
        else if (string.IsNullOrWhiteSpace(request.Tag) && visit.SoFar.TagRemarkId is null)
        {
            return Problem.Conflict("stands-there", $"The motorcycle of job card {request.Number} stands in {place.Name} already.");
        }

        if (visit.SoFar.MayLackOil && string.IsNullOrWhiteSpace(request.Tag))
        {
            warnings.Add($"Oil was drained and no tag hangs on it: \"{PhaseRules.NoOilTag}\" belongs on the handlebar.");
        }

        db.MotorcycleMoves.Add(new MotorcycleMove
        {
            Id = NewId.At(clock),
            JobCardNumber = request.Number,
            ResourceId = place.Id,
            TagRemarkId = Remarks.Add(db, request.Tag, actor, clock),
            MovedAt = now,
            MovedBy = actor.PersonId,
        });
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, place.Id, place.Name, request.Tag?.Trim(), now, warnings);
    }

    private sealed record Stay(Instant? At);

    private static Outcome<Stay> Until(Request request, WorkshopTime time, Instant now)
    {
        if (request.Until is null && request.UntilDay is null)
        {
            return new Stay(null);
        }

        var (field, moment) = Moments.Read(time, "until", request.Until, "untilTime", request.UntilDay, request.UntilTime);
        return moment.Then(at => at > now
            ? (Outcome<Stay>)new Stay(at)
            : Problem.Impossible("past", field, $"{field} is {time.Say(at)}, which is past; it is {time.Say(now)} now."));
    }

    private static async Task<Outcome<Resource>> Place(WorkshopDbContext db, Request request, CancellationToken ct)
    {
        var found = await db.Resources.AsNoTracking().SingleOrDefaultAsync(r => r.Id == request.ResourceId, ct);
        return found switch
        {
            null => Problem.Impossible("place-unknown", "resourceId", $"resourceId is {request.ResourceId}: no bay or parking place has it."),
            { Kind: not (ResourceKind.Bay or ResourceKind.ParkingPlace) } =>
                Problem.Impossible("no-place", "resourceId", $"resourceId is {found.Name}, a {found.Kind.Spoken()}: a motorcycle stands in a bay or a parking place."),
            { Retired: true } => Problem.Impossible("resource-retired", "resourceId", $"resourceId is {found.Name}, which is retired; choose another place."),
            _ => found,
        };
    }

    /// <summary>Who stands there now, whatever was planned.</summary>
    private static async Task<Problem?> WhoStandsThere(
        WorkshopDbContext db, VisitState visit, Resource place, Instant now, CancellationToken ct) =>
        (await VisitsHere.Read(db, ct)).FirstOrDefault(v => v.Number != visit.Card.Number && v.StandsIn(now) == place.Id) is { } other
            ? Problem.Conflict("place-occupied",
                $"{place.Name}: the motorcycle of job card {other.Number} ({other.Motorcycle}) stands there; move that one first.")
                with { Faults = [new FieldFault("resourceId", $"{place.Name}: job card {other.Number} stands there.")] }
            : null;

    private static async Task<Problem?> Take(
        WorkshopDbContext db, VisitState visit, Resource place, Guid? stands, Instant? until, WorkshopTime time, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var rows = RowsOfStay(visit, place, stands, now);
        var stay = StayOf(visit, place, rows, until, now);
        TakeWhatIsFree.Free(rows, now);
        await db.SaveChangesAsync(ct);
        db.Occupancies.AddRange(stay.Select(piece => new Occupancy
        {
            Id = NewId.At(clock), JobCardNumber = visit.Card.Number, Phase = piece.Phase, ResourceId = place.Id, Span = piece.Span,
        }));
        visit.Card.PlanRevision++;
        try
        {
            await db.SaveChangesAsync(ct);
            return null;
        }
        catch (DbUpdateException fault) when (fault.InnerException is PostgresException { SqlState: PostgresErrorCodes.ExclusionViolation })
        {
            var taken = await Occupied.Refuse(
                db, [.. stay.Select(piece => new Take(piece.Phase, place.Id, piece.Span))], [visit.Card.Number], time, ct);
            return taken with { Faults = [new FieldFault("resourceId", taken.Sentence)] };
        }
    }

    /// <summary>What it had of the old place, and of the new one, from now on without a gap.</summary>
    private static List<Occupancy> RowsOfStay(VisitState visit, Resource place, Guid? stands, Instant now)
    {
        var (rows, end) = (new List<Occupancy>(), now);
        foreach (var row in visit.Places.Where(p => p.Resource.Id == stands || p.Resource.Id == place.Id).Select(p => p.Row)
            .Where(r => r.Span.End > now).OrderBy(r => r.Span.Start))
        {
            if (row.Span.Start > end)
            {
                break;
            }

            rows.Add(row);
            end = Instant.Max(end, row.Span.End);
        }

        return rows;
    }

    /// <summary>
    /// The same of the new place, phase by phase; at least an hour. In a parking place nobody works: only until a wait is
    /// expected to end.
    /// </summary>
    private static List<PhaseSpan> StayOf(VisitState visit, Resource place, List<Occupancy> rows, Instant? until, Instant now)
    {
        var end = rows.Count == 0 ? now : rows.Max(r => r.Span.End);
        var last = until ?? (place.Kind == ResourceKind.ParkingPlace ? visit.SoFar.Waits?.ExpectedUntil : null)
            ?? Instant.Max(end, now + AtLeast);
        var stay = rows.Where(r => r.Span.Start < last)
            .Select(r => new PhaseSpan(r.Phase, new Interval(Instant.Max(now, r.Span.Start), Instant.Min(r.Span.End, last)))).ToList();
        var covered = stay.Count == 0 ? now : stay[^1].Span.End;
        if (covered < last)
        {
            stay.Add(new PhaseSpan(visit.SoFar.Phase ?? VisitPhase.Arrival, new Interval(covered, last)));
        }

        return stay;
    }
}
