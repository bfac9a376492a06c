using FluentValidation;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>What is typed of a wrench adapter, new or changed.</summary>
public interface IAdapterFields
{
    string? Name { get; }

    /// <summary>From the centre of the drive to the centre of the fastener; 0 of a straight extension.</summary>
    decimal? EffectiveLengthMm { get; }

    /// <summary>Of the end that goes over the fastener.</summary>
    decimal? ThicknessMm { get; }

    /// <summary>The wrench's drive that it fits: "1/4 in", "9 x 12 mm".</summary>
    string? Drive { get; }

    /// <summary>The tool that it is: "10 mm ring".</summary>
    string? Tool { get; }
}

internal sealed class AdapterFieldsValidator : AbstractValidator<IAdapterFields>
{
    private const decimal LargestLengthMm = 1000;
    private const decimal LargestThicknessMm = 200;

    public AdapterFieldsValidator()
    {
        RuleFor(r => r.Name).IsGiven("what it is called").IsAtMost(Limits.Name);
        RuleFor(r => r.EffectiveLengthMm).NotNull().WithMessage("{PropertyName} is empty: give the length from the centre of the drive to the centre of the fastener, 0 of a straight extension.")
            .IsWithin(0, LargestLengthMm, 1, "mm");
        RuleFor(r => r.ThicknessMm).IsWithin(0.1m, LargestThicknessMm, 1, "mm");
        RuleFor(r => r.Drive).IsGiven("the drive that it fits, such as 1/4 in").IsAtMost(Limits.Drive);
        RuleFor(r => r.Tool).IsGiven("the tool that it is, such as 10 mm ring").IsAtMost(Limits.Name);
    }
}

internal static class AdapterFields
{
    /// <summary>Takes over what was typed; the problem where it makes no sense or another has the name.</summary>
    public static async Task<Problem?> Take(WorkshopDbContext db, WrenchAdapter adapter, IAdapterFields typed, CancellationToken ct)
    {
        (adapter.Name, adapter.Tool, adapter.Drive) = (typed.Name!.Trim(), typed.Tool!.Trim(), typed.Drive!.Trim());
        (adapter.EffectiveLengthMm, adapter.ThicknessMm) = (typed.EffectiveLengthMm!.Value, typed.ThicknessMm);
        if (InstrumentRules.FaultOf(adapter) is { } fault)
        {
            return Problem.Impossible("adapter", [fault]);
        }

        var sentence = $"name is \"{adapter.Name}\": another adapter is called that; choose another name.";
        return await db.WrenchAdapters.AsNoTracking().AnyAsync(a => a.Name == adapter.Name && a.Id != adapter.Id, ct)
            ? Problem.Conflict("name-taken", sentence) with { Faults = [new FieldFault("name", sentence)] }
            : null;
    }
}
