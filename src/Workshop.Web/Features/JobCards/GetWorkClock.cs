using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>How long was worked on a job so far, and who is at it now. Sums of single people are not formed.</summary>
public static class GetWorkClock
{
    public sealed record Request(int Number);

    /// <param name="WorkedMinutes">By all together.</param>
    /// <param name="Mine">Since when the caller's own clock runs on this job.</param>
    /// <param name="MineElsewhere">The other job on which it runs.</param>
    public sealed record Answer(int Number, int WorkedMinutes, IReadOnlyList<Running> Now, Instant? Mine, int? MineElsewhere, Stopped? Last);

    public sealed record Running(string Person, Instant Since);

    /// <summary>Why the clock that stopped last did.</summary>
    public sealed record Stopped(Instant At, PauseReason Reason);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!await db.JobCards.AnyAsync(c => c.Number == request.Number, ct))
        {
            return Problem.NotFound($"Job card {request.Number}");
        }

        var spells = await (
            from spell in db.WorkSpells.AsNoTracking()
            join person in db.People on spell.PersonId equals person.Id
            where spell.JobCardNumber == request.Number
            orderby spell.StartedAt
            select new { Spell = spell, person.Name }).ToListAsync(ct);
        var running = spells.Where(s => s.Spell.EndedAt is null).ToList();
        var last = spells.Select(s => s.Spell).Where(s => s.EndedAt is not null).MaxBy(s => s.EndedAt);
        var elsewhere = await db.WorkSpells.AsNoTracking()
            .Where(s => s.PersonId == actor.PersonId && s.EndedAt == null && s.JobCardNumber != request.Number)
            .Select(s => (int?)s.JobCardNumber).SingleOrDefaultAsync(ct);
        return new Answer(
            request.Number,
            (int)WorkClock.Worked(spells.Select(s => s.Spell), clock.GetCurrentInstant()).TotalMinutes,
            [.. running.Select(s => new Running(s.Name, s.Spell.StartedAt))],
            running.Find(s => s.Spell.PersonId == actor.PersonId)?.Spell.StartedAt,
            elsewhere,
            last is null ? null : new Stopped(last.EndedAt!.Value, last.EndedFor!.Value));
    }
}
