using System.Text.Json;
using NodaTime;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.Http;

/// <summary>
/// Moments are written and read as RFC 3339, section 5.6, has them, in UTC. The examples are those of its section 5.8, as remembered; the
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

    [Fact]
    public void A_leap_second_is_refused() =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Instant>("\"1990-12-31T23:59:60Z\"", WorkshopJson.Options));
}
