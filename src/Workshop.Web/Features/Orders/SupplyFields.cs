using FluentValidation;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>A part as one supplier sells it, when it is entered and when it is changed.</summary>
public interface ISupplyFields
{
    /// <summary>Under which they sell it.</summary>
    string? SupplierCode { get; }

    /// <summary>In one package of theirs, in the part's unit.</summary>
    decimal? PackQuantity { get; }

    /// <summary>The least that they sell at once.</summary>
    decimal? SmallestQuantity { get; }

    /// <summary>Of one unit, before tax.</summary>
    decimal? UnitCost { get; }

    /// <summary>Absent where the supplier's own days hold.</summary>
    int? DeliveryDays { get; }

    /// <summary>The one that proposals go to.</summary>
    bool Preferred { get; }
}

internal sealed class SupplyFieldsValidator : AbstractValidator<ISupplyFields>
{
    public const decimal LargestQuantity = 1_000_000m;
    public const decimal DearestUnit = 1_000_000m;
    public const int CostDecimals = 4;

    public SupplyFieldsValidator()
    {
        RuleFor(r => r.SupplierCode).IsAtMost(Limits.Code);
        RuleFor(r => r.PackQuantity).NotNull().WithMessage("packQuantity is empty: give what one package holds, 1 where single pieces are sold.")
            .IsWithin(0.0001m, LargestQuantity, 4, "pieces or ml");
        RuleFor(r => r.SmallestQuantity).IsWithin(0.0001m, LargestQuantity, 4, "pieces or ml");
        RuleFor(r => r.UnitCost).IsWithin(0, DearestUnit, CostDecimals, "");
        RuleFor(r => r.DeliveryDays).IsWhole(0, SupplierFieldsValidator.MostDays);
    }
}

internal static class SupplyRows
{
    public static Problem? Refuse(Part part, ISupplyFields fields)
    {
        var faults = new List<FieldFault>();
        void Whole(string field, decimal? quantity)
        {
            if (part.Unit == PartUnit.Piece && quantity is { } given && given != decimal.Truncate(given))
            {
                faults.Add(new FieldFault(field, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{field} is {given}: {part.Name} comes in whole pieces.")));
            }
        }

        Whole("packQuantity", fields.PackQuantity);
        Whole("smallestQuantity", fields.SmallestQuantity);
        return faults.Count == 0 ? null : Problem.Impossible("supply-unfit", faults);
    }

    public static void Put(this PartSupply supply, ISupplyFields fields)
    {
        supply.SupplierCode = string.IsNullOrWhiteSpace(fields.SupplierCode) ? null : fields.SupplierCode.Trim();
        (supply.PackQuantity, supply.SmallestQuantity) = (fields.PackQuantity!.Value, fields.SmallestQuantity);
        (supply.UnitCost, supply.DeliveryDays, supply.Preferred) = (fields.UnitCost, fields.DeliveryDays, fields.Preferred);
    }
}
