using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Arrivals;

/// <summary>What may be said of what, what stands, and what nobody has said yet: one statement for page, API and sign-off.</summary>
public static class ArrivalRules
{
    private static readonly ArrivalState[] Noted = [ArrivalState.Noted];
    private static readonly ArrivalState[] Leaks = [ArrivalState.Weeping, ArrivalState.Dripping];
    private static readonly ArrivalState[] Levels =
        [ArrivalState.AtMark, ArrivalState.Low, ArrivalState.Over, ArrivalState.NotReadable, ArrivalState.NotFitted];

    private static readonly ArrivalSubject[] Complaints =
        [ArrivalSubject.HardStarting, ArrivalSubject.Misfire, ArrivalSubject.Noise, ArrivalSubject.LossOfPower, ArrivalSubject.Smoke, ArrivalSubject.Other];

    private static readonly ArrivalSubject[] LevelSubjects =
        [ArrivalSubject.EngineOil, ArrivalSubject.Coolant, ArrivalSubject.FrontBrake, ArrivalSubject.RearBrake, ArrivalSubject.Clutch];

    /// <summary>Kinds of which it must be said that nothing was seen, where nothing was.</summary>
    public static readonly IReadOnlyList<ArrivalKind> LookedFor = [ArrivalKind.Leak, ArrivalKind.Damage, ArrivalKind.Lamp];

