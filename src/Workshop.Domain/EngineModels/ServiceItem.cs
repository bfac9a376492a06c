using Workshop.Domain.Bookings;

namespace Workshop.Domain.EngineModels;

public enum ServiceItemKind
{
    /// <summary>Nothing but its parts and fasteners.</summary>
    Routine,

    /// <summary>Every valve is measured as found.</summary>
    ValveClearanceCheck,

    /// <summary>Shims are changed or screws turned; booked as likely or possible beside its check.</summary>
    ValveClearanceAdjustment,

    CamTimingCheck,
}

/// <summary>One thing done at an interval.</summary>
/// <param name="LabourMinutes">Beyond the accesses that it needs.</param>
public sealed record ServiceItem(
    string Code,
    string Name,
    ServiceItemKind Kind,
    int LabourMinutes,
    Provenance Provenance)
{
    /// <summary>Absent for what is done only when needed, such as an adjustment.</summary>
    public ServiceInterval? Interval { get; init; }

    /// <summary>Absent where every motorcycle with this engine model has it.</summary>
    public Applicability? OnlyFor { get; init; }

    /// <summary>Service items, by code, that are done with this one: the big service contains the small one.</summary>
    public IReadOnlyList<string> Includes { get; init; } = [];

    public IReadOnlyList<string> Accesses { get; init; } = [];

    public IReadOnlyList<string> Joints { get; init; } = [];

    public IReadOnlyList<string> Fasteners { get; init; } = [];

    public IReadOnlyList<ItemPart> Parts { get; init; } = [];

    /// <summary>The adjustment that may follow from this check.</summary>
    public string? AdjustmentItem { get; init; }

    public IReadOnlyList<string> Skills { get; init; } = [];

    /// <summary>The lowest grade of technician who may do it alone.</summary>
    public TechnicianGrade Grade { get; init; } = TechnicianGrade.Apprentice;

    public IReadOnlyList<string> SpecialTools { get; init; } = [];

    /// <summary>What the bay must have: "lift", "exhaust extraction".</summary>
    public IReadOnlyList<string> BayCapabilities { get; init; } = [];

    /// <summary>Begun on arrival while the engine is warm, where a cold soak follows: an oil drain.</summary>
    public bool DrainsWarm { get; init; }

    /// <summary>Cautions by code, shown at the moment of danger; see <c>JobCards.Cautions</c>.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}

/// <param name="Quantity">In the part's own unit.</param>
/// <param name="HaveReady">On the bench, taken only when needed.</param>
public sealed record ItemPart(string PartCode, decimal Quantity, bool HaveReady = false);
