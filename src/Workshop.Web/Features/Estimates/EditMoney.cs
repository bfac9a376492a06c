using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Resources;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>Currency, labour rate and usual tax rate. Estimates that were made stay as they are.</summary>
public static class EditMoney
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Three letters of ISO 4217.</summary>
        public string? Currency { get; init; }

        /// <summary>Before tax; left empty, no price of labour is known.</summary>
        public decimal? LabourNetPerHour { get; init; }

        /// <summary>Code of the tax rate of labour, and of parts that name none.</summary>
        public string? UsualTax { get; init; }
    }

    public sealed record Answer(uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Currency).Must(Currencies.IsKnown).WithMessage((_, code) =>
                $"{{PropertyName}} is \"{code}\": three letters of ISO 4217 are allowed, of a currency that is counted in hundredths, such as EUR, GBP or CHF.");
            RuleFor(r => r.LabourNetPerHour).IsPrice("an hour");
            RuleFor(r => r.UsualTax).IsAtMost(Limits.Code);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var usual = string.IsNullOrWhiteSpace(request.UsualTax) ? null : request.UsualTax;
        var codes = await db.TaxRates.Select(r => r.Code).Distinct().Order().ToListAsync(ct);
        if (usual is not null && !codes.Contains(usual))
        {
            return TaxRates.Unknown("usualTax", usual, codes);
        }

        var profile = await db.WorkshopProfiles.SingleAsync(ct);
        if (profile.Currency != request.Currency && await db.Parts.AnyAsync(p => p.NetPrice != null, ct))
        {
            return Problem.Conflict("prices-stand",
                $"currency is {request.Currency}: the prices of parts stand in {profile.Currency}, and none is converted; take their prices out first.");
        }

        (profile.Currency, profile.LabourNetPerHour, profile.TaxRateCode) = (request.Currency!, request.LabourNetPerHour, usual);
        return new Answer(await EditWorkshop.Save(db, profile, request.RowVersion!.Value, ct));
    }
}
