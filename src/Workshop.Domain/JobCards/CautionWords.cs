namespace Workshop.Domain.JobCards;

/// <summary>How the stages of cautions are headed on a page.</summary>
public static class CautionWords
{
    /// <summary>Every stage, in the order of a visit.</summary>
    public static readonly IReadOnlyList<(CautionStage Stage, string Name)> Stages =
        [.. Enum.GetValues<CautionStage>().Order().Select(s => (s, s.Spoken()))];

    /// <summary>The moment, in words.</summary>
    public static string Spoken(this CautionStage stage) => stage switch
    {
        CautionStage.BeforeCovers => "Before the covers come off",
        CautionStage.AtFluids => "Before a fluid is drained",
        CautionStage.BeforeMeasuring => "Before measuring",
        CautionStage.AtAdjustment => "Before a shaft, shim or screw is moved",
        CautionStage.OnRefitting => "As shafts and caps go back",
        CautionStage.AsLeft => "Before the readings as left",
        CautionStage.BeforeClosing => "Before the covers are closed",
        CautionStage.BeforeStart => "Before the engine is started",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, null),
    };

    /// <summary>One heading over several stages.</summary>
    public static string Heading(IReadOnlyList<CautionStage> stages)
    {
        ArgumentNullException.ThrowIfNull(stages);
        return stages is [var only] ? only.Spoken() : "Cautions";
    }
}
