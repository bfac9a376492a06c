using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>One bay, technician, special tool or parking place more. A technician is somebody of the workshop.</summary>
public static class AddResource
{
    public sealed record Request
    {
        public ResourceKind? Kind { get; init; }

        /// <summary>Of a technician the initials.</summary>
        public string? Name { get; init; }

        /// <summary>Technicians only, and always: who it is.</summary>
        public Guid? PersonId { get; init; }

        // A list that can be added to: the page's binder fills it in place.
        public IList<string?> Capabilities { get; init; } = [];

        /// <summary>Technicians only.</summary>
        public TechnicianGrade? Grade { get; init; }
    }

    public sealed record Answer(Guid Id);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Kind).IsGiven("what it is: bay, technician, specialTool or parkingPlace");
            RuleFor(r => r.Name).IsGiven("the name it is called by, of a technician the initials").IsAtMost(Limits.ResourceName);
            RuleFor(r => r.PersonId).IsGiven("the person whom the technician is").When(r => r.Kind == ResourceKind.Technician);
            RuleFor(r => r.PersonId).Null().When(r => r.Kind is not null and not ResourceKind.Technician)
                .WithMessage("personId is given, but only a technician is a person; leave it out.");
            RuleFor(r => r.Grade).Null().When(r => r.Kind is not null and not ResourceKind.Technician)
                .WithMessage("grade is given, but only technicians have one; leave it out.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var kind = request.Kind!.Value;
        var capabilities = ResourceRules.Clean(request.Capabilities);
        if (ResourceRules.CapabilityFault(kind, capabilities) is { } fault)
        {
            return Problem.Impossible("capabilities", [fault]);
        }

        if (await ResourceLock.NameTaken(db, kind, request.Name!, except: null, ct) is { } taken)
        {
            return taken;
        }

        if (request.PersonId is { } personId && await RefusePerson(db, personId, ct) is { } refused)
        {
            return refused;
        }

        var resource = new Resource
        {
            Id = NewId.At(clock), Kind = kind, Name = request.Name!, PersonId = request.PersonId, Capabilities = [.. capabilities],
            Grade = request.Grade,
        };
        db.Resources.Add(resource);
        await db.SaveChangesAsync(ct);
        return new Answer(resource.Id);
    }

    private static async Task<Problem?> RefusePerson(WorkshopDbContext db, Guid personId, CancellationToken ct)
    {
        // Held, so that nobody becomes a technician twice at once.
        await db.Database.ExecuteSqlAsync($"select 1 from people where id = {personId} for no key update", ct);
        if (!await db.People.AnyAsync(p => p.Id == personId && p.IsStaff, ct))
        {
            return Problem.Impossible("person-unknown", "personId",
                $"personId is {personId}: nobody of the workshop has it; enter the person first, or choose one of GET /api/v1/people.");
        }

        var already = await db.Resources.AsNoTracking().Where(r => r.PersonId == personId).Select(r => r.Name).FirstOrDefaultAsync(ct);
        return already is null
            ? null
            : Problem.Impossible("technician-already", "personId", $"personId is {personId}, who is the technician {already} already; a person is one technician.");
    }
}
