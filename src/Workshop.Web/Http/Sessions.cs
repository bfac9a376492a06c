using System.Buffers.Text;
using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Web.Data;

namespace Workshop.Web.Http;

/// <summary>
/// Opens, finds and closes sign-ins. A token is 256 random bits; the table holds its SHA-256, which is enough because there
/// is nothing to guess.
/// </summary>
public sealed class Sessions(WorkshopDbContext db, IClock clock)
{
    public static readonly Duration CookieLife = Duration.FromHours(14);
    public static readonly Duration BearerLife = Duration.FromDays(30);

    private const int TokenBytes = 32;
    private const int DeviceLength = 200;

    public async Task<(string Token, Session Session)> Open(
        Account account, SessionKind kind, string device, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(account);
        ArgumentNullException.ThrowIfNull(device);
        var now = clock.GetCurrentInstant();
        var token = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(TokenBytes));
        var session = new Session
        {
            Id = Domain.NewId.At(now),
            AccountId = account.Id,
            Kind = kind,
            TokenHash = HashOf(token),
            Device = device.Length > DeviceLength ? device[..DeviceLength] : device,
            CreatedAt = now,
            ExpiresAt = now + (kind == SessionKind.Cookie ? CookieLife : BearerLife),
        };
        db.Sessions.Add(session);
        await db.SaveChangesAsync(ct);
        return (token, session);
    }

    /// <summary>The claims of an open sign-in, read anew on every request so that a revoked one ends at once.</summary>
    public async Task<ClaimsPrincipal?> Find(string token, SessionKind kind, string scheme, CancellationToken ct)
    {
        var hash = HashOf(token);
        var now = clock.GetCurrentInstant();
        var found = await (
            from session in db.Sessions
            join account in db.Users on session.AccountId equals account.Id
            where session.TokenHash == hash && session.Kind == kind
                && session.RevokedAt == null && session.ExpiresAt > now
                && (account.LockoutEnd == null || account.LockoutEnd < Account.ForGood)
            select new
            {
                SessionId = session.Id,
                account.Id,
                account.UserName,
                account.PersonId,
                Roles = (from held in db.UserRoles
                         join role in db.Roles on held.RoleId equals role.Id
                         where held.UserId == account.Id
                         select role.Name).ToList(),
            }).AsNoTracking().SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return null;
        }

        var identity = new ClaimsIdentity(
            [
                new Claim(ClaimTypes.NameIdentifier, found.Id.ToString()),
                new Claim(ClaimTypes.Name, found.UserName ?? ""),
                new Claim(Caller.PersonClaim, found.PersonId.ToString()),
                new Claim(Caller.SessionClaim, found.SessionId.ToString()),
                .. found.Roles.Select(r => new Claim(ClaimTypes.Role, r!)),
            ],
            scheme);
        return new ClaimsPrincipal(identity);
    }

    /// <summary>Ends every open sign-in of an account.</summary>
    public static Task RevokeAll(WorkshopDbContext db, Guid accountId, Instant now, CancellationToken ct) =>
        db.Sessions.Where(s => s.AccountId == accountId && s.RevokedAt == null)
            .ExecuteUpdateAsync(s => s.SetProperty(x => x.RevokedAt, now), ct);

    /// <summary>Ends every open sign-in of an account but one; answers how many.</summary>
    public static Task<int> RevokeOthers(WorkshopDbContext db, Guid accountId, Guid but, Instant now, CancellationToken ct) =>
        db.Sessions.Where(s => s.AccountId == accountId && s.Id != but && s.RevokedAt == null && s.ExpiresAt > now)
            .ExecuteUpdateAsync(s => s.SetProperty(x => x.RevokedAt, now), ct);

    public async Task Revoke(Guid sessionId, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        await db.Sessions.Where(s => s.Id == sessionId && s.RevokedAt == null)
            .ExecuteUpdateAsync(s => s.SetProperty(x => x.RevokedAt, now), ct);
    }

    private static byte[] HashOf(string token) => SHA256.HashData(Encoding.UTF8.GetBytes(token));
}
