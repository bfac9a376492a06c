using Workshop.Domain.Stores;

namespace Workshop.Domain.Kits;

/// <summary>How the inspection of a seal is said.</summary>
public static class SealWords
{
    /// <summary>"fit, goes back in", "replaced, 2 new".</summary>
    public static string Spoken(this SealVerdict verdict, decimal taken, PartUnit unit = PartUnit.Piece) => verdict switch
    {
        SealVerdict.Fit => "fit, goes back in",
        SealVerdict.Replaced => $"replaced, {unit.Say(taken)} new",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, null),
    };
}
