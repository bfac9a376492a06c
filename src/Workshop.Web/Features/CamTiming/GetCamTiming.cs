using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.CamTiming;

/// <summary>Cam timing of a visit: what is stated, what was found and left, what is still open, and every entry.</summary>
public static class GetCamTiming
{
    public sealed record Request(int Number);

    /// <param name="Turning">Running direction and where it is seen from.</param>
    public sealed record Answer(int Number, string Turning, IReadOnlyList<Drive> Drives, IReadOnlyList<Entry> History);

    /// <param name="Stated">As the specification has it.</param>
    /// <param name="Teeth">What one tooth of each stage is, in crank degrees.</param>
    /// <param name="Opened">Absent where the visit opens nothing that holds the drive.</param>
    public sealed record Drive(
        CamDrive Stated, IReadOnlyList<decimal> Teeth, CamTimingView.DriveState AsFound, CamTimingView.DriveState AsLeft, OpenedState? Opened);

    /// <param name="NotTightened">Fasteners that are not ticked; until then nothing is measured as left.</param>
    /// <param name="WaitsFor">What stands in the way of confirming the re-check.</param>
    /// <param name="RecheckedAt">Since it was closed; absent until then.</param>
    public sealed record OpenedState(
        IReadOnlyList<string> NotTightened, bool TensionerWasOut, IReadOnlyList<string> WaitsFor, Instant? RecheckedAt, string? RecheckedBy);

    /// <param name="Counts">No later entry took its place.</param>
    public sealed record Entry(
        Guid Id, Stage Stage, string What, int Attempt, string Words, Instant MeasuredAt, string MeasuredBy, bool Counts, string? Reason);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var specification = open.Specification;
        var rows = await TimingRows.Load(db, request.Number, ct);
        var people = await db.People.AsNoTracking().Where(p => p.IsStaff).ToDictionaryAsync(p => p.Id, p => p.Name, ct);
        var facts = await SignOffCase.Gather(db, open, ct);
        var opened = OpenedDrive.Of(specification.CamDrives, facts.ToBeTight).ToDictionary(d => d.Drive.Code);
        var turns = await db.HandTurns.AsNoTracking().Where(t => t.JobCardNumber == request.Number).ToListAsync(ct);
        return new Answer(
            request.Number,
            $"{specification.Layout.Turning.Spoken()} seen from {specification.Layout.TurningSeenFrom}",
            [.. specification.CamDrives.Select(d => new Drive(
                d,
                [.. Enumerable.Range(0, d.Stages.Count).Select(s => CamTimingView.Rounded(WholeTeeth.ToothOf(d, s)))],
                CamTimingView.Of(specification, d, Stage.AsFound, rows),
                CamTimingView.Of(specification, d, Stage.AsLeft, rows),
                opened.TryGetValue(d.Code, out var drive) ? State(drive) : null))],
            await TimingHistory.Of(db, specification, rows, people, ct));

        OpenedState State(OpenedDrive drive)
        {
            var recheck = drive.Recheck(facts.CamRechecks);
            return new OpenedState(
                [.. drive.Open.Select(l => l.Fastener.Name)], drive.TensionerWasOut, recheck is null ? drive.AgainstRecheck(turns) : [],
                recheck?.ConfirmedAt, recheck is null ? null : people.GetValueOrDefault(recheck.ConfirmedBy));
        }
    }
}
