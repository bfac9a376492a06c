using NodaTime;
using Workshop.Domain.Stores;
using Workshop.Domain.Tooling;

namespace Workshop.Domain.Tests.Tooling;

public class InstrumentWordsTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);

    [Theory]
    [InlineData(InstrumentState.InUse, 0, "in use")]
    [InlineData(InstrumentState.InUse, -1, "calibration overdue, not to be used")]
    [InlineData(InstrumentState.OutForCalibration, 100, "out for calibration")]
    [InlineData(InstrumentState.Withdrawn, 100, "withdrawn")]
    public void An_instrument_may_be_used_on_the_day_on_which_its_calibration_is_due_and_not_after(InstrumentState state, int dueInDays, string said) =>
        Assert.Equal(said, Wrench(state, Today.PlusDays(dueInDays)).StateOn(Today));

    [Fact]
    public void A_scale_is_said_as_far_as_it_is_known()
    {
        Assert.Equal("5 to 25 N.m", Wrench(range: (5, 25)).Scale());
        Assert.Equal("up to 12.5 N.m", Wrench(range: (null, 12.5m)).Scale());
        Assert.Equal("from 5 N.m", Wrench(range: (5, null)).Scale());
        Assert.Equal("N.m", Wrench().Scale());
        Assert.Equal("no day set", Wrench().CalibrationDue(Today));
    }

    [Fact]
    public void Shims_have_a_thickness_and_pieces_are_whole()
    {
        var shim = Part(PartKind.Shim, PartUnit.Piece);
        var oil = Part(PartKind.Fluid, PartUnit.Millilitre);

        Assert.Null(ReceiptRules.Refuse(shim, 2, 2.5m));
        Assert.Null(ReceiptRules.Refuse(oil, 0.5m, null));
        Assert.Equal(["quantity", "thicknessMm"], ReceiptRules.Refuse(shim, 0.5m, null)?.Faults.Select(f => f.Field));
        Assert.Equal(["thicknessMm"], ReceiptRules.Refuse(oil, 0.5m, 2m)?.Faults.Select(f => f.Field));
        oil.Discontinued = true;
        Assert.Equal(["partCode"], ReceiptRules.Refuse(oil, 0.5m, null)?.Faults.Select(f => f.Field));
    }

    [Theory]
    [InlineData(PartUnit.Piece, 3, "3")]
    [InlineData(PartUnit.Millilitre, 20_000, "20,000 ml")]
    [InlineData(PartUnit.Millilitre, 0.25, "0.25 ml")]
    public void Quantities_are_said_in_the_part_s_unit(PartUnit unit, double quantity, string said) =>
        Assert.Equal(said, unit.Say((decimal)quantity));

    private static Instrument Wrench(
        InstrumentState state = InstrumentState.InUse, LocalDate? due = null, (decimal? Lowest, decimal? Highest) range = default) => new()
    {
        Id = default, Kind = InstrumentKind.TorqueWrench, Name = "Wrench", SerialNumber = "1", Unit = "N.m", State = state,
        CalibrationDueOn = due, RangeLowest = range.Lowest, RangeHighest = range.Highest,
    };

    private static Part Part(PartKind kind, PartUnit unit) => new() { Id = default, Code = "code", Name = "Name", Kind = kind, Unit = unit };
}
