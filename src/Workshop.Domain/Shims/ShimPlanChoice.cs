using System.Text.Json.Serialization;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Shims;

/// <summary>One valve's shim as chosen by hand.</summary>
/// <param name="Shim">The code of a shim, or <see cref="ShimLot.Stay"/>.</param>
[method: JsonConstructor]
public sealed record ShimLock(ValveKey Valve, string Shim);

/// <summary>
/// What was asked of the shim plan of a card, so that everybody sees the same plan. Only ever added; the last one counts.
/// </summary>
public sealed class ShimPlanChoice
{
    public required int JobCardNumber { get; init; }

    /// <summary>Counts from 1 on each card.</summary>
    public required int Version { get; init; }

    public required PlanAim Aim { get; init; }

    public required bool SetAll { get; init; }

    public required GuardBand Guard { get; init; }

    /// <summary>In order of valve.</summary>
    public required IReadOnlyList<ShimLock> Locks { get; init; }

    public required Guid ChosenBy { get; init; }

    public required Instant ChosenAt { get; init; }

    /// <summary>As the planner takes it.</summary>
    public PlanOptions ToOptions() => new()
    {
        Aim = Aim, SetAll = SetAll, Guard = Guard, Locked = Locks.ToDictionary(l => l.Valve, l => l.Shim),
    };
}
