using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

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
        RuleFor(r => r.Vin).IsAtMost(Limits.Vin);
        RuleFor(r => r.Maker).IsGiven("who made it").IsAtMost(Limits.Name);
        RuleFor(r => r.Model).IsGiven("the model's name").IsAtMost(Limits.Name);
        RuleFor(r => r.ModelYear).IsGiven("the model year").IsWhole(EarliestYear, LatestYear);
        RuleFor(r => r.OwnerName).IsAtMost(Limits.Name);
        RuleFor(r => r.OwnerPhone).IsAtMost(Limits.Phone);
        RuleFor(r => r.OwnerEmail).IsAtMost(Limits.Email);
        RuleFor(r => r.OwnerName)
            .NotEmpty().When(r => r.OwnerPhone is not null || r.OwnerEmail is not null)
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

    public static Person? NewOwner(IMotorcycleFields fields, IClock clock) => fields.OwnerName is null
        ? null
        : new Person { Id = NewId.At(clock), Name = fields.OwnerName, Phone = fields.OwnerPhone, Email = fields.OwnerEmail };

    public static IReadOnlyList<string> Warnings(IMotorcycleFields fields) => [];
}
