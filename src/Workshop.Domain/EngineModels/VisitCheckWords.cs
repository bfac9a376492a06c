namespace Workshop.Domain.EngineModels;

/// <summary>How the checks of a visit are said.</summary>
public static class VisitCheckWords
{
    /// <summary>What is asked for: "leak check".</summary>
    public static string Spoken(this VisitCheckKind kind) => kind switch
    {
        VisitCheckKind.ArrivalState => "state on arrival",
        VisitCheckKind.Plugs => "spark plugs",
        VisitCheckKind.Compression => "compression or leak-down",
        VisitCheckKind.Balance => "throttle bodies or carburettors balanced hot",
        VisitCheckKind.LeakCheck => "leak check",
        VisitCheckKind.TestRide => "test ride",
        VisitCheckKind.Recheck => "re-check",
        VisitCheckKind.ReminderReset => "service reminder reset",
        VisitCheckKind.PartsCounted => "parts and tools counted in and out",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>On which visits: "on every visit", "after Valve clearance check".</summary>
    public static string SpokenWhen(this CheckOnVisit check, EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(check);
        return check.Asked switch
        {
            WhenAsked.Always => "on every visit",
            WhenAsked.AfterItems => $"after {string.Join("; ", Names(specification, check.AfterItems))}",
            WhenAsked.TightOrComplaint => "when a valve is found tight, or the owner complains of how it runs",
            _ => throw new InvalidOperationException($"No words for {check.Asked}."),
        };
    }

    /// <summary>The maker's figures: "at 1,300 rpm, more or less 50, within 2 kPa (15 mmHg), hot from 80 °C"; empty where none are stated.</summary>
    public static string SpokenFigures(this CheckOnVisit check, EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(specification);
        var again = specification.Fasteners.Where(f => check.FastenersAgain.Contains(f.Code)).Select(f => f.Name).ToArray();
        return string.Join("; ", new[]
        {
            check.Balance?.Spoken(),
            check.Places.Count > 0 ? $"look at {string.Join(", ", check.Places)}" : null,
            check.OilAfterRun ? "oil level after the run" : null,
            again.Length > 0 ? $"torque once more: {string.Join(", ", again)}" : null,
        }.OfType<string>());
    }

    public static string Spoken(this BalanceFigures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        var tolerance = $"{figures.Tolerance} ({figures.Tolerance.MillimetresOfMercury:0} mmHg)";
        var of = figures.ReferenceCylinder is { } cylinder ? $"each within {tolerance} of cylinder {cylinder}" : $"within {tolerance} of each other";
        return FormattableString.Invariant(
            $"at {figures.SpeedRpm:#,0} rpm, more or less {figures.SpeedToleranceRpm}, {of}{(figures.HotFrom is { } hot ? $", hot from {hot}" : "")}");
    }

    /// <summary>The names of service items by their codes.</summary>
    internal static IEnumerable<string> Names(EngineSpecification specification, IEnumerable<string> codes) =>
        codes.Select(code => specification.ServiceItems.FirstOrDefault(i => i.Code == code)?.Name ?? code);
}
