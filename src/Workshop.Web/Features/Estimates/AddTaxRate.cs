using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>A tax rate, or the next one of a code: it holds from its day until a later one of the same code does.</summary>
public static class AddTaxRate
{
    public sealed record Request
    {
        /// <summary>"standard", "reduced".</summary>
        public string? Code { get; init; }

        public LocalDate? ValidFrom { get; init; }

        public string? Name { get; init; }

        /// <summary>0 to 100.</summary>
        public decimal? Percent { get; init; }
    }

    public sealed record Answer(string Code, LocalDate ValidFrom);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Code).IsGiven("a short word such as standard").IsAtMost(Limits.Code)
                .Must(c => c is null || c.All(l => char.IsAsciiLetterOrDigit(l) || l == '-'))
                .WithMessage((_, c) => $"{{PropertyName}} is \"{c}\": letters a to z, digits and hyphens are allowed.");
            RuleFor(r => r.ValidFrom).IsGiven("the day from which it holds");
            RuleFor(r => r.Name).IsGiven("what stands on estimates").IsAtMost(Limits.Name);
            RuleFor(r => r.Percent).NotNull().WithMessage("{PropertyName} is empty: give the percentage, 0 where no tax is due.")
                .IsWithin(0, TaxRates.LargestPercent, TaxRates.PercentDecimals, "%");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var code = request.Code!;
        if (await db.TaxRates.AnyAsync(r => r.Code == code && r.ValidFrom == request.ValidFrom, ct))
        {
            return Problem.Conflict("tax-exists", $"A rate \"{code}\" from {Days.Write(request.ValidFrom!.Value)} on is entered already; correct that one.");
        }

        db.TaxRates.Add(new TaxRate
        {
            Code = code, ValidFrom = request.ValidFrom!.Value, Name = request.Name!.Trim(), Percent = request.Percent!.Value,
        });
        await db.SaveChangesAsync(ct);
        return new Answer(code, request.ValidFrom.Value);
    }
}
