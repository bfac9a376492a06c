using System.Text.Json;
using NodaTime;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.Http;

/// <summary>
/// Moments are read as RFC 3339, section 5.6, has them, and written in UTC. The examples are those of its section 5.8, as remembered; the
/// leap second of the third is refused, since neither the service's time nor PostgreSQL's knows one.
/// </summary>
public sealed class InstantTextTests
{
    [Fact]
    public void An_instant_is_written_as_the_standard_writes_it() => Assert.Equal(
        "\"1985-04-12T23:20:50.52Z\"",
        JsonSerializer.Serialize(Instant.FromUtc(1985, 4, 12, 23, 20, 50) + Duration.FromMilliseconds(520), WorkshopJson.Options));

    [Fact]
    public void The_same_moment_is_read_back() => Assert.Equal(
        Instant.FromUtc(1996, 12, 20, 0, 39, 57), JsonSerializer.Deserialize<Instant>("\"1996-12-20T00:39:57Z\"", WorkshopJson.Options));

    [Theory]
    [InlineData("1996-12-19T16:39:57-08:00", "1996-12-20T00:39:57Z")]
    [InlineData("1990-12-31T15:59:59-08:00", "1990-12-31T23:59:59Z")]
    [InlineData("1937-01-01T12:00:27.87+00:20", "1937-01-01T11:40:27.87Z")]
    public void An_offset_names_the_same_moment(string written, string utc) => Assert.Equal(
        JsonSerializer.Deserialize<Instant>($"\"{utc}\"", WorkshopJson.Options), JsonSerializer.Deserialize<Instant>($"\"{written}\"", WorkshopJson.Options));

    [Fact]
    public void What_is_no_moment_is_named_with_what_is_one()
    {
        var refused = Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Instant>("\"26.11.2026 8:30\"", WorkshopJson.Options));
        Assert.Contains("\"26.11.2026 8:30\" is no moment", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_leap_second_is_refused() =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Instant>("\"1990-12-31T23:59:60Z\"", WorkshopJson.Options));
}
