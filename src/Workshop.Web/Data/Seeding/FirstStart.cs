using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.People;
using Workshop.Web.Hosting;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// What an empty database is filled with: the invented workshop where <c>Workshop:Demo</c> is true, or one manager whom
/// <c>Workshop:FirstManager</c> names. One transaction: a start that is killed half way leaves an empty database, and the
/// next one begins anew; of several copies that start together one fills it and the others wait.
/// </summary>
internal static class FirstStart
{
    // Any number of our own; it keeps the copies of the service apart that start on one empty database.
    private const long FillingLock = 0x574B_0001;

    private const string UsualName = "Workshop";
    private const string UsualTimeZone = "Etc/UTC";

    public static async Task Fill(WebApplication app)
    {
        var configuration = app.Configuration;
        var demo = configuration.GetValue("Workshop:Demo", false);
        var manager = configuration["Workshop:FirstManager"]?.Trim();
        if (!demo && string.IsNullOrEmpty(manager))
        {
            return;
        }

        var ct = app.Lifetime.ApplicationStopping;
        await using var scope = app.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopDbContext>();
        db.Database.AutoSavepointsEnabled = false;
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({FillingLock})", ct);
        if (await db.WorkshopProfiles.AnyAsync(ct) || await db.Users.AnyAsync(ct))
        {
            return;
        }

        var accounts = await Accounts.Begin(scope.ServiceProvider);
        if (demo)
        {
            await DemoSeeder.Write(scope.ServiceProvider, accounts, ct);
        }
        else
        {
            await AddFirstManager(scope.ServiceProvider, accounts, manager!, configuration, ct);
        }

        // Kept before the commit: passwords of accounts that were never made harm nobody, lost ones lock everybody out.
        var file = demo ? Path.Combine(DatabaseLocator.DataFolder(configuration), "demo-passwords.txt") : null;
        var kept = file is not null && PasswordFile.Keep(file, accounts.Passwords);
        await transaction.CommitAsync(ct);
        await PasswordFile.Print(Console.Out, accounts.Passwords, kept ? file : null);
    }

    private static async Task AddFirstManager(
        IServiceProvider services, Accounts accounts, string name, IConfiguration configuration, CancellationToken ct)
    {
        var db = services.GetRequiredService<WorkshopDbContext>();
        var zone = configuration["Workshop:TimeZone"] ?? UsualTimeZone;
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null)
        {
            throw new InvalidOperationException($"Workshop:TimeZone is \"{zone}\": a zone of the tz database is wanted, for example Europe/Vienna.");
        }

        db.WorkshopProfiles.Add(new WorkshopProfile { Name = configuration["Workshop:Name"] ?? UsualName, TimeZone = zone });
        var person = new Person
        {
            Id = Domain.NewId.At(services.GetRequiredService<IClock>()), Name = name, IsStaff = true,
        };
        db.People.Add(person);
        await db.SaveChangesAsync(ct);
        await accounts.Add(person, name, [Roles.Manager, Roles.Advisor]);
    }
}
