namespace Workshop.Domain.Finishing;

/// <summary>How what follows the work is said.</summary>
public static class FinishingWords
{
    public static string Spoken(this HotPart part) => part switch
    {
        HotPart.Coolant => "coolant",
        HotPart.Oil => "oil",
        HotPart.CylinderHead => "cylinder head",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, null),
    };

    public static string Spoken(this LeakState state) => state switch
    {
        LeakState.Dry => "dry",
        LeakState.Weeping => "weeping",
        LeakState.Leaking => "leaking",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };

    public static string Spoken(this WhyNotRidden why) => why switch
    {
        WhyNotRidden.NoPlate => "no plate",
        WhyNotRidden.NotInsured => "not insured for it",
        WhyNotRidden.Weather => "the weather",
        WhyNotRidden.OwnersWish => "the owner's wish",
        WhyNotRidden.NotRoadworthy => "not roadworthy",
        WhyNotRidden.Other => "another reason",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, null),
    };

    public static string Spoken(this ReminderOutcome outcome) => outcome switch
    {
        ReminderOutcome.Reset => "reset",
        ReminderOutcome.HasNone => "the instruments have none",
        ReminderOutcome.NotReset => "not reset",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, null),
    };

    public static string Spoken(this CountWay way) => way == CountWay.WentIn ? "went in" : "came back";
}
