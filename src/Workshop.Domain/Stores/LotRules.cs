using System.Globalization;
using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Stores;

/// <summary>Under which lot goods come in.</summary>
public static class LotRules
{
    /// <summary>
    /// The lot that the goods belong to, and nothing for parts that are kept without one. A part with a shelf life asks for it; nothing
    /// comes in that is past its last day. A known lot without a last day is given the one that is said.
    /// </summary>
    /// <param name="part">What comes in.</param>
    /// <param name="code">As the maker marks it; nothing where none is given.</param>
    /// <param name="expiresOn">The last day; where none is given it is reckoned from the shelf life and <paramref name="today"/>.</param>
    /// <param name="known">The lot of that code, if it was here before.</param>
    /// <param name="id">Of a new lot.</param>
    /// <param name="today">By the workshop's calendar.</param>
    public static Outcome<StockLot?> Of(Part part, string? code, LocalDate? expiresOn, StockLot? known, Guid id, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(part);
        if (code is null)
        {
            return (part, expiresOn) switch
            {
                ({ ShelfLifeMonths: { } months }, _) => Fault("lotCode", $"lotCode is empty: {part.Name} keeps for {months} months; give the lot on its package."),
                (_, { } day) => Fault("expiresOn", $"expiresOn is {Day(day)}, but no lot is given; give lotCode too."),
                _ => (StockLot?)null,
            };
        }

        if (part.Kind == PartKind.Shim)
        {
            return Fault("lotCode", $"lotCode is \"{code}\", but shims are kept by thickness; leave it empty.");
        }

        var last = known?.ExpiresOn ?? expiresOn ?? (part.ShelfLifeMonths is { } life ? today.PlusMonths(life) : null);
        if (known is not null && expiresOn is { } said && known.ExpiresOn is { } stands && said != stands)
        {
            return Fault("expiresOn", $"expiresOn is {Day(said)}, but lot {code} of {part.Name} is in the books until {Day(stands)}; a lot has one last day.");
        }

        if (last < today)
        {
            return Fault(
                known?.ExpiresOn is null ? "expiresOn" : "lotCode",
                $"Lot {code} of {part.Name} was to be used by {Day(last.Value)}, which is past; nothing expired comes in.");
        }

        if (known is not null)
        {
            known.ExpiresOn = last;
            return known;
        }

        return new StockLot { Id = id, PartId = part.Id, Code = code, ExpiresOn = last, ReceivedOn = today };
    }

    private static Problem Fault(string field, string sentence) => Problem.Impossible("lot-unfit", field, sentence);

    private static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
}
