using FluentValidation;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>What is said of a supplier, when it is added and when it is changed.</summary>
public interface ISupplierFields
{
    string? Name { get; }

    string? Email { get; }

    /// <summary>The workshop's number with them.</summary>
    string? CustomerNumber { get; }

    /// <summary>Days from an order to its delivery, where nothing is said of the part itself.</summary>
    int? DeliveryDays { get; }

    /// <summary>How far that scatters: the standard deviation, in days.</summary>
    decimal? DeliveryDaysSd { get; }

    /// <summary>Below this net sum an order costs extra or is refused; absent where they take any.</summary>
    decimal? SmallestOrder { get; }
}

internal sealed class SupplierFieldsValidator : AbstractValidator<ISupplierFields>
{
    public const int MostDays = 365;
    public const decimal LargestSum = 1_000_000m;

    public SupplierFieldsValidator()
    {
        RuleFor(r => r.Name).IsGiven("what the supplier is called").IsAtMost(Limits.Name);
        RuleFor(r => r.Email).IsAtMost(Limits.Email)
            .Must(e => string.IsNullOrEmpty(e) || e.Contains('@', StringComparison.Ordinal)).WithMessage((_, e) => $"email is \"{e}\": an address such as orders@example.com is allowed.");
        RuleFor(r => r.CustomerNumber).IsAtMost(Limits.Code);
        RuleFor(r => r.DeliveryDays).NotNull().WithMessage("deliveryDays is empty: give the usual days from an order to its delivery.").IsWhole(0, MostDays);
        RuleFor(r => r.DeliveryDaysSd).IsWithin(0, MostDays, 2, "days");
        RuleFor(r => r.SmallestOrder).IsWithin(0.01m, LargestSum, 2, "");
    }
}

internal static class SupplierRows
{
    /// <summary>What was typed, into the row.</summary>
    public static void Put(this Supplier supplier, ISupplierFields fields)
    {
        (supplier.Name, supplier.Email, supplier.CustomerNumber) = (fields.Name!.Trim(), Text(fields.Email), Text(fields.CustomerNumber));
        (supplier.DeliveryDays, supplier.DeliveryDaysSd) = (fields.DeliveryDays!.Value, (double)(fields.DeliveryDaysSd ?? 0));
        supplier.SmallestOrder = fields.SmallestOrder;
    }

    public static async Task<Problem?> NameTaken(WorkshopDbContext db, string name, Guid? except, CancellationToken ct)
    {
        var trimmed = name.Trim();
        var other = await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(s => s.Name == trimmed && s.Id != except, ct);
        var sentence = $"name is \"{name}\": another supplier is called that{(other?.Retired == true ? ", a retired one; restore it, or choose another name" : "; choose another name")}.";
        return other is null ? null : Problem.Conflict("name-taken", sentence) with { Faults = [new FieldFault("name", sentence)] };
    }

    private static string? Text(string? typed) => string.IsNullOrWhiteSpace(typed) ? null : typed.Trim();
}
