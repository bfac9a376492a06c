using Workshop.Domain.Statistics;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Orders;

public enum DemandLaw
{
    /// <summary>Nothing but what is booked is expected.</summary>
    BookedOnly,

    Poisson,
    NegativeBinomial,

    /// <summary>So much that a count of pieces would be no different.</summary>
    Normal,
}

/// <summary>
/// What is asked for of a part until an order that goes out now can be used: what booked visits need for certain, and what is not
/// booked yet by chance.
/// </summary>
/// <param name="Days">Until it can be used.</param>
/// <param name="Booked">By visits that are booked, in the part's unit.</param>
/// <param name="Expected">Beyond that: the mean of what is not booked yet.</param>
/// <param name="Variance">Of what is not booked yet; of days and of how the delivery scatters.</param>
/// <param name="Unit">Fluids are counted in steps of <see cref="FluidStepMl"/>.</param>
public sealed record LeadTimeDemand(int Days, decimal Booked, double Expected, double Variance, PartUnit Unit)
{
    /// <summary>In such steps a fluid is counted, so that one law serves pieces and fluids; our own choice.</summary>
    public const decimal FluidStepMl = 100;

    private double Step => Unit == PartUnit.Millilitre ? (double)FluidStepMl : 1;

    private double MeanSteps => Expected / Step;

    private double VarianceOfSteps => Variance / (Step * Step);

    /// <summary>Poisson where weeks scatter no more than chance does, negative binomial where they scatter more.</summary>
    public DemandLaw Law =>
        Expected <= 0 ? DemandLaw.BookedOnly
        : MeanSteps > CountLaw.LargestMean ? DemandLaw.Normal
        : CountLaw.WithMoments(MeanSteps, VarianceOfSteps) is NegativeBinomialLaw ? DemandLaw.NegativeBinomial : DemandLaw.Poisson;

    /// <summary>From the history of a part.</summary>
    /// <param name="issues">What visits took.</param>
    /// <param name="notice">How much of what is ahead is booked already.</param>
    /// <param name="days">Until an order can be used, 0 or above.</param>
    /// <param name="daysDeviation">How far the delivery scatters, in days.</param>
    /// <param name="booked">By visits until then.</param>
    /// <param name="unit">Of the part.</param>
    public static LeadTimeDemand Of(
        IssueHistory issues, NoticeOfVisits notice, int days, double daysDeviation, decimal booked, PartUnit unit)
    {
        ArgumentNullException.ThrowIfNull(issues);
        ArgumentNullException.ThrowIfNull(notice);
        var notBooked = DemandOverTime.Of(
            issues.PerDay, issues.DayVariance, notice.DaysNotYetBooked(days), daysDeviation * notice.NotYetBooked(days));
        return new LeadTimeDemand(days, booked, notBooked.Mean, notBooked.Variance, unit);
    }

    /// <summary>The smallest stock that is enough with this probability; in whole pieces, of fluids in whole steps beyond what is booked.</summary>
    /// <param name="serviceLevel">Above 0 and below 1.</param>
    public decimal SmallestCovering(double serviceLevel) => Booked + (Law switch
    {
        DemandLaw.BookedOnly => 0,
        DemandLaw.Normal => (decimal)(Math.Ceiling(new DemandOverTime(MeanSteps, Math.Max(VarianceOfSteps, MeanSteps)).NormalReorderPoint(serviceLevel)) * Step),
        _ => CountLaw.WithMoments(MeanSteps, VarianceOfSteps).SmallestCovering(serviceLevel) * (decimal)Step,
    });

    /// <summary>
    /// What a reorder point and an order quantity do for what is not booked yet: the booked part of the stock is kept for its visits. Absent
    /// where nothing beyond what is booked is expected, and where not one step is ordered at a time.
    /// </summary>
    /// <param name="reorderPoint">In the part's unit, with what is booked.</param>
    /// <param name="quantity">Ordered at a time, in the part's unit.</param>
    public ShelfService? Service(decimal reorderPoint, decimal quantity)
    {
        var (reorderAt, steps) = ((int)decimal.Floor((reorderPoint - Booked) / (decimal)Step), (int)decimal.Floor(quantity / (decimal)Step));
        if (Law == DemandLaw.BookedOnly || steps < 1)
        {
            return null;
        }

        var service = Law == DemandLaw.Normal
            ? ShelfService.Of(new NormalLaw(MeanSteps, Math.Sqrt(Math.Max(VarianceOfSteps, MeanSteps))), reorderAt, steps)
            : ShelfService.Of(CountLaw.WithMoments(MeanSteps, VarianceOfSteps), reorderAt, steps);
        return service with { ShortPerCycle = service.ShortPerCycle * Step, Waiting = service.Waiting * Step, There = service.There * Step };
    }
}
