using System.Text.Json.Serialization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>What has to be out of the way: opened and closed once a visit, however many items need it.</summary>
/// <param name="Minutes">Labour of opening and closing together.</param>
/// <param name="Joints">Joints opened on the way.</param>
/// <param name="Fasteners">Fasteners opened on the way that belong to no joint.</param>
public sealed record Access(
    string Code, string Name, int Minutes, IReadOnlyList<string> Joints, IReadOnlyList<string> Fasteners);

/// <summary>What fasteners hold together: opened as a whole, its seals and sealant counted once.</summary>
public sealed record Joint(
    string Code,
    string Name,
    IReadOnlyList<string> Fasteners,
    IReadOnlyList<Seal> Seals,
    Sealant? Sealant = null);

public sealed record Sealant(string PartCode, decimal Quantity, int CureMinutes);

/// <param name="PartCode">The stores' code of the seal.</param>
/// <param name="Quantity">For the whole joint, or for all of a fastener's <c>Count</c> together.</param>
/// <param name="ReuseAllowedBy">
/// Where the maker says that a seal which is usually fitted once, such as a crush ring, may be fitted again: document and page.
/// Without it, what the stores know as fitted once is replaced whatever <paramref name="Policy"/> says.
/// </param>
public sealed record Seal(string PartCode, decimal Quantity, SealPolicy Policy, string? ReuseAllowedBy = null)
{
    /// <summary>What is done with it here, once it is known what the stores say of the part.</summary>
    /// <param name="fastenerUsedOnce">It belongs to a fastener that is used once.</param>
    /// <param name="part">What the stores know of it; absent where they know nothing.</param>
    public SealPolicy PolicyFor(bool fastenerUsedOnce, Stores.Part? part) =>
        fastenerUsedOnce || IsNeverFittedTwice(part) ? SealPolicy.ReplaceAlways : Policy;

    /// <summary>The stores know the part as fitted once, and the maker does not allow it again.</summary>
    public bool IsNeverFittedTwice(Stores.Part? part) => part is { FittedOnce: true } && string.IsNullOrWhiteSpace(ReuseAllowedBy);
}

public enum SealPolicy
{
    /// <summary>Crush washers, use-once bolts: never fitted twice.</summary>
    ReplaceAlways,

    /// <summary>Reused only when an inspection is recorded.</summary>
    InspectAndReuse,

    /// <summary>On the bench as "have ready", taken only when the old one is damaged.</summary>
    ReplaceIfDamaged,
}

public enum ThreadTreatment
{
    Dry,
    Oiled,
    Locked,
}

/// <summary>What the thread is cut through, as far as bounds of its torque go.</summary>
public enum FastenerForm
{
    /// <summary>A bolt or screw of one piece, loaded up to its head.</summary>
    SolidBolt,

    /// <summary>A nut on a stud or bolt; the class is that of the stud.</summary>
    Nut,

    /// <summary>A bolt with a hole along it, or with a shoulder or waist.</summary>
    HollowOrShouldered,

    /// <summary>Closes or carries something and holds nothing together: drain plugs, spark plugs, caps.</summary>
    Plug,
}

public enum ThreadMaterial
{
    Steel,
    LightAlloy,
    Plastic,
}

/// <summary>What the fastener is turned into.</summary>
/// <param name="EngagementMm">Length over which the threads engage, where it is known.</param>
/// <param name="ShearStrengthMpa">Of that material, where it is known.</param>
public sealed record ReceivingThread(ThreadMaterial Material, decimal? EngagementMm = null, decimal? ShearStrengthMpa = null);

/// <param name="Count">How many alike; they are torqued in the pattern's order.</param>
/// <param name="Thread">Designation by ISO 261 and ISO 965-1: "M6x1".</param>
/// <param name="Torque">Final torque with the thread treated as stated.</param>
public sealed record Fastener(
    string Code,
    string Name,
    int Count,
    string Thread,
    [property: JsonPropertyName("torqueNm")] Torque Torque,
    ThreadTreatment Treatment,
    string Tool,
    Provenance Provenance)
{
    /// <summary>The stages before the final torque, in order.</summary>
    [JsonPropertyName("stagesNm")]
    public IReadOnlyList<Torque> Stages { get; init; } = [];

    /// <summary>The lowest final torque that the maker allows, where a range is stated; given with the highest, or neither is.</summary>
    [JsonPropertyName("torqueLowestNm")]
    public Torque? TorqueLowest { get; init; }

    [JsonPropertyName("torqueHighestNm")]
    public Torque? TorqueHighest { get; init; }

    /// <summary>Angle stage after the torque, where there is one.</summary>
    public decimal? AngleDegrees { get; init; }

    /// <summary>So many degrees more or less are allowed at the angle stage.</summary>
    public decimal? AngleToleranceDegrees { get; init; }

    /// <summary>Order among the joint's fasteners or the pattern in words.</summary>
    public string? Sequence { get; init; }

    /// <summary>Where the alike ones lie, in the order in which each round goes over them.</summary>
    public FastenerPattern? Pattern { get; init; }

    /// <summary>
    /// What is free over the head, in mm, where no socket goes on: what fits over it is at most so thick. Absent: there is room for a
    /// socket.
    /// </summary>
    public decimal? SpaceOverMm { get; init; }

    public IReadOnlyList<Seal> Seals { get; init; } = [];

    /// <summary>Replaced each time it is opened; its part stands among the seals.</summary>
    public bool UseOnce { get; init; }

    public string? ThreadCompound { get; init; }

    /// <summary>Property class by ISO 898-1, as marked on the head: "8.8". Absent where nobody knows it.</summary>
    public string? PropertyClass { get; init; }

    public FastenerForm? Form { get; init; }

    /// <summary>Absent where nobody knows it.</summary>
    public ReceivingThread? Into { get; init; }

    public string? Note { get; init; }
}

/// <summary>A drawing of the alike fasteners of one cover or row.</summary>
/// <param name="SeenFrom">The side from which the drawing is seen: "above, the front wheel to the left".</param>
/// <param name="Places">In the order of tightening; as many as there are alike.</param>
public sealed record FastenerPattern(string SeenFrom, IReadOnlyList<PatternPlace> Places);

/// <summary>One fastener of a pattern. Only proportions count: a millimetre, or a square of the paper it was read from.</summary>
/// <param name="Across">From the left edge, 0 to 1000.</param>
/// <param name="Up">From the lower edge, 0 to 1000.</param>
/// <param name="Mark">What is cast or written beside it, if anything.</param>
public sealed record PatternPlace(decimal Across, decimal Up, string? Mark = null)
{
    public const decimal Largest = 1000;
}
