using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Tooling;

namespace Workshop.Domain.Tests.Tooling;

/// <summary>Wrenches, adapters and torques made up for the tests.</summary>
internal static class Wrenches
{
    public static readonly LocalDate Today = new(2026, 3, 2);

    public static Instrument Wrench(
        string unit, decimal? lowest, decimal? highest, decimal? graduation = null, decimal? lengthMm = null, string? drive = null) => new()
    {
        Id = NewId.At(Instant.FromUtc(2026, 3, 2, 8, 0)), Kind = InstrumentKind.TorqueWrench, Name = $"Wrench to {highest} {unit}",
        SerialNumber = "W", Unit = unit, RangeLowest = lowest, RangeHighest = highest, Graduation = graduation, LengthMm = lengthMm, Drive = drive,
        CalibratedOn = Today.PlusMonths(-3), CalibrationDueOn = Today.PlusYears(1),
    };

    public static WrenchOnHand OnHand(this Instrument wrench, int cycles = 0) => new(wrench, cycles);

    public static WrenchAdapter Ring(
        string tool, decimal effectiveLengthMm, decimal? thicknessMm = 10, string? drive = "1/4 in", WrenchAdapterKind kind = WrenchAdapterKind.OffsetAdapter) => new()
    {
        Id = NewId.At(Instant.FromUtc(2026, 3, 2, 8, 0)), Name = $"Ring {effectiveLengthMm}", Kind = kind, EffectiveLengthMm = effectiveLengthMm,
        ThicknessMm = thicknessMm, Drive = drive, Tool = tool,
    };

    public static WrenchTask Task(decimal newtonMetres, decimal? lowest = null, decimal? highest = null, string tool = "10 mm socket", decimal? space = null) => new(
        Torque.FromNewtonMetres(newtonMetres), lowest is { } from ? Torque.FromNewtonMetres(from) : null,
        highest is { } to ? Torque.FromNewtonMetres(to) : null, tool, space);
}