    /// <summary>What a kind is said of, in the order of a form.</summary>
    public static IReadOnlyList<ArrivalSubject> SubjectsOf(ArrivalKind kind) => kind switch
    {
        ArrivalKind.Complaint => Complaints,
        ArrivalKind.Leak =>
        [
            ArrivalSubject.EngineOil, ArrivalSubject.Coolant, ArrivalSubject.BrakeFluid, ArrivalSubject.ForkOil, ArrivalSubject.Fuel, ArrivalSubject.FinalDriveOil,
            ArrivalSubject.Other,
        ],
        ArrivalKind.Damage =>
            [ArrivalSubject.Front, ArrivalSubject.LeftSide, ArrivalSubject.RightSide, ArrivalSubject.Rear, ArrivalSubject.TankOrSeat, ArrivalSubject.Other],
        ArrivalKind.Level => LevelSubjects,
        ArrivalKind.Lamp =>
        [
            ArrivalSubject.EngineLamp, ArrivalSubject.OilPressureLamp, ArrivalSubject.CoolantLamp, ArrivalSubject.BrakeLamp, ArrivalSubject.ChargingLamp,
            ArrivalSubject.Other,
        ],
        ArrivalKind.Tyre => [ArrivalSubject.FrontTyre, ArrivalSubject.RearTyre],
        ArrivalKind.FinalDrive => [ArrivalSubject.Chain],
        ArrivalKind.Fuel => [ArrivalSubject.Fuel],
        ArrivalKind.Left => [ArrivalSubject.Keys, ArrivalSubject.Papers, ArrivalSubject.Luggage, ArrivalSubject.Other],
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>The states that a subject of a kind may be in.</summary>
    public static IReadOnlyList<ArrivalState> StatesOf(ArrivalKind kind) => kind switch
    {
        ArrivalKind.Complaint or ArrivalKind.Damage or ArrivalKind.Lamp or ArrivalKind.Left => Noted,
        ArrivalKind.Leak => Leaks,
        ArrivalKind.Level => Levels,
        ArrivalKind.Tyre => [ArrivalState.Good, ArrivalState.Worn, ArrivalState.Damaged],
        ArrivalKind.FinalDrive => [ArrivalState.Good, ArrivalState.Slack, ArrivalState.Dry, ArrivalState.Worn, ArrivalState.NotFitted],
        ArrivalKind.Fuel => [ArrivalState.Reserve, ArrivalState.Quarter, ArrivalState.Half, ArrivalState.ThreeQuarters, ArrivalState.Full],
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>
    /// Only one can stand of each subject: a level is at its mark or low. Leaks, damage and things left may be several of one
    /// subject, each in its own place.
    /// </summary>
    public static bool StandsOnce(ArrivalKind kind) => kind is not (ArrivalKind.Leak or ArrivalKind.Damage or ArrivalKind.Left);

    /// <summary>Without words nobody knows what is meant: where it leaks or is damaged, what the other thing is.</summary>
    public static bool WantsWords(ArrivalKind kind, ArrivalSubject? subject) =>
        subject is not null && (kind is ArrivalKind.Leak or ArrivalKind.Damage || subject == ArrivalSubject.Other);

    /// <summary>A complaint behind which lost compression may lie, so that compression is asked for.</summary>
    public static bool AsksForCompression(ArrivalNote note)
    {
        ArgumentNullException.ThrowIfNull(note);
        return note.Kind == ArrivalKind.Complaint && note.State == ArrivalState.Noted && note.Subject != ArrivalSubject.Other;
    }

    /// <summary>What stands: rows that no other takes the place of, and that say something.</summary>
    public static IReadOnlyList<ArrivalNote> Standing(IReadOnlyCollection<ArrivalNote> ofTheVisit)
    {
        ArgumentNullException.ThrowIfNull(ofTheVisit);
        var replaced = ofTheVisit.Select(n => n.SupersedesId).OfType<Guid>().ToHashSet();
        return [.. ofTheVisit.Where(n => !replaced.Contains(n.Id) && !n.Struck)
            .OrderBy(n => n.Kind).ThenBy(n => n.Subject).ThenBy(n => n.NotedAt).ThenBy(n => n.Id)];
    }

    /// <summary>
    /// The row that a new one takes the place of by itself: of the same subject where only one can stand, and at that stage "none seen"
    /// where something is seen after all. What was so on arrival stays beside what came since.
    /// </summary>
    public static ArrivalNote? TakesThePlaceOf(
        IReadOnlyCollection<ArrivalNote> ofTheVisit, ArrivalKind kind, ArrivalSubject? subject, ArrivalStage stage)
    {
        var standing = Standing(ofTheVisit).Where(n => n.Kind == kind && n.Stage == stage);
        return standing.FirstOrDefault(n => n.State == ArrivalState.NoneSeen ? subject is not null : StandsOnce(kind) && n.Subject == subject);
    }

    /// <summary>What does not go together in a row; nothing where all does.</summary>
    /// <param name="path">Of the row as the caller wrote it.</param>
    /// <param name="kind">As typed.</param>
    /// <param name="subject">As typed.</param>
    /// <param name="state">As typed.</param>
    /// <param name="hasWords">Something is said in words.</param>
    public static FieldFault? FaultOf(string path, ArrivalKind kind, ArrivalSubject? subject, ArrivalState state, bool hasWords)
    {
        if (state == ArrivalState.NoneSeen)
        {
            return !LookedFor.Contains(kind)
                ? new FieldFault($"{path}.state", $"{path}.state is \"{state.Spoken()}\": only of {string.Join(", ", LookedFor.Select(k => k.Spoken()))} can it be said that nothing was seen.")
                : subject is not null
                    ? new FieldFault($"{path}.subject", $"{path}.subject is \"{subject.Value.Spoken()}\", but nothing of the kind was seen: leave it out.")
                    : null;
        }

        var (subjects, states) = (SubjectsOf(kind), StatesOf(kind));
        return subject is not { } of
            ? new FieldFault($"{path}.subject", $"{path}.subject is empty: of {kind.Spoken()} one of {string.Join(", ", subjects.Select(s => s.Spoken()))} is allowed.")
            : !subjects.Contains(of)
            ? new FieldFault($"{path}.subject", $"{path}.subject is \"{of.Spoken()}\": of {kind.Spoken()} one of {string.Join(", ", subjects.Select(s => s.Spoken()))} is allowed.")
            : !states.Contains(state)
            ? new FieldFault($"{path}.state", $"{path}.state is \"{state.Spoken()}\": of {kind.Spoken()} one of {string.Join(", ", states.Select(s => s.Spoken()))} is allowed.")
            : WantsWords(kind, subject) && !hasWords
            ? new FieldFault($"{path}.words", $"{path}.words is empty: say in words {(subject == ArrivalSubject.Other ? "what it is" : "where it is, or choose one of the usual places")}.")
            : null;
    }

    /// <summary>
    /// What nobody has said of an arrival yet, in words: whether leaks, damage and lamps were seen, and every level. Empty where the
    /// state on arrival is recorded whole.
    /// </summary>
    public static IReadOnlyList<string> Missing(IReadOnlyCollection<ArrivalNote> ofTheVisit)
    {
        var standing = Standing(ofTheVisit);
        return
        [
            .. LookedFor.Where(k => standing.All(n => n.Kind != k)).Select(k => $"{k.Spoken()}, or that none was seen"),
            .. LevelSubjects.Where(s => !standing.Any(n => n.Kind == ArrivalKind.Level && n.Subject == s)).Select(s => $"level of the {s.Spoken()}"),
        ];
    }
}
