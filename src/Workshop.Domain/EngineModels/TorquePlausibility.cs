using System.Globalization;
using Workshop.Domain.Threads;

namespace Workshop.Domain.EngineModels;

/// <summary>How a stated torque lies beside what its thread can bear.</summary>
public enum TorqueVerdict
{
    /// <summary>Nothing can be said; the sentence says why.</summary>
    NoCheck,

    /// <summary>So low that a decimal sign or a unit may have slipped.</summary>
    Slip,

    BelowUsual,
    Usual,
    AboveUsual,

    /// <summary>The limit is passed where the friction is low.</summary>
    MayExceed,

    /// <summary>The limit is passed whatever the friction.</summary>
    Exceeds,
}

/// <summary>
/// A torque beside the bounds of its thread. It is only ever asked back: the maker's figure stands. Bounds hold for solid steel bolts
/// and studs in steel; in light alloy the inner thread's own figures are needed.
/// </summary>
/// <param name="Sentence">For page and paper, without full stop.</param>
/// <param name="Bounds">Absent where no check is available.</param>
public sealed record TorquePlausibility(TorqueVerdict Verdict, string Sentence, ThreadBounds? Bounds)
{
    /// <summary>Somebody should look at the document again.</summary>
    public bool IsAbsurd => Verdict is TorqueVerdict.Slip or TorqueVerdict.Exceeds;

    public static TorquePlausibility Of(Fastener fastener)
    {
        ArgumentNullException.ThrowIfNull(fastener);
        if (ReasonAgainst(fastener, out var thread, out var steel) is { } reason)
        {
            return new TorquePlausibility(TorqueVerdict.NoCheck, $"no check available: {reason}", null);
        }

        WeakerThread? weaker = fastener.Into is { Material: ThreadMaterial.LightAlloy, EngagementMm: { } length, ShearStrengthMpa: { } strength }
            ? new WeakerThread((double)length, (double)strength)
            : null;
        var bounds = ThreadBounds.Of(thread!, steel!, FrictionOf(fastener.Treatment), weaker);
        var verdict = Judge((double)fastener.Torque.NewtonMetres, bounds, fastener.AngleDegrees is not null);
        return new TorquePlausibility(verdict, Say(verdict, bounds, fastener), bounds);
    }

    /// <summary>Why nothing can be said; nothing where it can.</summary>
    private static string? ReasonAgainst(Fastener fastener, out MetricThread? thread, out PropertyClass? steel)
    {
        steel = null;
        if (!MetricThread.TryParse(fastener.Thread, out thread))
        {
            return "the thread is not read";
        }

        return fastener.Form switch
        {
            null => "solid bolt or not is not stated",
            FastenerForm.Plug => "a plug is tightened to its seal, not to a bolt's strength",
            FastenerForm.HollowOrShouldered => "the bounds hold for solid bolts only",
            _ when !PropertyClass.TryFind(fastener.PropertyClass, out steel) => "its property class is not stated",
            _ when thread.DiameterMm > PropertyClass.LargestDiameterMm || !Tightening.Knows(thread) =>
                string.Create(CultureInfo.InvariantCulture, $"the head of an M{thread.DiameterMm:0.##} bolt is not in the tables here"),
            _ => fastener.Into switch
            {
                null => "what it is turned into is not stated",
                { Material: ThreadMaterial.Steel } => null,
                { Material: ThreadMaterial.LightAlloy, EngagementMm: not null, ShearStrengthMpa: not null } => null,
                { Material: ThreadMaterial.LightAlloy } => "engagement and strength of the light alloy's thread, which is the weaker one, are not stated",
                _ => "the thread in plastic is the weaker one",
            },
        };
    }

    private static FrictionSpan FrictionOf(ThreadTreatment treatment) => treatment switch
    {
        ThreadTreatment.Dry => FrictionSpan.Dry,
        ThreadTreatment.Oiled => FrictionSpan.Oiled,
        ThreadTreatment.Locked => FrictionSpan.Locked,
        _ => throw new ArgumentOutOfRangeException(nameof(treatment), treatment, null),
    };

    /// <param name="hasAngle">What is turned further by angle begins with a low torque.</param>
    private static TorqueVerdict Judge(double nm, ThreadBounds bounds, bool hasAngle) =>
        nm > bounds.ExceedsLimitNm ? TorqueVerdict.Exceeds
        : nm > bounds.UsualToNm && nm > bounds.ReachesLimitFromNm ? TorqueVerdict.MayExceed
        : nm > bounds.UsualToNm ? TorqueVerdict.AboveUsual
        : nm >= bounds.UsualFromNm ? TorqueVerdict.Usual
        : nm >= bounds.SlipBelowNm || hasAngle ? TorqueVerdict.BelowUsual
        : TorqueVerdict.Slip;

    private static string Say(TorqueVerdict verdict, ThreadBounds bounds, Fastener fastener)
    {
        var bolt = fastener.Form == FastenerForm.Nut ? $"a stud {fastener.Thread} of class" : $"a bolt {fastener.Thread} of class";
        var limit = bounds.StripsFirst ? "the light alloy's thread would strip" : "it would exceed the proof load";
        var usual = $"usual span {Nm(bounds.UsualFromNm)} to {Nm(bounds.UsualToNm)} N.m for {bolt} {fastener.PropertyClass}, {TorqueSheets.FastenerWords.Spoken(fastener.Treatment)}";
        var beside = verdict switch
        {
            TorqueVerdict.Slip => "this is less than a quarter of it: has a decimal sign or a unit slipped",
            TorqueVerdict.BelowUsual => "this is below it, as makers often state for covers and soft gaskets",
            TorqueVerdict.Usual => "this is within it",
            TorqueVerdict.AboveUsual => "this is above it",
            TorqueVerdict.MayExceed => $"with little friction {limit} from {Nm(bounds.ReachesLimitFromNm)} N.m on",
            TorqueVerdict.Exceeds => $"above {Nm(bounds.ExceedsLimitNm)} N.m {limit} whatever the friction",
            _ => throw new InvalidOperationException($"{verdict} has no words."),
        };
        return fastener.AngleDegrees is null ? $"{usual}; {beside}" : $"{usual}; {beside}; the angle after it is not judged";
    }

    private static string Nm(double value) => value.ToString(value < 9.95 ? "0.#" : "0", CultureInfo.InvariantCulture);
}
