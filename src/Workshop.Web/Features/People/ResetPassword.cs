using System.Text.Json.Serialization;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

/// <summary>
/// A new generated password in place of a forgotten one; every open sign-in of the account ends. It is shown this once, as in
/// <see cref="AddPerson"/>.
/// </summary>
public static class ResetPassword
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    public sealed record Answer(Guid Id, string UserName, uint RowVersion) : IHasVersion
    {
        [JsonIgnore]
        public string? Password { get; init; }
    }

    /// <param name="Password">Generated, shown this once; absent where the same write is sent again.</param>
    public sealed record Shown(Guid Id, string UserName, string? Password, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await StaffMember.Find(db, request.Id, ct)).TryGet(out var member, out var problem))
        {
            return problem;
        }

        var password = GeneratedPassword.Make();
        AccountRows.SetPassword(member.Account, password);
        if (!member.Account.LockedByManager)
        {
            member.Account.LockoutEnd = null;
        }

        var version = member.ChangedFrom(db, request.RowVersion!.Value);
        await db.SaveChangesAsync(ct);
        await Sessions.RevokeAll(db, member.Account.Id, clock.GetCurrentInstant(), ct);
        return new Answer(member.Person.Id, member.Account.UserName!, version.CurrentValue) { Password = password };
    }
}
