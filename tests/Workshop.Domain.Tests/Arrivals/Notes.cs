using NodaTime;
using Workshop.Domain.Arrivals;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.Arrivals;

/// <summary>Notes of an arrival for tests.</summary>
internal static class Notes
{
    /// <summary>All that a recorded arrival needs: looked for leaks, damage and lamps, and every level.</summary>
    public static readonly IReadOnlyList<ArrivalNote> Whole =
    [
        .. ArrivalRules.LookedFor.Select(kind => Of(kind, null, ArrivalState.NoneSeen)),
        .. ArrivalRules.SubjectsOf(ArrivalKind.Level).Select(level => Of(ArrivalKind.Level, level, ArrivalState.AtMark)),
    ];

    public static ArrivalNote Of(
        ArrivalKind kind, ArrivalSubject? subject, ArrivalState state = ArrivalState.Noted, ArrivalNote? takes = null, bool struck = false,
        ArrivalStage stage = ArrivalStage.OnArrival) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, Stage = stage, Kind = kind, Subject = subject, State = state, Struck = struck,
        NotedBy = Guid.Empty, NotedAt = Start + Duration.FromMinutes(takes is null ? 0 : 1), SupersedesId = takes?.Id,
    };
}
