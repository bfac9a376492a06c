using NodaTime;
using Workshop.Domain.Statistics.Gauges;

namespace Workshop.Domain.Tooling;

/// <summary>A study of how well something is measured in this workshop: who measures which parts how often, with what.</summary>
public sealed class GaugeTrial
{
    public const int MostParts = 30;
    public const int MostAppraisers = 10;
    public const int MostTrials = 10;

    public required Guid Id { get; init; }

    /// <summary>What is studied: "shims by micrometer", "intake clearances, feeler set A".</summary>
    public required string Name { get; set; }

    public required GaugeDesign Design { get; init; }

    public Guid? InstrumentId { get; init; }

    /// <summary>Of every reading and of the tolerance.</summary>
    public required string Unit { get; init; }

    /// <summary>2 to <see cref="MostParts"/>; of each appraiser where they have parts of their own.</summary>
    public required int Parts { get; init; }

    /// <summary>Readings of one part by one appraiser, 2 to <see cref="MostTrials"/>.</summary>
    public required int Trials { get; init; }

    /// <summary>The width of what is allowed, upper less lower limit, above 0; absent where none is stated.</summary>
    public decimal? Tolerance { get; init; }

    public required Guid StartedBy { get; init; }

    public required Instant StartedAt { get; init; }

    /// <summary>It is not finished and will not be.</summary>
    public Instant? GivenUpAt { get; set; }
}

/// <summary>Somebody who measures in a study.</summary>
public sealed class GaugeTrialAppraiser
{
    public required Guid TrialId { get; init; }

    public required Guid PersonId { get; init; }

    /// <summary>From 1 on.</summary>
    public required int Place { get; init; }
}

/// <summary>One reading of a study. Only ever added; a correction supersedes with a reason.</summary>
public sealed class GaugeTrialReading
{
    public required Guid Id { get; init; }

    public required Guid TrialId { get; init; }

    public required Guid AppraiserId { get; init; }

    /// <summary>From 1 on.</summary>
    public required int Part { get; init; }

    /// <summary>From 1 on.</summary>
    public required int Trial { get; init; }

    /// <summary>In the study's unit.</summary>
    public required decimal Value { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }
}

/// <summary>A blade was held against a micrometer, or looked at. Only ever added; the last of a blade holds.</summary>
public sealed class BladeCheck
{
    public required Guid Id { get; init; }

    public required Guid BladeId { get; init; }

    /// <summary>As the micrometer reads it; absent where the blade was only looked at.</summary>
    public Measures.Clearance? Measured { get; init; }

    public Guid? MicrometerId { get; init; }

    /// <summary>Bent, worn or nicked: not offered any more.</summary>
    public required bool Withdrawn { get; init; }

    public Guid? RemarkId { get; init; }

    public required Guid CheckedBy { get; init; }

    public required Instant CheckedAt { get; init; }
}
