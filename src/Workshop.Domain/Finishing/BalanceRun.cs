using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Finishing;

/// <summary>Of what it was read that the engine is hot.</summary>
public enum HotPart
{
    Coolant,
    Oil,
    CylinderHead,
}

/// <summary>The vacuum behind every throttle was read at one engine speed, with the engine hot.</summary>
public sealed class BalanceRun : IAttempt
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>As found: before anything was set. As left: after.</summary>
    public required Stage Stage { get; init; }

    public required int Attempt { get; init; }

    public required int SpeedRpm { get; init; }

    public required Temperature HotAt { get; init; }

    public required HotPart HotOf { get; init; }

    public required Guid GaugeId { get; init; }

    /// <summary>One for each cylinder, in order of number.</summary>
    public List<BalanceVacuum> Vacuums { get; init; } = [];

    public required Instant MeasuredAt { get; init; }

    public required Guid MeasuredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}

/// <summary>How far below the air's the pressure in one intake was.</summary>
public sealed class BalanceVacuum
{
    public required Guid RunId { get; init; }

    public required int Cylinder { get; init; }

    public required Pressure Vacuum { get; init; }
}
