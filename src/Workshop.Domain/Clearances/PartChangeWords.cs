namespace Workshop.Domain.Clearances;

/// <summary>How parts and what was done to them are said on a page.</summary>
public static class PartChangeWords
{
    /// <summary>The part, in small letters.</summary>
    public static string Spoken(this ValvePart part) => part switch
    {
        ValvePart.Valve => "valve",
        ValvePart.Seat => "valve seat",
        ValvePart.Camshaft => "camshaft",
        ValvePart.Follower => "finger follower",
        ValvePart.Bucket => "bucket",
        ValvePart.CylinderHead => "cylinder head",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, null),
    };

    /// <summary>What was done, in small letters.</summary>
    public static string Spoken(this PartChangeKind kind) => kind switch
    {
        PartChangeKind.Replaced => "replaced",
        PartChangeKind.Ground => "ground",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
