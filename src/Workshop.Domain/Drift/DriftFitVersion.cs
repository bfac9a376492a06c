using NodaTime;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Drift;

/// <summary>A fit of an engine model as it was worked out: only ever added, the highest version counts.</summary>
public sealed class DriftFitVersion
{
    public required Guid EngineModelId { get; init; }

    /// <summary>1, 2, 3 ... of the engine model.</summary>
    public required int Version { get; init; }

    public required Instant ComputedAt { get; init; }

    public required int Readings { get; init; }

    public double? LogLikelihood { get; init; }

    /// <summary>Absent where there is no fit; then <see cref="WhyNot"/> says why.</summary>
    public DriftFit? Fit { get; init; }

    public string? WhyNot { get; init; }
}

/// <summary>What all models of a valve-train kind show, as it was worked out: only ever added, the highest version counts.</summary>
public sealed class DriftPoolVersion
{
    public required ValveTrainKind Kind { get; init; }

    public required int Version { get; init; }

    public required Instant ComputedAt { get; init; }

    /// <summary>Readings of the kind when it was worked out, by which it is known to have aged.</summary>
    public required int Readings { get; init; }

    /// <summary>Absent where nothing can be pooled.</summary>
    public DriftPool? Pool { get; init; }
}

/// <summary>
/// Where the refit of an engine model stands: what was asked for, what is under way and how far it is. One row a model, which a
/// worker that was killed takes up again.
/// </summary>
public sealed class DriftRefit
{
    public required Guid EngineModelId { get; init; }

    /// <summary>When readings changed last.</summary>
    public required Instant RequestedAt { get; set; }

    /// <summary>When the first of the changes came that no fit has seen; absent where every one was.</summary>
    public Instant? WantedSince { get; set; }

    /// <summary>When the fit began that is under way, or was last.</summary>
    public Instant? StartedAt { get; set; }

    /// <summary>The version whose forecasts are being written, or were last; absent while it is being fitted.</summary>
    public int? FitVersion { get; set; }

    /// <summary>Engines of the model.</summary>
    public int Engines { get; set; }

    /// <summary>Engines whose forecasts rest on it already.</summary>
    public int EnginesWritten { get; set; }

    /// <summary>The last of them, in order of id.</summary>
    public Guid? LastEngine { get; set; }

    /// <summary>When all was done; absent while it is under way.</summary>
    public Instant? FinishedAt { get; set; }

    /// <summary>It was begun and is not at its end.</summary>
    public bool UnderWay => StartedAt is not null && FinishedAt is null;
}

/// <summary>
/// A visit left out of the fits on a person's word, or taken in again: only ever added, the last one of a visit counts.
/// </summary>
public sealed class LeftOutVisit
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    /// <summary>Absent for old worksheets; then the odometer reading names the visit.</summary>
    public int? JobCardNumber { get; init; }

    public required Guid OdometerReadingId { get; init; }

    /// <summary>Left out; taken in again where not.</summary>
    public required bool LeftOut { get; init; }

    public required Guid ReasonRemarkId { get; init; }

    public required Guid DecidedBy { get; init; }

    public required Instant DecidedAt { get; init; }
}
