using Microsoft.AspNetCore.Identity;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Data.Seeding;

/// <summary>Makes accounts with generated passwords, and holds these until they have been shown.</summary>
internal sealed class Accounts
{
    private readonly UserManager<Account> accounts;
    private readonly IClock clock;
    private readonly List<(string Account, string Password)> passwords = [];

    private Accounts(UserManager<Account> accounts, IClock clock) => (this.accounts, this.clock) = (accounts, clock);

    public IReadOnlyList<(string Account, string Password)> Passwords => passwords;

    /// <summary>Makes the roles, of which an empty database has none.</summary>
    public static async Task<Accounts> Begin(IServiceProvider services)
    {
        var clock = services.GetRequiredService<IClock>();
        var roles = services.GetRequiredService<RoleManager<IdentityRole<Guid>>>();
        foreach (var role in Roles.All)
        {
            Must(await roles.CreateAsync(new IdentityRole<Guid>(role) { Id = Domain.NewId.At(clock) }));
        }

        return new Accounts(services.GetRequiredService<UserManager<Account>>(), clock);
    }

    public async Task Add(Person person, string name, IEnumerable<string> roles)
    {
        var account = new Account { Id = Domain.NewId.At(clock), UserName = name, PersonId = person.Id };
        var password = GeneratedPassword.Make();
        Must(await accounts.CreateAsync(account, password));
        Must(await accounts.AddToRolesAsync(account, roles));
        passwords.Add((name, password));
    }

    private static void Must(IdentityResult done)
    {
        if (!done.Succeeded)
        {
            throw new InvalidOperationException(string.Join(" ", done.Errors.Select(e => e.Description)));
        }
    }
}
