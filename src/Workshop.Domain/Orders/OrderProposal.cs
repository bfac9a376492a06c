using System.Globalization;
using NodaTime;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Orders;

/// <summary>What decides whether a part is to be ordered, as things stand today.</summary>
/// <param name="Part">No shim: those are told apart by thickness.</param>
/// <param name="Supply">As the supplier sells it that the part is ordered from.</param>
/// <param name="OnHand">Fit to be used, whoever has reserved it.</param>
/// <param name="Reserved">Of that, for visits.</param>
/// <param name="OnOrder">Expected and not here yet.</param>
/// <param name="Booked">What booked visits still want, any day.</param>
/// <param name="ServiceLevel">The part's own or the workshop's; above 0 and below 1.</param>
/// <param name="DeliveryDays">From an order to its delivery.</param>
/// <param name="DeliveryDaysDeviation">How far that scatters.</param>
public sealed record PartToOrder(
    Part Part,
    PartSupply Supply,
    decimal OnHand,
    decimal Reserved,
    decimal OnOrder,
    IReadOnlyList<BookedNeed> Booked,
    IssueHistory Issues,
    double ServiceLevel,
    int DeliveryDays,
    double DeliveryDaysDeviation)
{
    /// <summary>What there will be without another order.</summary>
    public decimal Position => OnHand + OnOrder;

    /// <summary>What is on hand, by last day.</summary>
    public IReadOnlyList<LotQuantity> Lots { get; init; } = [];
}

/// <summary>For when an order that goes out today is good.</summary>
/// <param name="Today">The workshop's day.</param>
/// <param name="UsableFrom">The first working day that can count on it.</param>
/// <param name="LastsUntil">It is to last until this day.</param>
public sealed record OrderDays(LocalDate Today, LocalDate UsableFrom, LocalDate LastsUntil)
{
    public int UntilUsable => Period.DaysBetween(Today, UsableFrom);

    public int UntilEnd => Period.DaysBetween(Today, LastsUntil);
}

