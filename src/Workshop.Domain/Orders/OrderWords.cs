using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Orders;

/// <summary>How orders are said.</summary>
public static class OrderWords
{
    public static string Spoken(this PurchaseOrderState state) => state switch
    {
        PurchaseOrderState.Draft => "draft",
        PurchaseOrderState.Placed => "placed",
        PurchaseOrderState.Closed => "closed",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };

    /// <summary>"95 %", "99.5 %".</summary>
    public static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{share * 100:0.##} %");

    /// <summary>Why a part is to be ordered or not, and how much.</summary>
    internal static string Why(OrderProposal proposal, LeadTimeDemand untilEnd, OrderDays days)
    {
        var part = proposal.Of;
        var unit = part.Part.Unit;
        var sentences = new List<string>
        {
            $"Ordered today it can be used from {Say(days.UsableFrom)}. Until then {Asked(proposal.InLeadTime, part, unit)}.",
            part.Part.ReorderPoint is { } byHand
                ? $"The reorder point is set by hand: {unit.Say(byHand)}."
                : $"Enough with {Percent(part.ServiceLevel)}: {unit.Say(proposal.ReorderPoint)}.",
            $"On hand {unit.Say(part.OnHand)}{(part.Reserved > 0 ? $", of which {unit.Say(part.Reserved)} reserved" : "")}; on order {unit.Say(part.OnOrder)}.",
        };
        if (proposal.UnusedUntilEnd > 0)
        {
            sentences.Add($"Of what is on hand {unit.Say(proposal.UnusedUntilEnd)} will expire before anybody asks for it and is not counted ({Ending(proposal, days)}).");
        }

        if (proposal.Quantity == 0)
        {
            sentences.Add("That is enough.");
        }
        else
        {
            if (part.Position - proposal.UnusedInLeadTime > proposal.ReorderPoint && part.Position - proposal.UnusedUntilEnd < untilEnd.Booked)
            {
                sentences.Add($"Visits that are booked until {Say(days.LastsUntil)} need more.");
            }

            sentences.Add($"To last until {Say(days.LastsUntil)} there should be {unit.Say(proposal.OrderUpTo)}: {unit.Say(proposal.Missing)} to order{Rounded(proposal, unit)}.");
        }

        return string.Join(" ", sentences);
    }

    /// <summary>What share is met from the shelf, beside the service level, which asks something else.</summary>
    internal static string? Service(OrderProposal proposal)
    {
        var unit = proposal.Of.Part.Unit;
        return proposal.Service is not { } service ? null
            : $"Ordered {unit.Say(proposal.UsualQuantity)} at a time whenever {unit.Say(proposal.ReorderPoint)} are left and on order, "
                + $"{Share(service.FillRate)} of what is asked for beyond booked visits is met from the shelf at once: {Missing(service.ShortPerCycle, unit)} "
                + $"from one order to the next; about {About(service.There, unit)} lie there as a mean, beside what is booked. "
                + $"The service level asks something else: in {Percent(proposal.Of.ServiceLevel)} of the lead times nothing is to be missing at all.";
    }

    private static string Share(double fillRate) => fillRate > 0.9995 ? "more than 99.9 %" : string.Create(CultureInfo.InvariantCulture, $"{fillRate * 100:0.0} %");

    private static string Missing(double amount, PartUnit unit) => unit == PartUnit.Millilitre
        ? amount < 1 ? "less than 1 ml is missing" : string.Create(CultureInfo.InvariantCulture, $"{amount:#,0} ml are missing")
        : amount < 0.005 ? "less than 0.01 is missing" : string.Create(CultureInfo.InvariantCulture, $"{amount:0.00} are missing");

    private static string Ending(OrderProposal proposal, OrderDays days) => string.Join(", ", proposal.Of.Lots
        .Where(l => l.Quantity > 0 && !l.LastsUntil(LocalDate.Max(days.LastsUntil, days.UsableFrom))).OrderBy(l => l.ExpiresOn)
        .Select(l => $"{proposal.Of.Part.Unit.Say(l.Quantity)} to be used by {Say(l.ExpiresOn!.Value)}"));

    private static string Asked(LeadTimeDemand demand, PartToOrder part, PartUnit unit)
    {
        var booked = demand.Booked > 0 ? $"booked visits want {unit.Say(demand.Booked)}" : "no booked visit wants any";
        return demand.Law switch
        {
            _ when !part.Part.Stocked => $"{booked}; it is ordered for visits only",
            DemandLaw.BookedOnly when !part.Issues.TellsRate =>
                $"{booked}; {part.Issues.Weeks.Count} weeks of issues tell no rate yet, {IssueHistory.FewestWeeks} would",
            DemandLaw.BookedOnly when part.Issues.PerDay > 0 =>
                $"{booked}; no more is to be expected, as visits are booked longer ahead than that ({unit.Say(part.Issues.Total)} went out in {part.Issues.Weeks.Count} weeks)",
            DemandLaw.BookedOnly => $"{booked}; nothing more is to be expected, as {unit.Say(part.Issues.Total)} went out in {part.Issues.Weeks.Count} weeks",
            var law => $"{booked} and about {About(demand.Expected, unit)} more is to be expected, as {unit.Say(part.Issues.Total)} went out in {part.Issues.Weeks.Count} weeks ({Spoken(law)})",
        };
    }

    private static string Spoken(DemandLaw law) => law switch
    {
        DemandLaw.Poisson => "Poisson: the weeks scatter as chance does",
        DemandLaw.NegativeBinomial => "negative binomial: the weeks scatter more than chance does",
        _ => "normal: it is so much",
    };

    private static string Rounded(OrderProposal proposal, PartUnit unit)
    {
        var (supply, wanted) = (proposal.Of.Supply, proposal.Missing);
        return proposal.Quantity == wanted ? ""
            : supply.SmallestQuantity is { } least && wanted < least ? $", at least {unit.Say(least)} at once: {unit.Say(proposal.Quantity)}"
            : $", in packages of {unit.Say(supply.PackQuantity)}: {unit.Say(proposal.Quantity)}";
    }

    private static string About(double amount, PartUnit unit) => unit == PartUnit.Millilitre
        ? string.Create(CultureInfo.InvariantCulture, $"{amount:#,0} ml")
        : string.Create(CultureInfo.InvariantCulture, $"{amount:#,0.0}");

    internal static string Say(LocalDate day) => LocalDatePattern.Iso.Format(day);
}
