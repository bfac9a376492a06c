using Workshop.Domain.Arrivals;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Compression;

/// <summary>
/// Why a visit asks for compression or leak-down: a valve was found tight, which may not close any more, or the owner complains of what
/// lost compression does.
/// </summary>
public static class CompressionAsked
{
    /// <summary>Every reason in a sentence; empty where nothing asks for it.</summary>
    public static IReadOnlyList<string> Because(
        EngineSpecification specification, IReadOnlyCollection<ClearanceReading> readings, IReadOnlyCollection<ArrivalNote> arrival)
    {
        var tight = AskedChecks.TightValves(specification, readings);
        var complaints = ArrivalRules.Standing(arrival).Where(ArrivalRules.AsksForCompression).Select(n => n.Subject!.Value.Spoken()).Distinct().ToArray();
        return
        [
            .. tight.Count > 0 ? [$"Found tight: {string.Join("; ", tight.Select(v => v.Spoken))}. A valve that does not close any more loses compression."] : Array.Empty<string>(),
            .. complaints.Length > 0 ? [$"The owner complains of {string.Join(", ", complaints)}."] : Array.Empty<string>(),
        ];
    }
}
