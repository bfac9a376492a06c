using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

/// <summary>Everybody of the workshop by name, with what the account may do and whom visits can take as a technician.</summary>
public static class ListPeople
{
    /// <param name="Id">Only that person.</param>
    public sealed record Request(Guid? Id = null);

    public sealed record Answer(IReadOnlyList<Row> People);

    /// <param name="Name">Blank once it was erased.</param>
    /// <param name="Locked">By a manager; wrong passwords lock for minutes only and are not said here.</param>
    public sealed record Row(
        Guid Id,
        string Name,
        string? Phone,
        string? Email,
        string? UserName,
        IReadOnlyList<string> Roles,
        bool Locked,
        AsTechnician? Technician,
        Instant? ErasedAt,
        uint RowVersion) : IHasVersion;

    public sealed record AsTechnician(
        Guid ResourceId, string Initials, IReadOnlyList<string> Skills, TechnicianGrade? Grade, bool Retired);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var staff = db.People.AsNoTracking().Where(p => p.IsStaff);
        if (request.Id is { } id)
        {
            staff = staff.Where(p => p.Id == id);
        }

        var people = await (
            from person in staff
            join account in db.Users on person.Id equals account.PersonId into accounts
            from account in accounts.DefaultIfEmpty()
            orderby person.Name, person.Id
            select new
            {
                person,
                Version = EF.Property<uint>(person, MappingExtensions.RowVersion),
                UserName = (string?)account!.UserName,
                LockedUntil = account.LockoutEnd,
                Roles = (from held in db.UserRoles
                         join role in db.Roles on held.RoleId equals role.Id
                         where held.UserId == account.Id
                         select role.Name).ToList(),
            }).ToListAsync(ct);
        var technicians = (await db.Resources.AsNoTracking().Where(r => r.PersonId != null).ToListAsync(ct))
            .OrderBy(r => r.Retired).ToLookup(r => r.PersonId!.Value);
        return new Answer([.. people.Select(p => new Row(
            p.person.Id, p.person.Name, p.person.Phone, p.person.Email, p.UserName,
            [.. Roles.All.Where(p.Roles.Contains)], p.LockedUntil >= Account.ForGood,
            technicians[p.person.Id].Select(t => new AsTechnician(t.Id, t.Name, t.Capabilities, t.Grade, t.Retired)).FirstOrDefault(),
            p.person.ErasedAt, p.Version))]);
    }
}

/// <summary>One person of the workshop.</summary>
public static class GetPerson
{
    public sealed record Request(Guid Id);

    public static async Task<Outcome<ListPeople.Row>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        (await ListPeople.Handle(new ListPeople.Request(request.Id), db, actor, clock, ct)).Then(list =>
            list.People.SingleOrDefault() is { } row ? row : (Outcome<ListPeople.Row>)Problem.NotFound($"Person {request.Id}"));
}
