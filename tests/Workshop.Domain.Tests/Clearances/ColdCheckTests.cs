using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Clearances;

public class ColdCheckTests
{
    private static readonly ColdCondition Cold = new(
        8, Temperature.FromCelsius(5), Temperature.FromCelsius(35), "surface probe at the head", new("Invented for tests", "1"));

    [Theory]
    [InlineData(5)]
    [InlineData(20.5)]
    [InlineData(35)]
    public void Inside_the_range_and_at_its_ends_is_cold(decimal celsius) =>
        Assert.Null(Fault(celsius, null));

    [Fact]
    public void Too_warm_names_the_value_the_range_and_the_way_it_is_taken()
    {
        var fault = Fault(35.1m, null);

        Assert.Equal("headTemperatureC", fault?.Field);
        Assert.Contains("headTemperatureC is 35.1 °C: the engine is too warm", fault?.Sentence, StringComparison.Ordinal);
        Assert.Contains("5 to 35 °C is allowed, by surface probe at the head", fault?.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_cold_is_refused_as_well() =>
        Assert.Contains("too cold", Fault(4.9m, "  ")?.Sentence, StringComparison.Ordinal);

    [Fact]
    public void A_reason_keeps_it_and_it_is_still_not_cold()
    {
        Assert.Null(Fault(60, "customer waits, compared only"));
        Assert.False(ColdCheck.IsCold(Temperature.FromCelsius(60), Cold));
    }

    private static Outcomes.FieldFault? Fault(decimal celsius, string? reason) =>
        ColdCheck.FaultOf("headTemperatureC", Temperature.FromCelsius(celsius), Cold, reason);
}
