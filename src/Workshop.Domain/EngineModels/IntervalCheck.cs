using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>When service items come round, for which motorcycles, and which contain others.</summary>
internal static class IntervalCheck
{
    public const int EarliestModelYear = 1885;
    public const int LatestModelYear = 2100;
    private const int MostMonths = 240;
    private const decimal MostKilometres = 500_000;
    private const int MostMiles = 300_000;
    private const int MostDaysTogether = 365;
    private const decimal MostKilometresTogether = 20_000;

    public static void Run(EngineSpecification specification, Findings findings)
    {
        var items = specification.ServiceItems;
        findings.Codes("options", specification.Options.Select(o => o.Code));
        for (var i = 0; i < specification.Options.Count; i++)
        {
            findings.Text($"options[{i}].name", specification.Options[i].Name, "what it is");
        }

        Together(specification.Together, findings);
        var options = specification.Options.Select(o => o.Code).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < items.Count; i++)
        {
            var (path, item) = ($"serviceItems[{i}]", items[i]);
            Interval($"{path}.interval", item, findings);
            Applies($"{path}.onlyFor", item, options, findings);
            Includes($"{path}.includes", item, items, findings);
        }
    }

    private static void Together(TogetherWithin? together, Findings findings)
    {
        findings.FaultIf(together?.Far.Kilometres is < 0 or > MostKilometresTogether, "together.km",
            $"together.km is {together?.Far.Kilometres}: 0 to {MostKilometresTogether} km is allowed.");
        findings.FaultIf(together?.Days is < 0 or > MostDaysTogether, "together.days",
            $"together.days is {together?.Days}: 0 to {MostDaysTogether} days is allowed.");
    }

    private static void Interval(string path, ServiceItem item, Findings findings)
    {
        if (item.Interval is not { } interval)
        {
            findings.FaultIf(item.Kind == ServiceItemKind.ValveClearanceCheck, path,
                $"{path} is missing: a check comes round by distance, by time or by both.");
            return;
        }

        if (interval.Once)
        {
            Once(path, interval, findings);
        }
        else
        {
            Repeated(path, interval, findings);
        }

        findings.FaultIf(interval.EveryMiles is not null && interval.Every is null, $"{path}.everyMiles",
            $"{path}.everyMiles is given without everyKm: give what the maker states for kilometres too.");
        findings.FaultIf(interval.FirstMiles is not null && interval.First is null, $"{path}.firstMiles",
            $"{path}.firstMiles is given without firstKm: give what the maker states for kilometres too.");
        Figures(path, interval, findings);
        Severe($"{path}.severe", interval, findings);
    }

    private static void Once(string path, ServiceInterval interval, Findings findings)
    {
        findings.FaultIf(interval.First is null && interval.FirstMonths is null && interval.AfterDate is null, path,
            $"{path} is done once, but says neither firstKm nor firstMonths nor afterDate: give when.");
        findings.FaultIf(interval.Every is not null || interval.EveryMonths is not null, $"{path}.once",
            $"{path}.once is true, but everyKm or everyMonths is given too: what is done once has only a first occurrence.");
        findings.FaultIf(interval.Counting == CountingRule.OnFixedGrid, $"{path}.counting",
            $"{path}.counting is onFixedGrid: what is done once has no grid.");
    }

    private static void Repeated(string path, ServiceInterval interval, Findings findings)
    {
        findings.FaultIf(interval.Every is null && interval.EveryMonths is null, path,
            $"{path} says neither everyKm nor everyMonths: give one or both.");
        findings.FaultIf(interval.First is not null && interval.Every is null, $"{path}.firstKm",
            $"{path}.firstKm is given without everyKm: the first occurrence differs from those after it.");
        findings.FaultIf(interval.FirstMonths is not null && interval.EveryMonths is null, $"{path}.firstMonths",
            $"{path}.firstMonths is given without everyMonths: the first occurrence differs from those after it.");
    }

    private static void Figures(string path, ServiceInterval interval, Findings findings)
    {
        Kilometres($"{path}.everyKm", interval.Every, findings);
        Kilometres($"{path}.firstKm", interval.First, findings);
        Months($"{path}.everyMonths", interval.EveryMonths, findings);
        Months($"{path}.firstMonths", interval.FirstMonths, findings);
        Miles($"{path}.everyMiles", interval.EveryMiles, interval.Every, findings);
        Miles($"{path}.firstMiles", interval.FirstMiles, interval.First, findings);
    }

    private static void Severe(string path, ServiceInterval interval, Findings findings)
    {
        if (interval.Severe is not { } severe)
        {
            return;
        }

        var own = severe.Every is not null || severe.EveryMonths is not null || severe.First is not null
            || severe.FirstMonths is not null || severe.EveryMiles is not null || severe.FirstMiles is not null;
        findings.FaultIf(severe.Factor is null == !own, path, $"{path} wants a factor or figures of its own: give one of the two.");
        findings.FaultIf(severe.Factor is <= 0 or >= 1, $"{path}.factor",
            $"{path}.factor is {severe.Factor}: above 0 and below 1 is allowed.");
        Kilometres($"{path}.everyKm", severe.Every, findings);
        Kilometres($"{path}.firstKm", severe.First, findings);
        Months($"{path}.everyMonths", severe.EveryMonths, findings);
        Months($"{path}.firstMonths", severe.FirstMonths, findings);
        Miles($"{path}.everyMiles", severe.EveryMiles, severe.Every, findings);
        Miles($"{path}.firstMiles", severe.FirstMiles, severe.First, findings);
        Shorter($"{path}.everyKm", severe.Every?.Kilometres, interval.Every?.Kilometres, findings);
        Shorter($"{path}.firstKm", severe.First?.Kilometres, interval.First?.Kilometres, findings);
        Shorter($"{path}.everyMonths", severe.EveryMonths, interval.EveryMonths, findings);
        Shorter($"{path}.firstMonths", severe.FirstMonths, interval.FirstMonths, findings);
    }

    private static void Shorter(string path, decimal? severe, decimal? usual, Findings findings)
    {
        findings.FaultIf(severe is not null && usual is null, path, $"{path} is given, but the interval itself has no such figure.");
        findings.FaultIf(severe > usual, path, $"{path} is {severe}, more than the usual {usual}: severe use shortens.");
    }

    private static void Applies(string path, ServiceItem item, HashSet<string> options, Findings findings)
    {
        if (item.OnlyFor is not { } only)
        {
            return;
        }

        ModelYear($"{path}.fromModelYear", only.FromModelYear, findings);
        ModelYear($"{path}.toModelYear", only.ToModelYear, findings);
        findings.FaultIf(only.FromModelYear > only.ToModelYear, $"{path}.toModelYear",
            $"{path}.toModelYear is {only.ToModelYear}, before fromModelYear {only.FromModelYear}.");
        findings.References($"{path}.withOptions", only.WithOptions, options, "options");
        findings.References($"{path}.withoutOptions", only.WithoutOptions, options, "options");
        foreach (var both in only.WithOptions.Intersect(only.WithoutOptions))
        {
            findings.Fault($"{path}.withoutOptions", $"{path}.withoutOptions has \"{both}\", which withOptions has too: no motorcycle is both.");
        }
    }

    private static void Includes(string path, ServiceItem item, IReadOnlyList<ServiceItem> items, Findings findings)
    {
        findings.References(path, item.Includes, items.Select(i => i.Code).ToHashSet(StringComparer.Ordinal), "serviceItems");
        for (var i = 0; i < item.Includes.Count; i++)
        {
            // What is measured belongs to an item of its own: a card without it would take no readings.
            var kind = items.FirstOrDefault(other => other.Code == item.Includes[i])?.Kind;
            findings.FaultIf(kind is not null and not ServiceItemKind.Routine, $"{path}[{i}]",
                $"{path}[{i}] is \"{item.Includes[i]}\": only a routine item can be part of another; checks and adjustments stand on a card by themselves.");
        }

        findings.FaultIf(Inclusion.Of(items).Contains(item.Code, item.Code), path,
            $"{path} leads back to \"{item.Code}\": an item cannot contain itself.");
    }

    private static void ModelYear(string path, int? year, Findings findings) =>
        findings.FaultIf(year is < EarliestModelYear or > LatestModelYear, path,
            $"{path} is {year}: {EarliestModelYear} to {LatestModelYear} is allowed.");

    private static void Kilometres(string path, Distance? distance, Findings findings) =>
        findings.FaultIf(distance?.Kilometres is <= 0 or > MostKilometres, path,
            $"{path} is {distance?.Kilometres} km: above 0 and at most {MostKilometres} km is allowed.");

    private static void Months(string path, int? months, Findings findings) =>
        findings.FaultIf(months is < 1 or > MostMonths, path, $"{path} is {months}: 1 to {MostMonths} months is allowed.");

    /// <summary>A maker rounds: 12,000 km and 7500 mi differ by a hundredth. A quarter is a slip of the pen.</summary>
    private static void Miles(string path, int? miles, Distance? distance, Findings findings)
    {
        findings.FaultIf(miles is < 1 or > MostMiles, path, $"{path} is {miles}: 1 to {MostMiles} miles is allowed.");
        if (miles is { } count && distance is { } far
            && Math.Abs(Distance.FromMiles(count).Metres - far.Metres) > far.Metres / 4)
        {
            findings.Confirm(path, $"{path} is {count} mi, but the kilometres are {far.Kilometres}, which is {far.Miles:0} mi.");
        }
    }
}
