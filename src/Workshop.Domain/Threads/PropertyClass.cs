using System.Diagnostics.CodeAnalysis;

namespace Workshop.Domain.Threads;

/// <summary>
/// Property class of a steel bolt by ISO 898-1, for nominal diameters up to 16 mm: the marks on its head. 8.8, 10.9 and 12.9 as
/// printed in public tables; the others from memory.
/// </summary>
/// <param name="Name">As it is marked: "8.8".</param>
/// <param name="ProofStressMpa">Stress under proof load Sp.</param>
/// <param name="YieldMpa">Smallest 0.2 % proof strength Rp0.2, or yield point of the lower classes.</param>
/// <param name="TensileMpa">Smallest tensile strength Rm.</param>
public sealed record PropertyClass(string Name, double ProofStressMpa, double YieldMpa, double TensileMpa)
{
    /// <summary>Above this nominal diameter ISO 898-1 states other figures of class 8.8, which are not kept here.</summary>
    public const double LargestDiameterMm = 16;

    /// <summary>From the weakest to the strongest.</summary>
    public static IReadOnlyList<PropertyClass> All { get; } =
    [
        new("4.6", 225, 240, 400), new("4.8", 310, 340, 420), new("5.6", 280, 300, 500), new("5.8", 380, 420, 520),
        new("6.8", 440, 480, 600), new("8.8", 580, 640, 800), new("9.8", 650, 720, 900), new("10.9", 830, 940, 1040),
        new("12.9", 970, 1100, 1220),
    ];

    /// <summary>The names, for a sentence that says what is allowed.</summary>
    public static string Names { get; } = string.Join(", ", All.Select(c => c.Name));

    /// <summary>The class of a name; nothing where ISO 898-1 has no such class.</summary>
    public static bool TryFind(string? name, [NotNullWhen(true)] out PropertyClass? found) =>
        (found = All.FirstOrDefault(c => c.Name == name)) is not null;

    /// <summary>Proof load in N: stress under proof load times stress area.</summary>
    public double ProofLoadN(MetricThread thread) => ProofStressMpa * Area(thread);

    /// <summary>Smallest ultimate tensile load in N.</summary>
    public double UltimateLoadN(MetricThread thread) => TensileMpa * Area(thread);

    private static double Area(MetricThread thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return thread.StressAreaMm2;
    }
}
