namespace Workshop.Domain.Arrivals;

/// <summary>How what was seen on arrival is said.</summary>
public static class ArrivalWords
{
    public static string Spoken(this ArrivalKind kind) => kind switch
    {
        ArrivalKind.Complaint => "complaint",
        ArrivalKind.Leak => "leaks",
        ArrivalKind.Damage => "damage",
        ArrivalKind.Level => "fluid levels",
        ArrivalKind.Lamp => "warning lamps",
        ArrivalKind.Tyre => "tyres",
        ArrivalKind.FinalDrive => "chain",
        ArrivalKind.Fuel => "fuel",
        ArrivalKind.Left => "left with us",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public static string Spoken(this ArrivalSubject subject) => subject switch
    {
        ArrivalSubject.HardStarting => "hard starting",
        ArrivalSubject.Misfire => "misfire",
        ArrivalSubject.Noise => "noise",
        ArrivalSubject.LossOfPower => "loss of power",
        ArrivalSubject.Smoke => "smoke",
        ArrivalSubject.EngineOil => "engine oil",
        ArrivalSubject.Coolant => "coolant",
        ArrivalSubject.BrakeFluid => "brake fluid",
        ArrivalSubject.ForkOil => "fork oil",
        ArrivalSubject.Fuel => "fuel",
        ArrivalSubject.FinalDriveOil => "final drive oil",
        ArrivalSubject.Front => "front",
        ArrivalSubject.LeftSide => "left side",
        ArrivalSubject.RightSide => "right side",
        ArrivalSubject.Rear => "rear",
        ArrivalSubject.TankOrSeat => "tank or seat",
        ArrivalSubject.FrontBrake => "front brake",
        ArrivalSubject.RearBrake => "rear brake",
        ArrivalSubject.Clutch => "clutch",
        ArrivalSubject.EngineLamp => "engine lamp",
        ArrivalSubject.OilPressureLamp => "oil pressure lamp",
        ArrivalSubject.CoolantLamp => "coolant lamp",
        ArrivalSubject.BrakeLamp => "brake lamp",
        ArrivalSubject.ChargingLamp => "charging lamp",
        ArrivalSubject.FrontTyre => "front tyre",
        ArrivalSubject.RearTyre => "rear tyre",
        ArrivalSubject.Chain => "chain",
        ArrivalSubject.Keys => "keys",
        ArrivalSubject.Papers => "papers",
        ArrivalSubject.Luggage => "luggage",
        ArrivalSubject.Other => "other",
        _ => throw new ArgumentOutOfRangeException(nameof(subject), subject, null),
    };

    public static string Spoken(this ArrivalState state) => state switch
    {
        ArrivalState.Noted => "noted",
        ArrivalState.NoneSeen => "none seen",
        ArrivalState.Weeping => "weeping",
        ArrivalState.Dripping => "dripping",
        ArrivalState.AtMark => "at its mark",
        ArrivalState.Low => "low",
        ArrivalState.Over => "over its mark",
        ArrivalState.NotReadable => "not readable",
        ArrivalState.NotFitted => "has none",
        ArrivalState.Good => "good",
        ArrivalState.Worn => "worn",
        ArrivalState.Damaged => "damaged",
        ArrivalState.Slack => "slack",
        ArrivalState.Dry => "dry",
        ArrivalState.Reserve => "reserve",
        ArrivalState.Quarter => "a quarter",
        ArrivalState.Half => "half",
        ArrivalState.ThreeQuarters => "three quarters",
        ArrivalState.Full => "full",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };

    public static string Spoken(this ArrivalStage stage) => stage switch
    {
        ArrivalStage.OnArrival => "on arrival",
        ArrivalStage.DuringWork => "seen since the work was begun",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, null),
    };

    /// <summary>"engine oil, dripping: at the drain plug"; "none seen".</summary>
    /// <param name="subject">Absent where nothing of the kind was seen.</param>
    /// <param name="state">As noted.</param>
    /// <param name="words">What was said beside it.</param>
    public static string Say(ArrivalSubject? subject, ArrivalState state, string? words)
    {
        var what = subject is { } of ? state == ArrivalState.Noted ? of.Spoken() : $"{of.Spoken()} {state.Spoken()}" : state.Spoken();
        return string.IsNullOrWhiteSpace(words) ? what : $"{what}: {words}";
    }
}
