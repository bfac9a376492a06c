using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Bookings;

/// <summary>What may be entered about a bay, a technician, a special tool or a parking place.</summary>
public static class ResourceRules
{
    /// <summary>Longest text of one capability.</summary>
    public const int LongestCapability = 60;

    /// <summary>Most capabilities of one resource.</summary>
    public const int MostCapabilities = 40;

    /// <summary>
    /// Each once, without blanks around it, in order of the alphabet; a comma parts two, so that one field of a form holds all.
    /// </summary>
    public static IReadOnlyList<string> Clean(IEnumerable<string?> capabilities)
    {
        ArgumentNullException.ThrowIfNull(capabilities);
        return capabilities
            .SelectMany(c => (c ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray();
    }

    /// <summary>What is wrong with the capabilities of a resource of that kind; nothing where they may be entered.</summary>
    /// <param name="clean">As <see cref="Clean"/> left them.</param>
    public static FieldFault? CapabilityFault(ResourceKind kind, IReadOnlyList<string> clean)
    {
        ArgumentNullException.ThrowIfNull(clean);
        return kind switch
        {
            _ when clean.Count > MostCapabilities => new FieldFault("capabilities",
                $"capabilities holds {clean.Count}: at most {MostCapabilities} are allowed."),
            _ when clean.FirstOrDefault(c => c.Length > LongestCapability) is { } wordy => new FieldFault("capabilities",
                $"capabilities holds \"{wordy[..LongestCapability]}…\" of {wordy.Length} characters: at most {LongestCapability} are allowed."),
            ResourceKind.SpecialTool when clean.Count == 0 => new FieldFault("capabilities",
                "capabilities is empty: give the code by which service items ask for the tool; copies of a tool have the same code."),
            _ => null,
        };
    }

    /// <summary>The reasons for which a resource of that kind is away.</summary>
    public static IReadOnlyList<AbsenceReason> Reasons(ResourceKind kind) => kind switch
    {
        ResourceKind.Technician => [AbsenceReason.Leave, AbsenceReason.Training, AbsenceReason.OtherAbsence],
        ResourceKind.SpecialTool => [AbsenceReason.Repair, AbsenceReason.Calibration, AbsenceReason.LentOut],
        ResourceKind.Bay or ResourceKind.ParkingPlace => [AbsenceReason.Repair, AbsenceReason.LentOut],
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
