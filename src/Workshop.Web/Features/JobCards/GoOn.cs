using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>What a visit waited for has come: its work goes on, from now.</summary>
public static class GoOn
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Absent: whoever worked on it before.</summary>
        public Guid? TechnicianId { get; init; }
    }

    public sealed record Answer(int Number, Instant WaitedSince, string? Technician, IReadOnlyList<string> Warnings);

    public sealed class Validator : AbstractValidator<Request>;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        if (!(await VisitState.ForWork(db, request.Number, ct)).TryGet(out var visit, out var problem))
        {
            return problem;
        }

        var stands = visit.StandsIn(now);
        var place = await db.Resources.AsNoTracking().SingleOrDefaultAsync(r => r.Id == stands, ct);
        if (WaitRules.RefuseGoOn(visit.SoFar, place) is { } refused)
        {
            return refused;
        }

        var technicianId = request.TechnicianId ?? visit.SoFar.Begun.LastOrDefault(s => s.TechnicianId is not null)?.TechnicianId;
        var technician = await db.Resources.AsNoTracking()
            .SingleOrDefaultAsync(r => r.Id == technicianId && r.Kind == ResourceKind.Technician, ct);
        if (request.TechnicianId is { } named && technician is null)
        {
            return Problem.Impossible("technician-unknown", "technicianId", $"technicianId is {named}: no technician has it.");
        }

        var wait = visit.SoFar.Waits!;
        wait.EndedAt = now;
        db.PhaseStarts.Add(new PhaseStart
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, Phase = VisitPhase.Work, TechnicianId = technician?.Id,
            StartedAt = now, EnteredBy = actor.PersonId,
        });
        await db.SaveChangesAsync(ct);
        IReadOnlyList<string> warnings = place is null
            ? [$"Nobody said where job card {request.Number} stands: say it, so that its bay is taken."]
            : technician is null
                ? ["Nobody is said to work on it."]
                : await RestOfVisit.PlanFromNow(db, visit, place, technician, clock, ct);
        return new Answer(request.Number, wait.Since, technician?.Name, warnings);
    }
}