/// <summary>What to order of one part, and why.</summary>
/// <param name="InLeadTime">What is asked for until an order of today can be used.</param>
/// <param name="ReorderPoint">By hand, or the smallest stock that is enough until then with the service level's probability.</param>
/// <param name="OrderUpTo">Enough, with the same probability, for as long as the order is to last.</param>
/// <param name="Quantity">To order: whole packages of the supplier; 0 where there is enough.</param>
/// <param name="Why">In words, with the figures.</param>
public sealed record OrderProposal(
    PartToOrder Of, LeadTimeDemand InLeadTime, decimal ReorderPoint, decimal OrderUpTo, decimal Quantity, string Why)
{
    /// <summary>Before tax; absent where no cost is known.</summary>
    public decimal? NetCost => OrderSums.OfLine(Quantity, Of.Supply.UnitCost);

    /// <summary>On hand, but expires before it is asked for and before an order of today can be used: it is not counted.</summary>
    public decimal UnusedInLeadTime { get; init; }

    /// <summary>The same until the day until which the order is to last.</summary>
    public decimal UnusedUntilEnd { get; init; }

    /// <summary>What the order lacks to <see cref="OrderUpTo"/>, before it is rounded to packages.</summary>
    public decimal Missing => Math.Max(OrderUpTo - (Of.Position - UnusedUntilEnd), 0);

    /// <summary>What an order brings that goes out at the reorder point: whole packages up to what it is to last for, one package at least.</summary>
    public decimal UsualQuantity => PackageSizes.RoundUp(Math.Max(OrderUpTo - ReorderPoint, 1), Of.Supply.PackQuantity, Of.Supply.SmallestQuantity);

    /// <summary>What reorder point and usual quantity do in the long run; absent where nothing beyond what is booked is expected.</summary>
    public ShelfService? Service => InLeadTime.Service(ReorderPoint, UsualQuantity);

    /// <summary>The same in words.</summary>
    public string? ServiceWords => OrderWords.Service(this);

    /// <summary>How many days until the reorder point is reached, at the usual rate; absent where nothing is asked for.</summary>
    public double? DaysLeft => Of.Issues.PerDay > 0 ? (double)Math.Max(Of.Position - UnusedInLeadTime - ReorderPoint, 0) / Of.Issues.PerDay : null;

    /// <summary>Decides one part.</summary>
    /// <param name="part">As things stand.</param>
    /// <param name="notice">How long before its day a visit is booked.</param>
    /// <param name="days">Of an order that goes out today.</param>
    public static OrderProposal For(PartToOrder part, NoticeOfVisits notice, OrderDays days)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(days);
        var stocked = part.Part.Stocked ? part.Issues : new IssueHistory([]);
        var lead = Demand(part, stocked, notice, days, days.UsableFrom);
        var until = Demand(part, stocked, notice, days, LocalDate.Max(days.LastsUntil, days.UsableFrom));
        var reorderAt = part.Part.ReorderPoint ?? lead.SmallestCovering(part.ServiceLevel);
        var upTo = until.SmallestCovering(part.ServiceLevel);
        if (part.Part.ReorderPoint is { } byHand)
        {
            upTo = Math.Max(upTo, byHand + (part.Part.Unit == PartUnit.Millilitre ? LeadTimeDemand.FluidStepMl : 1));
        }

        // A part that nobody keeps has a reorder point of what is booked, and that is enough when it is there.
        decimal Asked(LocalDate day) => part.Booked.Where(b => b.On <= day).Sum(b => b.Needed)
            + (decimal)(stocked.PerDay * notice.DaysNotYetBooked(Math.Max(Period.DaysBetween(days.Today, day), 0)));
        var proposal = new OrderProposal(part, lead, reorderAt, upTo, 0, "")
        {
            UnusedInLeadTime = UnusedLots.By(days.UsableFrom, part.Lots, Asked),
            UnusedUntilEnd = UnusedLots.By(LocalDate.Max(days.LastsUntil, days.UsableFrom), part.Lots, Asked),
        };
        var low = (part.Part.Stocked || part.Part.ReorderPoint is not null) && reorderAt > 0 && part.Position - proposal.UnusedInLeadTime <= reorderAt;
        var wanted = low || part.Position - proposal.UnusedUntilEnd < until.Booked ? proposal.Missing : 0;
        proposal = proposal with { Quantity = PackageSizes.RoundUp(wanted, part.Supply.PackQuantity, part.Supply.SmallestQuantity) };
        return proposal with { Why = OrderWords.Why(proposal, until, days) };
    }

    private static LeadTimeDemand Demand(PartToOrder part, IssueHistory issues, NoticeOfVisits notice, OrderDays days, LocalDate until) =>
        LeadTimeDemand.Of(
            issues, notice, Period.DaysBetween(days.Today, until), part.DeliveryDaysDeviation, BookedUntil(part.Booked, until), part.Part.Unit);

    /// <summary>What is needed for certain, and the most that any one visit wants to lie ready beside that.</summary>
    private static decimal BookedUntil(IReadOnlyList<BookedNeed> booked, LocalDate until)
    {
        var then = booked.Where(b => b.On <= until).ToList();
        return then.Sum(b => b.Needed) + then.Select(b => b.HaveReady).DefaultIfEmpty().Max();
    }
}

/// <summary>Sums of orders, before tax, in the workshop's currency.</summary>
public static class OrderSums
{
    /// <summary>Rounded to two decimals, half away from zero.</summary>
    public static decimal? OfLine(decimal quantity, decimal? unitCost) =>
        unitCost is { } cost ? decimal.Round(quantity * cost, 2, MidpointRounding.AwayFromZero) : null;

    /// <summary>"12.50 EUR".</summary>
    public static string Say(decimal sum, string currency) => string.Create(CultureInfo.InvariantCulture, $"{sum:#,0.00} {currency}");
}
