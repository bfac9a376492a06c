using FluentValidation;
using Workshop.Domain.People;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

/// <summary>What is typed about somebody of the workshop, new or changed.</summary>
public interface IPersonFields
{
    string? Name { get; }

    string? Phone { get; }

    string? Email { get; }

    string? UserName { get; }

    IList<string> Roles { get; }
}

internal sealed class PersonFieldsValidator : AbstractValidator<IPersonFields>
{
    private static readonly string RoleWords = string.Join(", ", Roles.All);

    public PersonFieldsValidator()
    {
        RuleFor(r => r.Name).IsGiven("who it is").IsAtMost(Limits.Name);
        RuleFor(r => r.Phone).IsAtMost(Limits.Phone);
        RuleFor(r => r.Email).IsAtMost(Limits.Email);
        RuleFor(r => r.UserName).IsGiven("the name to sign in with").IsAtMost(Limits.Name)
            .Must(name => name is null || name.Trim().Length == name.Length)
            .WithMessage("{PropertyName} is \"{PropertyValue}\": blanks before or after a name are not allowed, as nobody sees them.");
        RuleFor(r => r.Roles).Must(roles => roles is { Count: > 0 })
            .WithMessage($"roles is empty: at least one of {RoleWords} is needed; to keep somebody out, lock the account.");
        RuleFor(r => r.Roles).Must(roles => roles is null || roles.All(r => Roles.All.Contains(r)))
            .WithMessage((_, roles) =>
                $"roles holds \"{roles.First(r => !Roles.All.Contains(r))}\": {RoleWords} are allowed.");
    }
}
