using FluentValidation;
using Microsoft.AspNetCore.Identity;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.SignIn;

/// <summary>
/// Somebody gives the own account another password. The present one is asked for, so that a screen which was left open gives nothing
/// away; every other sign-in of the account ends, on pages and of the API. Not under an idempotency key and not among the stored
/// answers, as in <see cref="OpenSession"/>: no password, and no hash that could be guessed fast, is ever kept.
/// </summary>
public sealed class ChangePassword(
    UserManager<Account> accounts, UseCases useCases, WorkshopDbContext db, IClock clock, IValidator<ChangePassword.Request> validator)
{
    public sealed record Request
    {
        public string? CurrentPassword { get; init; }

        public string? NewPassword { get; init; }

        /// <summary>Typed once more, where it was typed by hand: then it must be the same.</summary>
        public string? NewPasswordAgain { get; init; }
    }

    /// <param name="OthersEnded">How many other sign-ins of the account were open, and are not any more.</param>
    public sealed record Answer(int OthersEnded);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.CurrentPassword).IsGiven("your present password").Must(IsShort).WithMessage(TooLong);
            RuleFor(r => r.NewPassword).IsGiven($"the new password, {SignInRules.ShortestPassword} characters or more").Must(IsShort).WithMessage(TooLong);
            RuleFor(r => r.NewPassword).Must((r, password) => password is null || password != r.CurrentPassword)
                .WithMessage("{PropertyName} is the present one: choose another.");
            RuleFor(r => r.NewPasswordAgain).Must((r, again) => again is null || again == r.NewPassword)
                .WithMessage("{PropertyName} differs from the new password: type both again.");
        }

        private static string TooLong => $"{{PropertyName}} is longer than the {Limits.Name} characters that are allowed.";

        private static bool IsShort(string? password) => password is null || password.Length <= Limits.Name;
    }

    /// <param name="request">As typed.</param>
    /// <param name="accountId">Of whoever is signed in.</param>
    /// <param name="sessionId">The sign-in that asks, which goes on.</param>
    /// <param name="ct">Ends it.</param>
    public async Task<Outcome<Answer>> Change(Request request, Guid accountId, Guid sessionId, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var shape = validator.Validate(request);
        if (!shape.IsValid)
        {
            return Problem.Malformed([.. shape.Errors.Select(e => new FieldFault(FieldNames.Camel(e.PropertyName), e.ErrorMessage))]);
        }

        // Wrong ones count as at the sign-in, and outside the transaction below, so that they are counted although the change is refused.
        var account = await accounts.FindByIdAsync(accountId.ToString());
        if (account is null || await accounts.IsLockedOutAsync(account))
        {
            return Wrong;
        }

        if (!await accounts.CheckPasswordAsync(account, request.CurrentPassword!))
        {
            await accounts.AccessFailedAsync(account);
            return Wrong;
        }

        return await useCases.WriteUnkept<Answer>(async () =>
        {
            await accounts.ResetAccessFailedCountAsync(account);
            var changed = await accounts.ChangePasswordAsync(account, request.CurrentPassword!, request.NewPassword!);
            return changed.Succeeded
                ? new Answer(await Sessions.RevokeOthers(db, account.Id, sessionId, clock.GetCurrentInstant(), ct))
                : Problem.Malformed([.. changed.Errors.Select(e => new FieldFault("newPassword", $"newPassword: {e.Description}"))]);
        }, ct);
    }

    private static Problem Wrong => Problem.Impossible("password-refused", "currentPassword",
        "currentPassword is not your present password, or the account rests after too many tries. Wait five minutes or ask the manager for a new one.");
}
