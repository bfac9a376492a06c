using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Tests.Motorcycles;

public class OdometerRulesTests
{
    private static readonly LocalDate Fitted = new(2024, 1, 1);

    private static readonly Odometer Instrument = new()
    {
        Id = Id(1), MotorcycleId = Id(2), Unit = OdometerUnit.Miles, FittedOn = Fitted, Offset = Distance.FromMiles(20_000),
    };

    /// <summary>Entered late: the readings of May and September stand already.</summary>
    [Theory]
    [InlineData(2024, 4, 20, 0, null)]
    [InlineData(2024, 4, 30, 5_000, null)]
    [InlineData(2024, 4, 30, 5_001, "At most 5000")]
    [InlineData(2024, 7, 1, 4_999, "At least 5000")]
    [InlineData(2024, 7, 1, 5_000, null)]
    [InlineData(2024, 7, 1, 9_001, "At most 9000")]
    [InlineData(2024, 12, 1, 8_999, "At least 9000")]
    [InlineData(2024, 12, 1, 9_000, null)]
    public void Backwards_is_judged_by_date_not_by_order_of_entry(int y, int m, int d, int count, string? refusal)
    {
        OdometerReading[] standing = [Reading(2024, 9, 1, 9_000), Reading(2024, 5, 1, 5_000)];

        var problem = OdometerRules.Judge("odometer", count, new LocalDate(y, m, d), Instrument, standing);

        Assert.Equal(refusal is null, problem is null);
        if (refusal is not null)
        {
            Assert.StartsWith($"odometer is {count} mi", problem!.Sentence, StringComparison.Ordinal);
            Assert.Contains(refusal, problem.Sentence, StringComparison.Ordinal);
        }
    }

    /// <summary>2000 km are 1242.7 mi.</summary>
    [Theory]
    [InlineData(2024, 5, 2, 6_242, null)]
    [InlineData(2024, 5, 2, 6_243, "on 2024-05-01 it showed 5000 mi, which is 1243 mi in a day. At most 6242 is allowed")]
    [InlineData(2024, 5, 4, 8_729, "3729 mi in 3 days")]
    [InlineData(2024, 8, 31, 7_700, "on 2024-09-01 it showed 9000 mi, which is 1300 mi in a day")]
    public void Too_far_for_the_days_between_is_a_slip(int y, int m, int d, int count, string? refusal)
    {
        var problem = OdometerRules.Judge(
            "odometer", count, new LocalDate(y, m, d), Instrument, [Reading(2024, 5, 1, 5_000), Reading(2024, 9, 1, 9_000)]);

        Assert.Equal(refusal is null ? null : "odometer-too-far", problem?.Code);
        Assert.Contains(refusal ?? "", problem?.Sentence ?? "", StringComparison.Ordinal);
        Assert.Equal(refusal is not null, (problem?.Sentence ?? "").EndsWith("say why and confirm it (confirmUnusual).", StringComparison.Ordinal));
    }

    [Fact]
    public void What_somebody_confirms_is_no_slip()
    {
        OdometerReading[] standing = [Reading(2024, 5, 1, 5_000)];

        Assert.Null(OdometerRules.Judge("odometer", 10, new LocalDate(2024, 6, 1), Instrument, standing, confirmed: true));
        Assert.Null(OdometerRules.Judge("odometer", 90_000, new LocalDate(2024, 5, 2), Instrument, standing, confirmed: true));
        Assert.NotNull(OdometerRules.Judge("odometer", 10, Fitted.PlusDays(-1), Instrument, standing, confirmed: true));
    }

    [Fact]
    public void Readings_of_one_day_may_stand_in_any_order() =>
        Assert.Null(OdometerRules.Judge("odometer", 4_990, new LocalDate(2024, 5, 1), Instrument, [Reading(2024, 5, 1, 5_000)]));

    [Fact]
    public void No_reading_is_older_than_its_instrument() =>
        Assert.Equal("before-odometer", OdometerRules.Judge("odometer", 10, Fitted.PlusDays(-1), Instrument, [])?.Code);

    [Fact]
    public void A_day_that_has_not_come_is_refused_with_what_is_allowed()
    {
        Assert.Null(OdometerRules.JudgeDay("readOn", Fitted, Fitted));
        Assert.Equal(
            "readOn is 2024-01-02, which has not come yet: today, 2024-01-01, or an earlier day is allowed.",
            OdometerRules.JudgeDay("readOn", Fitted.PlusDays(1), Fitted)?.Sentence);
    }

    [Fact]
    public void A_replaced_instrument_goes_on_from_its_offset() =>
        Assert.Equal(20_150m * 1609.344m, Instrument.DistanceAt(150).Metres);

    private static OdometerReading Reading(int y, int m, int d, int count) => new()
    {
        Id = Id(count), OdometerId = Instrument.Id, MotorcycleId = Instrument.MotorcycleId, ReadOn = new LocalDate(y, m, d),
        Count = count, Unit = Instrument.Unit, Distance = Instrument.DistanceAt(count),
        MeasuredBy = Id(3), EnteredBy = Id(3), EnteredAt = Instant.FromUtc(2024, 10, 1, 9, 0),
    };

    private static Guid Id(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);
}
