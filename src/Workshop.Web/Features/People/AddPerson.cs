using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

/// <summary>
/// Takes somebody of the workshop into the books, with an account. The generated password is in the first answer only: stored
/// answers never hold it, so a send that is repeated does not show it again.
/// </summary>
public static class AddPerson
{
    public sealed record Request : IPersonFields
    {
        public string? Name { get; init; }

        public string? Phone { get; init; }

        public string? Email { get; init; }

        public string? UserName { get; init; }

        // A list that can be added to: the page's binder fills it in place.
        public IList<string> Roles { get; init; } = [];
    }

    public sealed record Answer(Guid Id, string UserName)
    {
        [JsonIgnore]
        public string? Password { get; init; }
    }

    /// <param name="Password">Generated, shown this once; absent where the same write is sent again.</param>
    public sealed record Shown(Guid Id, string UserName, string? Password);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new PersonFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await AccountRows.NameTaken(db, request.UserName!, except: null, ct) is { } taken)
        {
            return taken;
        }

        var person = new Person
        {
            Id = NewId.At(clock), Name = request.Name!, Phone = request.Phone, Email = request.Email, IsStaff = true,
        };
        var password = GeneratedPassword.Make();
        var account = AccountRows.New(person.Id, request.UserName!, password, clock);
        db.People.Add(person);
        db.Users.Add(account);
        await db.SaveChangesAsync(ct);
        await AccountRows.SetRoles(db, account.Id, request.Roles, ct);
        await db.SaveChangesAsync(ct);
        return new Answer(person.Id, account.UserName!) { Password = password };
    }
}
