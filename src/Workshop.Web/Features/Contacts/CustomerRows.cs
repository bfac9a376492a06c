using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Contacts;

/// <summary>An owner as a row, and what may be used to reach one.</summary>
internal static class CustomerRows
{
    /// <summary>
    /// The customer, held until the transaction ends: consent, messages and an erasure of one person come one after the other.
    /// </summary>
    public static async Task<Outcome<Person>> Lock(WorkshopDbContext db, Guid? id, string field, CancellationToken ct)
    {
        var person = await db.People.FromSql($"select p.*, p.xmin from people p where p.id = {id} for update").SingleOrDefaultAsync(ct);
        return person switch
        {
            null => Problem.Impossible("person-unknown", field, $"{field} is {id}: no customer has it."),
            { IsStaff: true } => Problem.Impossible("person-staff", field, $"{field} is {id}: {person.Name} works here and is no customer."),
            { ErasedAt: not null } => Problem.Impossible("person-erased", field, $"{field} is {id}: that person was erased."),
            _ => person,
        };
    }

    /// <summary>The channels to which a person has agreed and still does.</summary>
    public static async Task<IReadOnlySet<ContactChannel>> Agreed(WorkshopDbContext db, Guid person, CancellationToken ct) =>
        (await db.Consents.AsNoTracking().Where(c => c.PersonId == person && c.WithdrawnAt == null).Select(c => c.Channel).ToListAsync(ct)).ToHashSet();

    /// <summary>The refusal where a channel is used without consent.</summary>
    public static Problem NotAgreed(string field, ContactChannel channel) => Problem.Impossible("no-consent", field,
        $"{field} is {channel.Spoken()}: the owner has not agreed to be reached that way, or has withdrawn it; enter the consent first.");
}
