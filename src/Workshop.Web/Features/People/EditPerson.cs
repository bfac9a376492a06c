using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

/// <summary>
/// Changes what is known of somebody of the workshop, what the account may do, and whether it can be signed in with; the whole of
/// it is sent, with the version that was read. Locking ends every open sign-in. Nobody is deleted.
/// </summary>
public static class EditPerson
{
    public sealed record Request : IPersonFields, IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public string? Phone { get; init; }

        public string? Email { get; init; }

        public string? UserName { get; init; }

        public IList<string> Roles { get; init; } = [];

        /// <summary>Cannot sign in until a manager unlocks the account.</summary>
        public bool Locked { get; init; }
    }

    public sealed record Answer(Guid Id, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new PersonFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await StaffMember.Find(db, request.Id, ct)).TryGet(out var member, out var problem))
        {
            return problem;
        }

        var (person, account) = member;
        var managesNoMore = request.Locked || !request.Roles.Contains(Roles.Manager);
        if (managesNoMore && !await AccountRows.AnotherManagerThan(db, account.Id, ct))
        {
            return Problem.Impossible("last-manager", request.Locked ? "locked" : "roles",
                $"{person.Name} is the only manager who can sign in; make somebody else a manager first.");
        }

        if (await AccountRows.NameTaken(db, request.UserName!, account.Id, ct) is { } taken)
        {
            return taken;
        }

        (person.Name, person.Phone, person.Email) = (request.Name!, request.Phone, request.Email);
        AccountRows.SetUserName(account, request.UserName!);
        await AccountRows.SetRoles(db, account.Id, request.Roles, ct);
        if (request.Locked != account.LockedByManager)
        {
            (account.LockoutEnd, account.AccessFailedCount) = (request.Locked ? Account.ForGood : null, 0);
        }

        var version = member.ChangedFrom(db, request.RowVersion!.Value);
        await db.SaveChangesAsync(ct);
        if (request.Locked)
        {
            await Sessions.RevokeAll(db, account.Id, clock.GetCurrentInstant(), ct);
        }

        return new Answer(person.Id, version.CurrentValue);
    }
}
