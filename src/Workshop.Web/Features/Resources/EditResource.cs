using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>
/// Changes what a resource is called and can do, retires it or restores it; the whole of it is sent, with the version that was
/// read. What a booked visit stands on is not retired: its visits are moved first.
/// </summary>
public static class EditResource
{
    private const int MostNamed = 5;

    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public IList<string?> Capabilities { get; init; } = [];

        /// <summary>Technicians only.</summary>
        public TechnicianGrade? Grade { get; init; }

        /// <summary>Not to be booked any more; what it did stays in the books.</summary>
        public bool Retired { get; init; }
    }

    public sealed record Answer(Guid Id, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Name).IsGiven("the name it is called by, of a technician the initials").IsAtMost(Limits.ResourceName);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ResourceLock.Take(db, request.Id, ct)).TryGet(out var resource, out var problem))
        {
            return problem;
        }

        var capabilities = ResourceRules.Clean(request.Capabilities);
        if (ResourceRules.CapabilityFault(resource.Kind, capabilities) is { } fault)
        {
            return Problem.Impossible("capabilities", [fault]);
        }

        if (request.Grade is not null && resource.Kind != ResourceKind.Technician)
        {
            return Problem.Impossible("grade", "grade", $"grade is given, but {resource.Name} is a {resource.Kind.Spoken()}; only technicians have one.");
        }

        if (await ResourceLock.NameTaken(db, resource.Kind, request.Name!, resource.Id, ct) is { } taken)
        {
            return taken;
        }

        if (request.Retired && !resource.Retired && await RefuseRetiring(db, resource, clock.GetCurrentInstant(), ct) is { } booked)
        {
            return booked;
        }

        (resource.Name, resource.Capabilities, resource.Grade, resource.Retired) =
            (request.Name!, [.. capabilities], request.Grade, request.Retired);
        return new Answer(resource.Id, await ResourceLock.Save(db, resource, request.RowVersion!.Value, ct));
    }

    private static async Task<Problem?> RefuseRetiring(WorkshopDbContext db, Resource resource, Instant now, CancellationToken ct)
    {
        var numbers = await (
            from occupancy in StandingVisits.Ahead(db, new Interval(now, Instant.MaxValue))
            join card in db.JobCards on occupancy.JobCardNumber equals card.Number
            where occupancy.ResourceId == resource.Id && (card.State == JobCardState.Booked || card.State == JobCardState.CheckedIn)
            select card.Number).Distinct().Order().ToListAsync(ct);
        if (numbers.Count == 0)
        {
            return null;
        }

        var named = string.Join(", ", numbers.Take(MostNamed)) + (numbers.Count > MostNamed ? $" and {numbers.Count - MostNamed} more" : "");
        var sentence = $"retired: {resource.Name} is booked on job card{(numbers.Count == 1 ? "" : "s")} {named}; move or cancel what stands on it first.";
        return Problem.Conflict("still-booked", sentence) with { Faults = [new FieldFault("retired", sentence)] };
    }
}
