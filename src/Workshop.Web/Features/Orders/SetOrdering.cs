using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>Whether a part is kept in stock, how surely it is to be there, and whether its reorder point is set by hand.</summary>
public static class SetOrdering
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public string PartCode { get; init; } = "";

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Proposed for ordering by what is asked for; else ordered for visits only.</summary>
        public bool Stocked { get; init; }

        /// <summary>The share of lead times without a shortage; absent where the workshop's own holds.</summary>
        public decimal? ServiceLevel { get; init; }

        /// <summary>In the part's unit; absent where it is reckoned from the demand.</summary>
        public decimal? ReorderPoint { get; init; }
    }

    public sealed record Answer(string PartCode, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.ServiceLevel).IsServiceLevel();
            RuleFor(r => r.ReorderPoint).IsWithin(0, SupplyFieldsValidator.LargestQuantity, 4, "pieces or ml");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartOrdering.Lock(db, request.PartCode, ct)).TryGet(out var part, out var problem))
        {
            return problem;
        }

        if (part.Unit == PartUnit.Piece && request.ReorderPoint is { } point && point != decimal.Truncate(point))
        {
            return Problem.Impossible("reorder-point", "reorderPoint",
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"reorderPoint is {point}: {part.Name} comes in whole pieces."));
        }

        (part.Stocked, part.ServiceLevel, part.ReorderPoint) = (request.Stocked, (double?)request.ServiceLevel, request.ReorderPoint);
        return new Answer(part.Code, await Versions.Save(db, part, request.RowVersion!.Value, ct));
    }
}

internal static class ServiceLevelRules
{
    public const decimal Lowest = 0.5m;
    public const decimal Highest = 0.999m;

    public static IRuleBuilderOptions<T, decimal?> IsServiceLevel<T>(this IRuleBuilder<T, decimal?> rule) => rule.IsWithin(Lowest, Highest, 4, "");
}
