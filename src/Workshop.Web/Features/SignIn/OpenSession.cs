using FluentValidation;
using Microsoft.AspNetCore.Identity;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.SignIn;

/// <summary>
/// Signs somebody in. Not under an idempotency key and not among the stored answers: a token is never kept readable.
/// </summary>
public sealed class OpenSession(UserManager<Account> accounts, Sessions sessions, IValidator<OpenSession.Request> validator)
{
    public sealed record Request
    {
        public string? UserName { get; init; }

        public string? Password { get; init; }
    }

    /// <param name="Token">Opaque; send it as <c>Authorization: Bearer</c>. Shown this once.</param>
    public sealed record Answer(string Token, Instant ExpiresAt, IReadOnlyList<string> Roles);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.UserName).IsGiven("the name of your account").IsAtMost(Limits.Name);
            RuleFor(r => r.Password).IsGiven("your password").Must(p => p is null || p.Length <= Limits.Name)
                .WithMessage($"{{PropertyName}} is longer than the {Limits.Name} characters that are allowed.");
        }
    }

    public async Task<Outcome<Answer>> Open(Request request, SessionKind kind, string device, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var shape = validator.Validate(request);
        if (!shape.IsValid)
        {
            return Problem.Malformed([.. shape.Errors.Select(e => new FieldFault(FieldNames.Camel(e.PropertyName), e.ErrorMessage))]);
        }

        // The same answer for an unknown name and a wrong password, so that names cannot be sounded out.
        var refused = Problem.Impossible("sign-in-refused", "password",
            "This name and password do not go together, or the account rests after too many tries. Wait five minutes or ask the manager.");
        var account = await accounts.FindByNameAsync(request.UserName!);
        if (account is null || await accounts.IsLockedOutAsync(account))
        {
            return refused;
        }

        if (!await accounts.CheckPasswordAsync(account, request.Password!))
        {
            await accounts.AccessFailedAsync(account);
            return refused;
        }

        await accounts.ResetAccessFailedCountAsync(account);
        var (token, session) = await sessions.Open(account, kind, device, ct);
        return new Answer(token, session.ExpiresAt, [.. await accounts.GetRolesAsync(account)]);
    }
}
