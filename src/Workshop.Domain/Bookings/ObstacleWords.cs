using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>What stands in the way of a visit, in sentences for the person at the counter.</summary>
public static class ObstacleWords
{
    private const int MostSentences = 14;

    /// <summary>One obstacle as a sentence, where a person chose the start.</summary>
    /// <param name="obstacle">What stands in the way.</param>
    /// <param name="floor">Its clock and opening hours.</param>
    /// <param name="start">The start of the work that was chosen.</param>
    public static string Say(Obstacle obstacle, WorkshopFloor floor, Instant start)
    {
        ArgumentNullException.ThrowIfNull(obstacle);
        ArgumentNullException.ThrowIfNull(floor);
        var until = obstacle.Span is { } span ? floor.Time.Say(span.End) : null;
        var name = obstacle.Resource?.Name;
        return obstacle.Kind switch
        {
            ObstacleKind.Past => $"{floor.Time.Say(start)} is past; it is {until} now.",
            ObstacleKind.Closed => until is null ? "The workshop does not open again in the time that can be planned."
                : $"The motorcycle would arrive while the workshop is closed; it opens at {until}.",
            ObstacleKind.OffDuty => until is null ? $"{name} does not work any more in the time that can be planned." : $"{name} does not work at {floor.Time.Say(start)}, and then from {until} on.",
            ObstacleKind.Away => until is null ? $"{name} is away." : $"{name} is away until {until}.",
            ObstacleKind.Taken => $"{name} is taken until {until}.",
            ObstacleKind.ToolsTaken => name is null ? "A special tool that it needs is not there."
                : $"Every special tool of the kind of {name} is taken, the first of them until {until}.",
            ObstacleKind.Soak => until is null ? "The engine cannot be cold by then." : $"The engine is cold at {until} at the earliest.",
            ObstacleKind.NoPlace => until is null ? "There is no place to stand through the cold soak."
                : $"There is no place to stand through the cold soak; arriving as soon as one is free, the engine is cold at {until}.",
            ObstacleKind.Parts => $"Parts that it needs are not here before {until}.",
            ObstacleKind.ReadyBy => "It would be handed over after the time by which it must be ready.",
            ObstacleKind.NoEnd => "The visit would not end within the time that can be planned, or no day is long enough for one of its phases.",
            _ => throw new ArgumentOutOfRangeException(nameof(obstacle), obstacle.Kind, null),
        };
    }

    /// <summary>Why no bay, technician or tool can do it at all; empty where some can.</summary>
    internal static IReadOnlyList<string> Unfit(PhasePlanner planner, SlotQuery query)
    {
        var (floor, needs) = (planner.Floor, planner.Needs);
        return
        [
            .. Lacks(floor, ResourceKind.Technician, query.TechnicianId, needs.TechnicianLacks),
            .. Lacks(floor, ResourceKind.Bay, query.BayId, needs.BayLacks),
            .. planner.MissingTools.Select(code => $"The workshop has no special tool \"{code}\"."),
        ];
    }

    /// <summary>What stood in the way before the first slot, what held it longest first; each thing once.</summary>
    internal static IReadOnlyList<string> WhyNotEarlier(PhasePlanner planner, List<Bar> bars, VisitPlan? first)
    {
        var time = planner.Floor.Time;
        var sentences = bars
            .GroupBy(b => (b.Kind, b.Resource?.Id))
            .Select(g => (g.First().Kind, g.First().Resource?.Name, Times: g.Select(b => b.From).Distinct().Count(), Until: g.Max(b => b.Until)))
            .OrderByDescending(b => b.Until)
            .Select(b => Say(b.Kind, b.Name, b.Times, b.Until == Spans.Never ? null : time.Say(Instant.FromUnixTimeTicks(b.Until))))
            .Take(MostSentences).ToList();
        if (first is null)
        {
            sentences.Insert(0, $"Nothing fits within {SlotSearch.HorizonDays} days.");
        }
        else if (planner.Terms.NotBefore is { } notBefore && notBefore > planner.Terms.Now)
        {
            sentences.Insert(0, $"The motorcycle does not come before {time.Say(notBefore)}.");
        }

        if (sentences.Count == 0)
        {
            sentences.Add("It is the next moment there is.");
        }

        return sentences;
    }

    private static string Say(ObstacleKind kind, string? name, int times, string? until) => kind switch
    {
        ObstacleKind.OffDuty => until is null ? $"{name} does not work any more in the time that can be planned." : $"{name} is off duty or in a break, the last time until {until}.",
        ObstacleKind.Away => $"{name} is away until {until}.",
        ObstacleKind.Taken => times == 1 ? $"{name} is taken until {until}." : $"{name} is taken by one visit after another ({times} in the way), the last of them until {until}.",
        ObstacleKind.ToolsTaken => $"Every special tool of the kind of {name} is taken, one of them until {until}.",
        ObstacleKind.Soak => until is null ? "The engine cannot be cold." : $"The engine must stand first: it is cold at {until} at the earliest.",
        ObstacleKind.NoPlace => until is null ? "There is no place to stand through the cold soak." : $"No place is free to stand through the cold soak; from one that is, the engine is cold at {until}.",
        ObstacleKind.Closed => until is null ? "The workshop does not open again." : $"The motorcycle arrives while the workshop is open: from {until} on.",
        ObstacleKind.Parts => $"Parts that it needs are not here before {until}.",
        ObstacleKind.ReadyBy => "Later starts would be handed over after the time by which it must be ready.",
        ObstacleKind.NoEnd => "The visit would not end within the time that can be planned, or no day is long enough for one of its phases.",
        _ => $"It is past until {until}.",
    };

    private static IEnumerable<string> Lacks(WorkshopFloor floor, ResourceKind kind, Guid? only, Func<Resource, IReadOnlyList<string>> lacks)
    {
        var all = floor.Of(kind).Where(r => only is null || r.Resource.Id == only).ToList();
        if (all.Exists(r => lacks(r.Resource).Count == 0))
        {
            return [];
        }

        return all.Count == 0
            ? [$"There is no {kind.Spoken()} for it."]
            : all.Select(r => $"{r.Resource.Name} lacks {string.Join(" and ", lacks(r.Resource))}.");
    }
}
