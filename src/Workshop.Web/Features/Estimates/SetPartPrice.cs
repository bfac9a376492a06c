using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>What a part sells for from now on. Estimates that were made stay as they are.</summary>
public static class SetPartPrice
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public string? Code { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Of one piece, or one litre of what is counted in millilitres, before tax; left empty, none is known.</summary>
        public decimal? NetPrice { get; init; }

        /// <summary>Code of its tax rate; left empty, the usual one.</summary>
        public string? Tax { get; init; }
    }

    public sealed record Answer(string Code, decimal? NetPrice, string? Tax, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Code).IsGiven("the stores' code of the part");
            RuleFor(r => r.NetPrice).IsPrice("a piece or a litre");
            RuleFor(r => r.Tax).IsAtMost(Limits.Code);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var part = await db.Parts.SingleOrDefaultAsync(p => p.Code == request.Code, ct);
        if (part is null)
        {
            return Problem.NotFound($"Part {request.Code}");
        }

        if (part.MergedIntoId is { } into)
        {
            var now = await db.Parts.Where(p => p.Id == into).Select(p => p.Code).SingleAsync(ct);
            return Problem.Conflict("part-merged", $"{part.Code} was found to be {now}; set the price of {now}.");
        }

        var tax = string.IsNullOrWhiteSpace(request.Tax) ? null : request.Tax;
        var codes = await db.TaxRates.Select(r => r.Code).Distinct().Order().ToListAsync(ct);
        if (tax is not null && !codes.Contains(tax))
        {
            return TaxRates.Unknown("tax", tax, codes);
        }

        (part.NetPrice, part.TaxRateCode) = (request.NetPrice, tax);
        var row = db.Entry(part);
        row.State = EntityState.Modified;
        var version = row.Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(part.Code, part.NetPrice, part.TaxRateCode, version.CurrentValue);
    }
}
