using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Motorcycles;

public sealed class Motorcycle
{
    public required Guid Id { get; init; }

    public required string Registration { get; set; }

    /// <summary>Vehicle identification number by ISO 3779, or what the frame shows when it is older than that.</summary>
    public string? Vin { get; set; }

    public required string Maker { get; set; }

    public required string Model { get; set; }

    public required int ModelYear { get; set; }

    public Guid? OwnerId { get; set; }

    public bool Retired { get; set; }

    /// <summary>How it is ridden, where its maker shortens intervals for that.</summary>
    public RidingUse Use { get; set; }

    /// <summary>Who said so last, and when; absent where nobody ever did.</summary>
    public Guid? UseSaidBy { get; set; }

    public Instant? UseSaidAt { get; set; }

    /// <summary>Codes of its engine model's options that are fitted.</summary>
    public string[] Options { get; set; } = [];
}

/// <summary>An engine outlives the frame that it is fitted to: readings, shims and changed parts belong to it.</summary>
public sealed class Engine
{
    public required Guid Id { get; init; }

    public required Guid EngineModelId { get; init; }

    public required string SerialNumber { get; set; }
}

/// <summary>An engine in a motorcycle from one day to another; a motorcycle has one engine at a time.</summary>
public sealed class EngineFitting
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    public required Guid MotorcycleId { get; init; }

    public required LocalDate FittedOn { get; init; }

    /// <summary>Half open: on this day it is no longer in.</summary>
    public LocalDate? RemovedOn { get; set; }

    /// <summary>What the motorcycle had done when the engine went in.</summary>
    public Distance MotorcycleDistance { get; init; }

    /// <summary>What the engine had done when it went in.</summary>
    public Distance EngineDistance { get; init; }

    /// <summary>What the engine has done when the motorcycle has done <paramref name="motorcycleDistance"/>.</summary>
    public Distance EngineDistanceAt(Distance motorcycleDistance) =>
        EngineDistance + (motorcycleDistance - MotorcycleDistance);

    /// <summary>The way back from <see cref="EngineDistanceAt"/>.</summary>
    public Distance MotorcycleDistanceAt(Distance engineDistance) =>
        MotorcycleDistance + (engineDistance - EngineDistance);
}

/// <summary>The instrument. A replaced one starts where its predecessor ended, by <see cref="Offset"/>.</summary>
public sealed class Odometer
{
    public required Guid Id { get; init; }

    public required Guid MotorcycleId { get; init; }

    public required OdometerUnit Unit { get; init; }

    public required LocalDate FittedOn { get; init; }

    public LocalDate? RemovedOn { get; set; }

    /// <summary>What the motorcycle had done when this instrument showed zero.</summary>
    public Distance Offset { get; init; }
}

/// <summary>One reading, as typed, with the motorcycle's distance beside it. Never changed; a correction supersedes it.</summary>
public sealed class OdometerReading
{
    public required Guid Id { get; init; }

    public required Guid OdometerId { get; init; }

    public required Guid MotorcycleId { get; init; }

    public required LocalDate ReadOn { get; init; }

    /// <summary>Whole units of the instrument, as typed.</summary>
    public required int Count { get; init; }

    public required OdometerUnit Unit { get; init; }

    /// <summary>What the motorcycle has done: the instrument's offset and the count, in metres.</summary>
    public required Distance Distance { get; init; }

    public int? JobCardNumber { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }

    /// <summary>It looked like a slip, and somebody said that it is right: earlier entries that it contradicts no longer count.</summary>
    public bool Confirmed { get; init; }

    public required Guid MeasuredBy { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }
}
