using System.Globalization;
using NodaTime;
using Workshop.Domain.Intervals;

namespace Workshop.Domain.Tooling;

/// <summary>How instruments are said on a page.</summary>
public static class InstrumentWords
{
    public static string Spoken(this InstrumentKind kind) => kind switch
    {
        InstrumentKind.FeelerSet => "feeler set",
        InstrumentKind.Micrometer => "micrometer",
        InstrumentKind.TorqueWrench => "torque wrench",
        InstrumentKind.DialGauge => "dial gauge",
        InstrumentKind.DegreeWheel => "degree wheel",
        InstrumentKind.Thermometer => "thermometer",
        InstrumentKind.AlignmentJig => "alignment jig",
        InstrumentKind.Caliper => "caliper",
        InstrumentKind.VacuumGauge => "vacuum gauge",
        InstrumentKind.CompressionGauge => "compression gauge",
        InstrumentKind.LeakDownTester => "leak-down tester",
        InstrumentKind.PlugGauge => "plug gauge",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public static string Spoken(this InstrumentEventKind kind) => kind switch
    {
        InstrumentEventKind.Dropped => "dropped",
        InstrumentEventKind.Overloaded => "overloaded",
        InstrumentEventKind.Released => "released",
        InstrumentEventKind.SentForCalibration => "sent for calibration",
        InstrumentEventKind.Withdrawn => "withdrawn",
        InstrumentEventKind.BackInUse => "back in use",
        InstrumentEventKind.HandedTo => "handed over",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>
    /// Whether it may be used on a day, and if not, why: "in use", "in use, released by the manager until 2026-03-31",
    /// "calibration overdue, not to be used", "withdrawn".
    /// </summary>
    /// <param name="cycles">Counted since its last calibration.</param>
    public static string StateOn(this Instrument instrument, LocalDate day, int cycles = 0)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (instrument.State != InstrumentState.InUse)
        {
            return instrument.State == InstrumentState.Withdrawn ? "withdrawn" : "out for calibration";
        }

        var released = InstrumentStanding.IsReleased(instrument, day);
        return InstrumentStanding.ReasonAgainst(instrument, day, cycles) switch
        {
            null when released => $"in use, released by the manager until {(instrument.ReleasedUntil is { } until
                ? until.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture) : "its next calibration")}",
            null => "in use",
            _ when instrument.Damage is { } damage && !released => $"{damage.Spoken()}, not to be used",
            _ when InstrumentStanding.DueOn(instrument) is null => "never calibrated, not to be used",
            _ => "calibration overdue, not to be used",
        };
    }

    /// <summary>"2028-01-05, in 22 months", or that nothing says when.</summary>
    public static string CalibrationDue(this Instrument instrument, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return InstrumentStanding.DueOn(instrument) is { } due
            ? $"{due.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)}, {DueWords.When(due, today)}"
            : "no day set";
    }

    /// <summary>The scale with its unit: "5 to 25 N.m"; the unit alone where no range is known.</summary>
    public static string Scale(this Instrument instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return (instrument.RangeLowest, instrument.RangeHighest) switch
        {
            ({ } lowest, { } highest) => string.Create(CultureInfo.InvariantCulture, $"{lowest:0.####} to {highest:0.####} {instrument.Unit}"),
            (null, { } highest) => string.Create(CultureInfo.InvariantCulture, $"up to {highest:0.####} {instrument.Unit}"),
            ({ } lowest, null) => string.Create(CultureInfo.InvariantCulture, $"from {lowest:0.####} {instrument.Unit}"),
            _ => instrument.Unit,
        };
    }
}
