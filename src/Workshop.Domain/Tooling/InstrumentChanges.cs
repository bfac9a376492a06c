using System.Globalization;
using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Tooling;

/// <summary>What an event or a calibration does to an instrument's row, or why it makes no sense as the row stands.</summary>
public static class InstrumentChanges
{
    /// <summary>Takes an event over into the row; the problem where it cannot have happened.</summary>
    /// <param name="instrument">Changed unless refused.</param>
    /// <param name="kind">What happened; a release has rules of its own, see <see cref="Release"/>.</param>
    /// <param name="holder">Who has it from now on, where it was handed over.</param>
    /// <param name="day">The workshop's day.</param>
    public static Problem? Apply(Instrument instrument, InstrumentEventKind kind, Guid? holder, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (Against(instrument, kind) is { } reason)
        {
            return Problem.Impossible("event-impossible", "kind", $"kind is {kind.Spoken()}: {instrument.Name} ({instrument.SerialNumber}) {reason}.");
        }

        switch (kind)
        {
            case InstrumentEventKind.Dropped or InstrumentEventKind.Overloaded:
                instrument.Damage = kind == InstrumentEventKind.Dropped ? InstrumentDamage.Dropped : InstrumentDamage.Overloaded;
                instrument.DamagedOn = day;
                EndRelease(instrument);
                break;
            case InstrumentEventKind.SentForCalibration:
                (instrument.State, instrument.HolderId) = (InstrumentState.OutForCalibration, null);
                break;
            case InstrumentEventKind.Withdrawn:
                (instrument.State, instrument.HolderId) = (InstrumentState.Withdrawn, null);
                break;
            case InstrumentEventKind.BackInUse:
                instrument.State = InstrumentState.InUse;
                break;
            case InstrumentEventKind.HandedTo:
                instrument.HolderId = holder;
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(kind), kind, "A release has a reason and an end.");
        }

        return null;
    }

    /// <summary>Lets it be used in spite of what stands against it today; the problem where nothing does, or the end lies behind.</summary>
    /// <param name="instrument">Changed unless refused.</param>
    /// <param name="until">The last day; absent: until the next calibration.</param>
    /// <param name="day">The workshop's day.</param>
    /// <param name="cycles">Counted since the last calibration.</param>
    public static Problem? Release(Instrument instrument, LocalDate? until, LocalDate day, int cycles)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (until < day)
        {
            return Problem.Impossible("release-ended", "until", $"until is {Write(until.Value)}: {Write(day)} or later is allowed, or nothing for until the next calibration.");
        }

        var reason = InstrumentStanding.ReasonAgainst(instrument, day, cycles);
        if (reason is null || instrument.State != InstrumentState.InUse)
        {
            return Problem.Conflict("nothing-to-release",
                reason is null
                    ? $"{instrument.Name} ({instrument.SerialNumber}) may be used already: there is nothing to release."
                    : $"{instrument.Name} ({instrument.SerialNumber}) {reason}: say that it is back in use first.");
        }

        (instrument.ReleasedOn, instrument.ReleasedUntil) = (day, until);
        instrument.ReleasedBeyondCycles = cycles >= InstrumentStanding.CyclesOf(instrument);
        return null;
    }

    /// <summary>
    /// Takes a calibration over into the row, where it is the latest by day; an older one is history only. It ends damage that
    /// was reported until its day, and a release.
    /// </summary>
    /// <param name="instrument">Changed unless refused or older.</param>
    /// <param name="calibration">As its certificate states it; its due day is set by <see cref="DueAfter"/>.</param>
    /// <param name="day">The workshop's day.</param>
    public static Problem? Apply(Instrument instrument, Calibration calibration, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        ArgumentNullException.ThrowIfNull(calibration);
        if (calibration.DoneOn > day)
        {
            return Problem.Impossible("calibration-ahead", "doneOn", $"doneOn is {Write(calibration.DoneOn)}: {Write(day)} or earlier is allowed.");
        }

        if (calibration.DueOn <= calibration.DoneOn)
        {
            return Problem.Impossible("due-before-done", "dueOn", $"dueOn is {Write(calibration.DueOn.Value)}: a day after {Write(calibration.DoneOn)} is allowed.");
        }

        if (calibration.DoneOn < instrument.CalibratedOn)
        {
            return null;
        }

        (instrument.CalibratedOn, instrument.CalibrationDueOn) = (calibration.DoneOn, calibration.DueOn);
        instrument.Uncertainty = calibration.Uncertainty ?? instrument.Uncertainty;
        if (instrument.DamagedOn is null || instrument.DamagedOn <= calibration.DoneOn)
        {
            (instrument.Damage, instrument.DamagedOn) = (null, null);
            EndRelease(instrument);
        }

        return null;
    }

    /// <summary>The last day for which a calibration holds: as stated, else by the instrument's months; nothing where neither says.</summary>
    public static LocalDate? DueAfter(Instrument instrument, LocalDate doneOn, LocalDate? stated) =>
        stated ?? (InstrumentStanding.MonthsOf(instrument) is { } months ? doneOn.PlusMonths(months) : null);

    private static string? Against(Instrument instrument, InstrumentEventKind kind) => (kind, instrument.State) switch
    {
        (InstrumentEventKind.BackInUse, InstrumentState.InUse) => "is in use",
        (InstrumentEventKind.SentForCalibration, InstrumentState.OutForCalibration) => "is out for calibration already",
        (InstrumentEventKind.SentForCalibration, InstrumentState.Withdrawn) => "is withdrawn; say that it is back in use first",
        (InstrumentEventKind.Withdrawn, InstrumentState.Withdrawn) => "is withdrawn already",
        (InstrumentEventKind.HandedTo, InstrumentState.OutForCalibration) => "is out for calibration",
        (InstrumentEventKind.HandedTo, InstrumentState.Withdrawn) => "is withdrawn",
        _ => null,
    };

    private static void EndRelease(Instrument instrument) =>
        (instrument.ReleasedOn, instrument.ReleasedUntil, instrument.ReleasedBeyondCycles) = (null, null, false);

    private static string Write(LocalDate day) => day.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
}
