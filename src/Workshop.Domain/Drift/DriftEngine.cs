using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>One engine as the drift model sees it: what was read of every lobe, and where the engine stands.</summary>
/// <param name="EngineId">Which.</param>
/// <param name="Specification">The version whose limits hold for what comes.</param>
/// <param name="Lobes">Every lobe in order of valve, those never measured included.</param>
/// <param name="DoneNow">What it had done when its odometer was last read; absent where it never was.</param>
/// <param name="FirstCheckDue">See <see cref="EngineHistory.FirstCheckDue"/>.</param>
/// <param name="Aims">Clearances aimed at on a card, in mm, where they were others than the specification's.</param>
public sealed record DriftEngine(
    Guid EngineId,
    EngineSpecification Specification,
    IReadOnlyList<LobeHistory> Lobes,
    Distance? DoneNow,
    Distance? FirstCheckDue,
    IReadOnlyDictionary<(int Card, LobeKey Lobe), decimal> Aims)
{
    /// <summary>Builds the legs of every lobe from the rows of an engine.</summary>
    public static DriftEngine Of(Guid engineId, EngineSpecification specification, EngineHistory history, Distance? doneNow)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(history);
        return new DriftEngine(
            engineId,
            specification,
            [.. ReadingRules.LobesOf(specification).Select(lobe =>
                Legs.Of(history, lobe, ReadingRules.LimitsOf(specification, lobe).LeverRatio))],
            doneNow,
            history.FirstCheckDue,
            history.Aims);
    }

    /// <summary>The limits of a lobe.</summary>
    public ClearanceLimits LimitsOf(LobeKey lobe) => ReadingRules.LimitsOf(Specification, lobe);

    /// <summary>
    /// The lobe's legs for the model. A lobe never measured of an engine that is not far past its first check stands on a level
    /// that is new.
    /// </summary>
    internal IReadOnlyList<ModelLeg> LegsOf(LobeHistory history, SwapUncertainty uncertainty)
    {
        var lobe = history.Lobe;
        var limits = LimitsOf(lobe);
        var setTo = (double)limits.SetTo.Millimetres;
        var legs = ModelLegs.Of(
            history,
            limits.LeverRatio,
            uncertainty,
            card => card is { } number && Aims.TryGetValue((number, lobe), out var aim) ? (double)aim : setTo);
        return legs.Count == 0 && history.CutSinceLastReading is null && IsAsNew
            ? [new ModelLeg(1, LegStart.New, Distance.Zero, setTo, 0, [])]
            : legs;
    }

    private bool IsAsNew => DoneNow is { } now && FirstCheckDue is { } due && LegWalk.TellsOfNew(now, due);
}
