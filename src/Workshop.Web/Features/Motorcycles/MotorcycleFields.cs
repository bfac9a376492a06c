using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;
using static Workshop.Web.Features.Motorcycles.MotorcycleFields;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>What is typed about a motorcycle and its owner, new or changed.</summary>
public interface IMotorcycleFields
{
    string? Registration { get; }

    string? Vin { get; }

    string? Maker { get; }

    string? Model { get; }

    int? ModelYear { get; }

    string? OwnerName { get; }

    string? OwnerPhone { get; }

    string? OwnerEmail { get; }
}

internal sealed class MotorcycleFieldsValidator : AbstractValidator<IMotorcycleFields>
{
    // The first motorcycle is of 1885; a model year may run ahead of the calendar.
    private const int EarliestYear = 1885;
    private const int LatestYear = 2100;

    public MotorcycleFieldsValidator()
    {
        RuleFor(r => r.Registration).IsGiven("what stands on its plate").IsAtMost(Limits.Registration);
        RuleFor(r => r.Vin)
            .Must(vin => VinAsStored(vin) is not { Length: > Vin.Length })
            .WithMessage((_, vin) =>
                $"vin is \"{vin}\": at most {Vin.Length} characters are allowed, blanks and hyphens left out.");
        RuleFor(r => r.Maker).IsGiven("who made it").IsAtMost(Limits.Name);
        RuleFor(r => r.Model).IsGiven("the model's name").IsAtMost(Limits.Name);
        RuleFor(r => r.ModelYear).IsGiven("the model year").IsWhole(EarliestYear, LatestYear);
        RuleFor(r => r.OwnerName).IsAtMost(Limits.Name);
        RuleFor(r => r.OwnerPhone).IsAtMost(Limits.Phone);
        RuleFor(r => r.OwnerEmail).IsAtMost(Limits.Email);
        RuleFor(r => r.OwnerName)
            .NotEmpty().When(r => !string.IsNullOrEmpty(r.OwnerPhone) || !string.IsNullOrEmpty(r.OwnerEmail))
            .WithMessage("{PropertyName} is empty, but a phone number or an address is given: name its owner.");
    }
}

internal static class MotorcycleFields
{
    public static async Task<Problem?> Taken(WorkshopDbContext db, string registration, Guid? except, CancellationToken ct)
    {
        var other = await db.Motorcycles.AsNoTracking()
            .Where(m => m.Registration == registration && m.Id != except)
            .Select(m => new { m.Maker, m.Model }).FirstOrDefaultAsync(ct);
        return other is null
            ? null
            : Problem.Conflict("registration-taken", $"registration is \"{registration}\": the {other.Maker} {other.Model} has it already.");
    }

    public static Person? NewOwner(IMotorcycleFields fields, IClock clock) => string.IsNullOrWhiteSpace(fields.OwnerName)
        ? null
        : new Person { Id = NewId.At(clock), Name = fields.OwnerName, Phone = fields.OwnerPhone, Email = fields.OwnerEmail };

    /// <summary>Capitals without blanks and hyphens, as it is compared; nothing for an empty field.</summary>
    public static string? VinAsStored(string? typed) => typed is null || Vin.Check(typed).Number is not { Length: > 0 } number ? null : number;

    /// <summary>What to look at again. A number is never refused for its check digit: frames are stamped as they are.</summary>
    public static IReadOnlyList<string> Warnings(string? vin) => vin is null ? [] : Vin.Check(vin).Warnings;
}
