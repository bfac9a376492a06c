using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>Corrects name or percentage. Estimates keep the percentage that they were made with.</summary>
public static class EditTaxRate
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public string? Code { get; init; }

        [JsonIgnore]
        public LocalDate? ValidFrom { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public decimal? Percent { get; init; }

        /// <summary>It was entered by mistake; possible while it does not hold yet, or nothing names its code.</summary>
        public bool Remove { get; init; }
    }

    public sealed record Answer(string Code, LocalDate ValidFrom, bool Removed);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Code).IsGiven("the code of the rate");
            RuleFor(r => r.ValidFrom).IsGiven("the day from which it holds, such as 2027-01-01");
            RuleFor(r => r.Name).IsGiven("what stands on estimates").IsAtMost(Limits.Name).When(r => !r.Remove);
            RuleFor(r => r.Percent).NotNull().WithMessage("{PropertyName} is empty: give the percentage, 0 where no tax is due.")
                .IsWithin(0, TaxRates.LargestPercent, TaxRates.PercentDecimals, "%").When(r => !r.Remove);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var (code, from) = (request.Code!, request.ValidFrom!.Value);
        var rate = await db.TaxRates.SingleOrDefaultAsync(r => r.Code == code && r.ValidFrom == from, ct);
        if (rate is null)
        {
            return Problem.NotFound($"A tax rate \"{code}\" from {Days.Write(from)} on");
        }

        if (request.Remove)
        {
            var only = !await db.TaxRates.AnyAsync(r => r.Code == code && r.ValidFrom != from, ct);
            if (only && (await db.WorkshopProfiles.AnyAsync(p => p.TaxRateCode == code, ct) || await db.Parts.AnyAsync(p => p.TaxRateCode == code, ct)))
            {
                return Problem.Conflict("tax-in-use", $"\"{code}\" is the usual rate or that of parts, and has no other day; name another rate there first.");
            }

            db.TaxRates.Remove(rate);
        }
        else
        {
            (rate.Name, rate.Percent) = (request.Name!.Trim(), request.Percent!.Value);
        }

        db.Entry(rate).Property<uint>(MappingExtensions.RowVersion).OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(code, from, request.Remove);
    }
}
