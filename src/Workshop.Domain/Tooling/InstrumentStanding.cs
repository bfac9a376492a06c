using System.Globalization;
using NodaTime;

namespace Workshop.Domain.Tooling;

/// <summary>
/// Whether an instrument may be used. It may not while it is away or withdrawn, when its calibration is overdue by days or by
/// cycles, whichever comes first, or when it was dropped or overloaded since. The manager's release sets aside what stood
/// against it on the day of the release, and nothing that came later.
/// </summary>
public static class InstrumentStanding
{
    /// <summary>Months from one calibration of a torque wrench to the next, where nothing else is said: ISO 6789-1:2017.</summary>
    public const int WrenchMonths = 12;

    /// <summary>Cycles of a torque wrench between two calibrations, where nothing else is said: ISO 6789-1:2017.</summary>
    public const int WrenchCycles = 5000;

    /// <summary>Months from one calibration to the next; nothing where nobody says.</summary>
    public static int? MonthsOf(Instrument instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument.CalibrationMonths ?? (instrument.Kind == InstrumentKind.TorqueWrench ? WrenchMonths : null);
    }

    /// <summary>Cycles from one calibration to the next; nothing for what does not click.</summary>
    public static int? CyclesOf(Instrument instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument.Kind == InstrumentKind.TorqueWrench ? instrument.CalibrationCycles ?? WrenchCycles : null;
    }

    /// <summary>The last day on which the calibration holds; nothing where none is set.</summary>
    public static LocalDate? DueOn(Instrument instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument.CalibrationDueOn
            ?? (instrument.CalibratedOn is { } on && MonthsOf(instrument) is { } months ? on.PlusMonths(months) : null);
    }

    /// <summary>A release holds on <paramref name="day"/>, whatever it sets aside.</summary>
    public static bool IsReleased(Instrument instrument, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument.ReleasedOn <= day && (instrument.ReleasedUntil is null || day <= instrument.ReleasedUntil);
    }

    /// <summary>Nothing where the instrument may be used; else why not, in words that go on after its name.</summary>
    /// <param name="instrument">As its row stands.</param>
    /// <param name="day">The workshop's day of the work.</param>
    /// <param name="cycles">Counted since its last calibration; 0 for what does not click.</param>
    public static string? ReasonAgainst(Instrument instrument, LocalDate day, int cycles)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (instrument.State != InstrumentState.InUse)
        {
            return instrument.State == InstrumentState.Withdrawn ? "is withdrawn" : "is out for calibration";
        }

        var (released, due) = (IsReleased(instrument, day), DueOn(instrument));
        if (instrument.Damage is { } damage && !released)
        {
            return $"was {Spoken(damage)}{(instrument.DamagedOn is { } on ? $" on {Write(on)}" : "")} and is neither calibrated nor released since";
        }

        if (due < day && !(released && due < instrument.ReleasedOn))
        {
            return $"was due for calibration on {Write(due.Value)}";
        }

        if (cycles >= CyclesOf(instrument) && !(released && instrument.ReleasedBeyondCycles))
        {
            return string.Create(CultureInfo.InvariantCulture,
                $"has made {cycles:#,0} cycles since its calibration, and is due after {CyclesOf(instrument):#,0}");
        }

        return instrument.Kind == InstrumentKind.TorqueWrench && due is null && !released ? "has no calibration on record" : null;
    }

    /// <summary>"dropped", "overloaded".</summary>
    public static string Spoken(this InstrumentDamage damage) => damage switch
    {
        InstrumentDamage.Dropped => "dropped",
        InstrumentDamage.Overloaded => "overloaded",
        _ => throw new ArgumentOutOfRangeException(nameof(damage), damage, null),
    };

    private static string Write(LocalDate day) => day.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
}
