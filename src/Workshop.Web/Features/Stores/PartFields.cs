using FluentValidation;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>What is typed about a part, new or changed. What it costs, and who sells it, stands elsewhere.</summary>
public interface IPartFields
{
    string? Name { get; }

    decimal? InnerDiameterMm { get; }

    decimal? OuterDiameterMm { get; }

    decimal? SectionMm { get; }

    string? Material { get; }

    string? Form { get; }

    string? Designation { get; }

    int? Hardness { get; }

    bool FittedOnce { get; }

    decimal? PackQuantity { get; }

    int? ShelfLifeMonths { get; }

    int? DeliveryDays { get; }

    bool Stocked { get; }
}

internal sealed class PartFieldsValidator : AbstractValidator<IPartFields>
{
    private const decimal SmallestSizeMm = 0.1m;
    private const decimal LargestSizeMm = 2_000m;
    private const int SizeDecimals = 3;
    private const int LongestDesignation = 60;

    // IRHD and Shore A of seals that are sold (ISO 48-2; from memory).
    private const int Softest = 30;
    private const int Hardest = 95;

    private const int LongestShelfLife = 600;
    private const int LongestDelivery = 730;

    public PartFieldsValidator()
    {
        RuleFor(r => r.Name).IsGiven("what the part is called").IsAtMost(Limits.Name);
        RuleFor(r => r.InnerDiameterMm).IsWithin(SmallestSizeMm, LargestSizeMm, SizeDecimals, "mm");
        RuleFor(r => r.OuterDiameterMm).IsWithin(SmallestSizeMm, LargestSizeMm, SizeDecimals, "mm")
            .Must((r, outer) => outer is null || r.InnerDiameterMm is null || outer > r.InnerDiameterMm)
            .WithMessage((r, outer) => FormattableString.Invariant(
                $"{{PropertyName}} is {outer} mm: more than the inner diameter of {r.InnerDiameterMm} mm is allowed."));
        RuleFor(r => r.SectionMm).IsWithin(SmallestSizeMm, LargestSizeMm, SizeDecimals, "mm");
        RuleFor(r => r.Material).IsAtMost(Limits.Name);
        RuleFor(r => r.Form).IsAtMost(Limits.Code);
        RuleFor(r => r.Designation).IsAtMost(LongestDesignation);
        RuleFor(r => r.Hardness).IsWhole(Softest, Hardest);
        RuleFor(r => r.PackQuantity).IsQuantity();
        RuleFor(r => r.ShelfLifeMonths).IsWhole(1, LongestShelfLife);
        RuleFor(r => r.DeliveryDays).IsWhole(0, LongestDelivery);
    }
}

internal static class PartFields
{
    public static void Set(Part part, IPartFields fields)
    {
        part.Name = fields.Name!.Trim();
        (part.InnerDiameterMm, part.OuterDiameterMm, part.SectionMm) = (fields.InnerDiameterMm, fields.OuterDiameterMm, fields.SectionMm);
        (part.Material, part.Form, part.Designation, part.Hardness) =
            (Given(fields.Material), Given(fields.Form), Given(fields.Designation), fields.Hardness);
        (part.FittedOnce, part.PackQuantity, part.ShelfLifeMonths) = (fields.FittedOnce, fields.PackQuantity, fields.ShelfLifeMonths);
        (part.DeliveryDays, part.Stocked) = (fields.DeliveryDays, fields.Stocked);
    }

    private static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
