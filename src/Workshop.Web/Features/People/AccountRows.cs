using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

/// <summary>Accounts as rows, in the forms in which sign-in reads them.</summary>
internal static class AccountRows
{
    private const int StampLength = 32;

    private static readonly PasswordHasher<Account> Hasher = new();
    private static readonly UpperInvariantLookupNormalizer Names = new();

    public static Account New(Guid personId, string userName, string password, IClock clock)
    {
        var account = new Account
        {
            Id = NewId.At(clock), PersonId = personId, UserName = userName, NormalizedUserName = Names.NormalizeName(userName),
            SecurityStamp = RandomNumberGenerator.GetHexString(StampLength), LockoutEnabled = true,
        };
        SetPassword(account, password);
        return account;
    }

    public static void SetPassword(Account account, string password)
    {
        account.PasswordHash = Hasher.HashPassword(account, password);
        account.SecurityStamp = RandomNumberGenerator.GetHexString(StampLength);
        account.AccessFailedCount = 0;
    }

    public static void SetUserName(Account account, string userName) =>
        (account.UserName, account.NormalizedUserName) = (userName, Names.NormalizeName(userName));

    /// <summary>The refusal where another account has the name, in whatever letters.</summary>
    public static async Task<Problem?> NameTaken(WorkshopDbContext db, string userName, Guid? except, CancellationToken ct)
    {
        var normalized = Names.NormalizeName(userName);
        return await db.Users.AnyAsync(a => a.NormalizedUserName == normalized && a.Id != except, ct)
            ? Problem.Conflict("user-name-taken", $"userName is \"{userName}\": another account has it already; choose another.") with
            {
                Faults = [new FieldFault("userName", $"userName is \"{userName}\": another account has it already; choose another.")],
            }
            : null;
    }

    /// <summary>Gives an account exactly these roles.</summary>
    public static async Task SetRoles(WorkshopDbContext db, Guid accountId, IEnumerable<string> roles, CancellationToken ct)
    {
        var wanted = roles.ToHashSet(StringComparer.Ordinal);
        var all = await db.Roles.AsNoTracking().ToDictionaryAsync(r => r.Id, r => r.Name!, ct);
        var held = await db.UserRoles.Where(h => h.UserId == accountId).ToListAsync(ct);
        db.UserRoles.RemoveRange(held.Where(h => !wanted.Contains(all[h.RoleId])));
        var heldNames = held.Select(h => all[h.RoleId]).ToHashSet(StringComparer.Ordinal);
        db.UserRoles.AddRange(all.Where(r => wanted.Contains(r.Value) && !heldNames.Contains(r.Value))
            .Select(r => new IdentityUserRole<Guid> { UserId = accountId, RoleId = r.Key }));
    }

    /// <summary>
    /// Whether somebody else can still do what managers do. Holds the manager's role until the transaction ends, so that two
    /// managers who take it from each other judge one after the other.
    /// </summary>
    public static async Task<bool> AnotherManagerThan(WorkshopDbContext db, Guid accountId, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from roles where name = {Roles.Manager} for update", ct);
        return await (
            from account in db.Users
            join held in db.UserRoles on account.Id equals held.UserId
            join role in db.Roles on held.RoleId equals role.Id
            where role.Name == Roles.Manager && account.Id != accountId
                && (account.LockoutEnd == null || account.LockoutEnd < Account.ForGood)
            select account.Id).AnyAsync(ct);
    }
}
