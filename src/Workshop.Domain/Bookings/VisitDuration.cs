using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Bookings;

/// <summary>One line of the labour: an item, or what has to be out of its way.</summary>
/// <param name="Code">Of the item or the access.</param>
/// <param name="Name">As the specification says it.</param>
/// <param name="Likelihood">Of an access, that of the surest item that needs it.</param>
/// <param name="Minutes">Labour in whole minutes.</param>
/// <param name="IsAccess">Opened and closed once, however many items need it.</param>
public sealed record LabourLine(string Code, string Name, Likelihood Likelihood, int Minutes, bool IsAccess);

/// <summary>
/// How long a visit works: the labour of its items and of each access once. Certain and likely work is booked; what a
/// possible item would add stands beside it.
/// </summary>
public sealed record VisitDuration(IReadOnlyList<LabourLine> Lines)
{
    /// <summary>Minutes of work that is certain.</summary>
    public int CertainMinutes => Sum(Likelihood.Certain);

    /// <summary>Minutes that likely items add; they are booked too.</summary>
    public int LikelyMinutes => Sum(Likelihood.Likely);

    /// <summary>Minutes that possible items would add; they are not booked.</summary>
    public int PossibleMinutes => Sum(Likelihood.Possible);

    /// <summary>Minutes for which bay, technician and tools are taken.</summary>
    public int BookedMinutes => CertainMinutes + LikelyMinutes;

    /// <summary>The same as a span of time.</summary>
    public Duration Booked => Duration.FromMinutes(BookedMinutes);

    /// <summary>The labour of the items, from the engine model's specification.</summary>
    public static VisitDuration Of(EngineSpecification specification, IReadOnlyCollection<ChosenItem> items)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(items);
        var labour = items.Select(i => new LabourLine(i.Item.Code, i.Item.Name, i.Likelihood, i.Item.LabourMinutes, IsAccess: false));
        var accesses =
            from item in items
            from code in item.Item.Accesses
            group item.Likelihood by code into needed
            let access = specification.Accesses.Single(a => a.Code == needed.Key)
            select new LabourLine(access.Code, access.Name, needed.Min(), access.Minutes, IsAccess: true);
        return new VisitDuration([.. accesses.Concat(labour).OrderBy(l => l.Likelihood)]);
    }

    /// <summary>Hours and minutes as one says them: "2 h 40 min", "40 min".</summary>
    public static string Say(int minutes) => minutes < 60 ? $"{minutes} min" : $"{minutes / 60} h {minutes % 60} min";

    private int Sum(Likelihood likelihood) => Lines.Where(l => l.Likelihood == likelihood).Sum(l => l.Minutes);
}
