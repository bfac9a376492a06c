using FluentValidation;
using Workshop.Domain.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>What is typed of an instrument, new or changed.</summary>
public interface IInstrumentFields
{
    string? Name { get; }

    string? SerialNumber { get; }

    /// <summary>Where its scale begins and ends, in its own unit; of a torque wrench the rated maximum.</summary>
    decimal? RangeLowest { get; }

    decimal? RangeHighest { get; }

    /// <summary>Standard uncertainty in its unit; of a torque wrench the permissible deviation in percent.</summary>
    decimal? Uncertainty { get; }

    /// <summary>From mark to mark, in its own unit.</summary>
    decimal? Graduation { get; }

    /// <summary>Torque wrenches only: from the centre of the drive to the mark on the grip.</summary>
    decimal? LengthMm { get; }

    /// <summary>Torque wrenches only: "1/4 in", "9 x 12 mm".</summary>
    string? Drive { get; }

    int? CalibrationMonths { get; }

    /// <summary>Torque wrenches only.</summary>
    int? CalibrationCycles { get; }
}

internal sealed class InstrumentFieldsValidator : AbstractValidator<IInstrumentFields>
{
    public InstrumentFieldsValidator()
    {
        RuleFor(r => r.Name).IsGiven("what it is called, with its range").IsAtMost(Limits.Name);
        RuleFor(r => r.SerialNumber).IsGiven("its serial number, or the number that the workshop wrote on it").IsAtMost(Limits.Name);
        RuleFor(r => r.RangeLowest).IsWithin(-InstrumentRules.LargestRange, InstrumentRules.LargestRange, InstrumentRules.Decimals, "of its unit");
        RuleFor(r => r.RangeHighest).IsWithin(-InstrumentRules.LargestRange, InstrumentRules.LargestRange, InstrumentRules.Decimals, "of its unit");
        RuleFor(r => r.Uncertainty).IsWithin(0, InstrumentRules.LargestRange, InstrumentRules.Decimals, "of its unit, or percent");
        RuleFor(r => r.Graduation).IsWithin(0.0001m, InstrumentRules.LargestRange, InstrumentRules.Decimals, "of its unit");
        RuleFor(r => r.LengthMm).IsWithin(1, InstrumentRules.LargestLengthMm, 1, "mm");
        RuleFor(r => r.Drive).IsAtMost(Limits.Drive);
        RuleFor(r => r.CalibrationMonths).IsWhole(1, InstrumentRules.MostMonths);
        RuleFor(r => r.CalibrationCycles).IsWhole(1, InstrumentRules.MostCycles);
    }
}

internal static class InstrumentFields
{
    /// <summary>Takes over what was typed; kind and unit stay.</summary>
    public static void Take(this Instrument instrument, IInstrumentFields typed)
    {
        (instrument.Name, instrument.SerialNumber) = (typed.Name!.Trim(), typed.SerialNumber!.Trim());
        (instrument.RangeLowest, instrument.RangeHighest) = (typed.RangeLowest, typed.RangeHighest);
        (instrument.Uncertainty, instrument.Graduation, instrument.LengthMm) = (typed.Uncertainty, typed.Graduation, typed.LengthMm);
        instrument.Drive = string.IsNullOrWhiteSpace(typed.Drive) ? null : typed.Drive.Trim();
        (instrument.CalibrationMonths, instrument.CalibrationCycles) = (typed.CalibrationMonths, typed.CalibrationCycles);
    }
}
