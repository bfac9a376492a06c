using Workshop.Domain.Measures;

namespace Workshop.Domain.Clearances;

/// <summary>What the blades said.</summary>
public enum BracketKind
{
    /// <summary>One enters with light drag, the next one tried does not.</summary>
    GoAndNoGo,

    /// <summary>Not even the thinnest blade enters: the clearance is below the no-go, go is open.</summary>
    NoneEnters,

    /// <summary>The thickest blade still goes loosely: the clearance is at least the go, no-go is open.</summary>
    ThickestIsLoose,

    /// <summary>One enters; the next was not tried: no-go is open.</summary>
    NextNotTried,
}

/// <summary>
/// A feeler blade does not measure a clearance, it brackets it: go is at most the clearance, no-go is above it. Either end
/// may be open, never both, and no-go is greater than go.
/// </summary>
public readonly record struct Bracket
{
    private Bracket(BracketKind kind, Clearance? go, Clearance? noGo, bool stacked) =>
        (Kind, Go, NoGo, Stacked) = (kind, go, noGo, stacked);

    public BracketKind Kind { get; }

    /// <summary>The thickest blade that enters.</summary>
    public Clearance? Go { get; }

    /// <summary>The thinnest blade tried that does not.</summary>
    public Clearance? NoGo { get; }

    /// <summary>Two blades were stacked to make one of the ends; more uncertainty.</summary>
    public bool Stacked { get; }

    /// <summary>The middle, where both ends are closed.</summary>
    public decimal? MiddleMm => Go is { } go && NoGo is { } noGo ? (go.Millimetres + noGo.Millimetres) / 2 : null;

    /// <summary>A bracket of ends that suit its kind; ask <see cref="FaultOf"/> first about ends as typed.</summary>
    /// <exception cref="ArgumentException">The ends do not suit the kind, or no-go is not greater than go.</exception>
    public static Bracket Of(BracketKind kind, Clearance? go, Clearance? noGo, bool stacked = false) =>
        FaultOf(kind, go?.Millimetres, noGo?.Millimetres) is { } fault
            ? throw new ArgumentException(fault.Sentence)
            : new Bracket(kind, go, noGo, stacked);

    /// <summary>
    /// What is wrong with two ends as typed, or nothing: the one statement of the rule, for the page, the API and the
    /// import alike. <c>Field</c> is "go" or "noGo".
    /// </summary>
    public static (string Field, string Sentence)? FaultOf(BracketKind kind, decimal? goMm, decimal? noGoMm) =>
        (kind, goMm, noGoMm) switch
        {
            (BracketKind.NoneEnters, not null, _) => ("go", $"Go is {goMm} mm, but none enters: leave it empty."),
            (BracketKind.NoneEnters, null, null) => ("noGo", "No-go is empty: give the thinnest blade, which did not enter."),
            (BracketKind.NoneEnters, null, _) => null,
            (BracketKind.ThickestIsLoose or BracketKind.NextNotTried, _, not null) =>
                ("noGo", $"No-go is {noGoMm} mm, but no thicker blade was tried: leave it empty."),
            (_, null, _) => ("go", "Go is empty: give the thickest blade that enters."),
            (BracketKind.ThickestIsLoose or BracketKind.NextNotTried, _, null) => null,
            (_, _, null) => ("noGo", "No-go is empty: give the thinnest blade that does not enter."),
            (_, { } go, { } noGo) when noGo <= go =>
                ("noGo", $"No-go is {noGo} mm: it must be greater than go, which is {go} mm."),
            _ => null,
        };

    public override string ToString() => this switch
    {
        { Go: { } go, NoGo: { } noGo } => $"{go.Millimetres:0.00##} to {noGo.Millimetres:0.00##} mm",
        { Go: { } go } => $"{go.Millimetres:0.00##} mm or more",
        { NoGo: { } noGo } => $"below {noGo.Millimetres:0.00##} mm",
        _ => "nothing",
    };
}
