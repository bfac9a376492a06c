namespace Workshop.Domain.Clearances;

/// <summary>How stages, brackets and events are said on a page and in a sentence.</summary>
public static class ClearanceWords
{
    /// <summary>"as found", "as left".</summary>
    public static string Spoken(this Stage stage) => stage switch
    {
        Stage.AsFound => "as found",
        Stage.AsLeft => "as left",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, null),
    };

    /// <summary>What the blades said, in a few words.</summary>
    public static string Spoken(this BracketKind kind) => kind switch
    {
        BracketKind.GoAndNoGo => "go and no-go",
        BracketKind.NoneEnters => "none enters",
        BracketKind.ThickestIsLoose => "thickest is loose",
        BracketKind.NextNotTried => "next not tried",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>"within limits", "too tight", "too wide", "not decided by the blades that were tried".</summary>
    public static string Spoken(this Verdict verdict) => verdict switch
    {
        Verdict.Within => "within limits",
        Verdict.TooTight => "too tight",
        Verdict.TooWide => "too wide",
        Verdict.NotDecided => "not decided by the blades that were tried",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, null),
    };

    /// <summary>What was done to a valve, in a few words.</summary>
    public static string Spoken(this ValveEventKind kind) => kind switch
    {
        ValveEventKind.ScrewTurned => "screw turned",
        ValveEventKind.ChangeUnknown => "changed or not is unknown",
        ValveEventKind.NotDisturbed => "not disturbed",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
