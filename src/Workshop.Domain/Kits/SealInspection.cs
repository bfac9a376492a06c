using NodaTime;

namespace Workshop.Domain.Kits;

/// <summary>What the inspection of an old seal says.</summary>
public enum SealVerdict
{
    /// <summary>Goes back in.</summary>
    Fit,

    /// <summary>A new one is taken.</summary>
    Replaced,
}

/// <summary>
/// Somebody looked at an old seal and said whether it goes back in. Only ever added; a later one of the same seal supersedes.
/// </summary>
public sealed class SealInspection
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>Code of the joint or fastener that it seals.</summary>
    public required string PlaceCode { get; init; }

    /// <summary>As the specification names it.</summary>
    public required string PartCode { get; init; }

    public required SealVerdict Verdict { get; init; }

    /// <summary>How many new ones were taken, in the part's unit; 0 where all go back in.</summary>
    public required decimal Taken { get; init; }

    public Guid? RemarkId { get; init; }

    public Guid? SupersedesId { get; init; }

    public required Guid InspectedBy { get; init; }

    public required Instant InspectedAt { get; init; }
}

/// <summary>On this card an alternative stands in for a part of the kit. Only ever added; the last of a part holds.</summary>
public sealed class KitSubstitution
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>As the specification names it.</summary>
    public required string PartCode { get; init; }

    /// <summary>What is taken instead; the part itself again where a substitution is taken back.</summary>
    public required Guid InsteadId { get; init; }

    public Guid? ReasonRemarkId { get; init; }

    public required Guid ChosenBy { get; init; }

    public required Instant ChosenAt { get; init; }
}
