using Workshop.Domain.EngineModels;

namespace Workshop.Domain.TorqueSheets;

/// <summary>How a fastener's data are said on page and paper.</summary>
public static class FastenerWords
{
    /// <summary>What is done to the thread; always said, since the torque holds for that state only.</summary>
    public static string Spoken(this ThreadTreatment treatment) => treatment switch
    {
        ThreadTreatment.Dry => "dry",
        ThreadTreatment.Oiled => "oiled",
        ThreadTreatment.Locked => "locked",
        _ => throw new ArgumentOutOfRangeException(nameof(treatment), treatment, null),
    };

    /// <summary>What becomes of the old seal.</summary>
    public static string Spoken(this SealPolicy policy) => policy switch
    {
        SealPolicy.ReplaceAlways => "replace always",
        SealPolicy.InspectAndReuse => "inspect and reuse",
        SealPolicy.ReplaceIfDamaged => "replace if damaged",
        _ => throw new ArgumentOutOfRangeException(nameof(policy), policy, null),
    };

    /// <summary>How the fastener stands.</summary>
    public static string Spoken(this TickState state) => state switch
    {
        TickState.NotTightened => "not tightened yet",
        TickState.Tightened => "tightened",
        TickState.TakenBack => "tick taken back",
        TickState.OpenedAgain => "opened again since it was tightened",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };
}
