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
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>Whether it may be used on a day, and if not, why: "in use", "calibration overdue", "withdrawn".</summary>
    public static string StateOn(this Instrument instrument, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument.State switch
        {
            InstrumentState.InUse => instrument.MayBeUsedOn(day) ? "in use" : "calibration overdue, not to be used",
            InstrumentState.OutForCalibration => "out for calibration",
            InstrumentState.Withdrawn => "withdrawn",
            _ => throw new ArgumentOutOfRangeException(nameof(instrument), instrument.State, null),
        };
    }

    /// <summary>"2028-01-05, in 22 months", or that nothing says when.</summary>
    public static string CalibrationDue(this Instrument instrument, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument.CalibrationDueOn is { } due
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
