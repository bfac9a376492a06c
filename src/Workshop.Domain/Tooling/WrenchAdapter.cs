namespace Workshop.Domain.Tooling;

public enum WrenchAdapterKind
{
    /// <summary>Open-ended or ring, beside the drive: changes the lever.</summary>
    OffsetAdapter,

    /// <summary>Straight along the axis of the drive: changes nothing.</summary>
    ExtensionBar,
}

/// <summary>What goes between a torque wrench and a fastener.</summary>
public sealed class WrenchAdapter
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    public required WrenchAdapterKind Kind { get; init; }

    /// <summary>From the centre of the drive to the centre of the fastener, in mm; 0 of a straight extension.</summary>
    public required decimal EffectiveLengthMm { get; set; }

    /// <summary>Of the end that goes over the fastener, in mm.</summary>
    public decimal? ThicknessMm { get; set; }

    /// <summary>The drive that it fits; see <see cref="Instrument.Drive"/>.</summary>
    public string? Drive { get; set; }

    /// <summary>The tool that it is: "10 mm ring".</summary>
    public required string Tool { get; set; }

    public bool Retired { get; set; }
}
