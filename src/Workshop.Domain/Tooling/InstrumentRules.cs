using System.Globalization;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Tooling;

/// <summary>What makes sense of an instrument of a kind.</summary>
public static class InstrumentRules
{
    public const decimal LargestRange = 100_000;
    public const decimal LargestLengthMm = 3000;
    public const int MostMonths = 120;
    public const int MostCycles = 100_000;
    public const int Decimals = 4;

    /// <summary>The units in which the scale of a kind may be; the first is the usual one.</summary>
    public static IReadOnlyList<string> UnitsOf(InstrumentKind kind) => kind switch
    {
        InstrumentKind.TorqueWrench => WrenchScale.Units,
        InstrumentKind.DegreeWheel => ["degree"],
        InstrumentKind.Thermometer => ["°C"],
        InstrumentKind.VacuumGauge => ["kPa", "mmHg", "mbar"],
        InstrumentKind.CompressionGauge or InstrumentKind.LeakDownTester => ["kPa", "bar", "psi"],
        _ => ["mm", "in"],
    };

    /// <summary>What does not go together; empty where all does.</summary>
    public static IReadOnlyList<FieldFault> Faults(Instrument instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        var faults = new List<FieldFault>();
        var units = UnitsOf(instrument.Kind);
        if (!units.Contains(instrument.Unit))
        {
            faults.Add(new FieldFault("unit", $"unit is \"{instrument.Unit}\": of a {instrument.Kind.Spoken()} {string.Join(", ", units)} is allowed."));
        }

        if (instrument.RangeLowest >= instrument.RangeHighest)
        {
            faults.Add(new FieldFault("rangeHighest", string.Create(CultureInfo.InvariantCulture,
                $"rangeHighest is {instrument.RangeHighest:0.####}: more than the lowest, {instrument.RangeLowest:0.####}, is allowed.")));
        }

        if (instrument.Kind == InstrumentKind.TorqueWrench)
        {
            if (instrument.RangeHighest is null)
            {
                faults.Add(new FieldFault("rangeHighest", "rangeHighest is empty: give the rated maximum, by which the wrench is chosen."));
            }
        }
        else
        {
            AddIfGiven(faults, "lengthMm", instrument.LengthMm, instrument);
            AddIfGiven(faults, "drive", instrument.Drive, instrument);
            AddIfGiven(faults, "calibrationCycles", instrument.CalibrationCycles, instrument);
        }

        return faults;
    }

    /// <summary>What makes sense of an adapter: beside the drive it has a length, straight on none.</summary>
    public static FieldFault? FaultOf(WrenchAdapter adapter)
    {
        ArgumentNullException.ThrowIfNull(adapter);
        return adapter.Kind switch
        {
            WrenchAdapterKind.OffsetAdapter when adapter.EffectiveLengthMm <= 0 => new FieldFault("effectiveLengthMm",
                "effectiveLengthMm is 0: from the centre of the drive to the centre of the fastener it is more; what lies straight on is an extension bar."),
            WrenchAdapterKind.ExtensionBar when adapter.EffectiveLengthMm != 0 => new FieldFault("effectiveLengthMm", string.Create(CultureInfo.InvariantCulture,
                $"effectiveLengthMm is {adapter.EffectiveLengthMm:0.##}: a straight extension lies on the drive's own axis, so that 0 is allowed.")),
            _ => null,
        };
    }

    /// <summary>"offset adapter", "extension bar".</summary>
    public static string Spoken(this WrenchAdapterKind kind) => kind switch
    {
        WrenchAdapterKind.OffsetAdapter => "offset adapter",
        WrenchAdapterKind.ExtensionBar => "extension bar",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    private static void AddIfGiven<T>(List<FieldFault> faults, string field, T value, Instrument instrument)
    {
        if (value is not null)
        {
            faults.Add(new FieldFault(field, $"{field} is given, but only torque wrenches have one; leave it out of a {instrument.Kind.Spoken()}."));
        }
    }
}
