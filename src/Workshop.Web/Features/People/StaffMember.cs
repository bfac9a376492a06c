using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

/// <summary>Somebody of the workshop and the account, to be changed together.</summary>
internal sealed record StaffMember(Person Person, Account Account)
{
    public static async Task<Outcome<StaffMember>> Find(WorkshopDbContext db, Guid id, CancellationToken ct)
    {
        var person = await db.People.SingleOrDefaultAsync(p => p.Id == id && p.IsStaff, ct);
        var account = person is null ? null : await db.Users.SingleOrDefaultAsync(a => a.PersonId == id, ct);
        return person is null || account is null ? Problem.NotFound($"Person {id}") : new StaffMember(person, account);
    }

    /// <summary>
    /// Account and roles are rows of their own: the person's row is written in any case, so that its version covers all.
    /// </summary>
    public PropertyEntry<Person, uint> ChangedFrom(WorkshopDbContext db, uint version)
    {
        var row = db.Entry(Person);
        row.State = EntityState.Modified;
        var property = row.Property<uint>(MappingExtensions.RowVersion);
        property.OriginalValue = version;
        return property;
    }
}
