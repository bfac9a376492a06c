using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Bookings;

/// <summary>A service item as the caller named it.</summary>
/// <param name="Code">The item's code in the engine model's specification.</param>
/// <param name="Likelihood">Certain, or held ready for.</param>
public sealed record NamedItem(string Code, Likelihood Likelihood);

/// <summary>A service item that a visit is booked for.</summary>
public sealed record ChosenItem(ServiceItem Item, Likelihood Likelihood);

/// <summary>Which items a visit may be booked for.</summary>
public static class VisitItems
{
    /// <summary>
    /// The items by their codes; or a refusal that names the codes that the specification lacks, and adjustments without
    /// the check that decides on them.
    /// </summary>
    public static Outcome<IReadOnlyList<ChosenItem>> Choose(EngineSpecification specification, IReadOnlyList<NamedItem> named)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(named);
        var unknown = named
            .Select((item, index) => (item.Code, Field: FieldOf(index)))
            .Where(at => Find(specification, at.Code) is null)
            .Select(at => Unknown(specification, at.Code, at.Field))
            .ToList();
        if (unknown.Count > 0)
        {
            return Problem.Impossible("item-unknown", unknown);
        }

        var chosen = named.Select(item => new ChosenItem(Find(specification, item.Code)!, item.Likelihood)).ToList();
        var codes = named.Select(item => item.Code).ToHashSet(StringComparer.Ordinal);
        var alone = chosen
            .Select((item, index) => (item.Item, Field: FieldOf(index)))
            .Where(at => LacksItsCheck(specification, at.Item.Code, codes))
            .Select(at => new FieldFault(at.Field,
                $"{at.Field} is \"{at.Item.Code}\": it follows from a check; book {Or(ChecksOf(specification, at.Item.Code))} with it."))
            .ToList();
        return alone.Count > 0 ? Problem.Impossible("adjustment-without-check", alone) : chosen;
    }

    /// <summary>True where the item follows from a check and none of its checks is among <paramref name="codes"/>.</summary>
    public static bool LacksItsCheck(EngineSpecification specification, string code, IReadOnlySet<string> codes)
    {
        var checks = ChecksOf(specification, code);
        return checks.Count > 0 && !checks.Any(codes.Contains);
    }

    /// <summary>The codes of the checks that <paramref name="code"/> may follow from; none for an item that stands alone.</summary>
    public static IReadOnlyList<string> ChecksOf(EngineSpecification specification, string code)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return [.. specification.ServiceItems.Where(i => i.AdjustmentItem == code).Select(i => i.Code)];
    }

    /// <summary>The item of that code, or nothing.</summary>
    public static ServiceItem? Find(EngineSpecification specification, string code)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return specification.ServiceItems.SingleOrDefault(i => i.Code == code);
    }

    /// <summary>The fault of a code that the specification lacks; it lists those that it has.</summary>
    public static FieldFault Unknown(EngineSpecification specification, string code, string field)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return new FieldFault(field,
            $"{field} is \"{code}\", which the engine model lacks; it has {string.Join(", ", specification.ServiceItems.Select(i => i.Code))}.");
    }

    private static string FieldOf(int index) => $"items[{index}].code";

    private static string Or(IReadOnlyList<string> codes) => string.Join(" or ", codes.Select(code => $"\"{code}\""));
}
