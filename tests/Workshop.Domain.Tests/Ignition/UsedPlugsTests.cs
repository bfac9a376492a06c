using CsCheck;
using NodaTime;
using Workshop.Domain.Ignition;

namespace Workshop.Domain.Tests.Ignition;

/// <summary>What a visit used of plugs: each of them once, whatever the kit and the entries call it.</summary>
public class UsedPlugsTests
{
    private const string Kit = "plug-a";
    private const string Other = "plug-b";

    private static readonly Gen<string?> Code = Gen.Int[0, 2].Select(which => which switch { 0 => null, 1 => Kit, _ => (string?)Other });

    [Theory]
    [InlineData(4, new[] { Kit, Kit, Kit, Kit }, 4, 0)]
    [InlineData(4, new[] { Other, Other, Other, Other }, 0, 4)]
    [InlineData(4, new[] { Kit, Other, Kit, Kit }, 3, 1)]
    [InlineData(4, new[] { Kit, Kit, Kit, null }, 3, 0)]
    [InlineData(4, new[] { Other }, 3, 1)]
    [InlineData(0, new[] { Kit, Kit }, 2, 0)]
    [InlineData(2, new[] { Kit, Kit, Other, Kit }, 3, 1)]
    [InlineData(4, new string[0], 4, 0)]
    public void What_went_in_is_used_and_the_kit_speaks_for_the_plugs_that_nobody_wrote_down(int inKit, string?[] wentIn, int ofKit, int ofOther)
    {
        var used = PlugRules.Used(Kit, inKit, [.. wentIn.Select((code, at) => Check(at + 1, code))]);

        Assert.Equal((ofKit, ofOther), (used.GetValueOrDefault(Kit), used.GetValueOrDefault(Other)));
    }

    [Fact]
    public void No_plug_is_used_twice_and_none_that_went_in_is_forgotten() =>
        Gen.Select(Gen.Int[0, 12], Code.Array[0, 12], Gen.Int[0, 12]).Sample((inKit, wentIn, again) =>
        {
            // Some are entered a second time, first with the other code: the last attempt counts.
            var checks = wentIn.Select((code, at) => Check(at + 1, code, attempt: 2))
                .Concat(wentIn.Take(again).Select((code, at) => Check(at + 1, code == Kit ? Other : Kit, attempt: 1))).ToArray();

            var used = PlugRules.Used(Kit, inKit, checks);

            Assert.Equal(wentIn.Count(c => c == Other), used.GetValueOrDefault(Other));
            Assert.Equal(wentIn.Count(c => c is not null) + Math.Max(0, inKit - wentIn.Length), used.Values.Sum());
            Assert.True(used.Values.Sum() <= Math.Max(inKit, wentIn.Length));
            Assert.All(used.Values, quantity => Assert.True(quantity > 0));
        });

    [Fact]
    public void An_engine_model_that_names_no_plug_uses_what_was_written_down_alone()
    {
        Assert.Equal([(Other, 1m)], PlugRules.Used(null, 0, [Check(1, Other), Check(2, null)]).Select(u => (u.Key, u.Value)));
        Assert.Empty(PlugRules.Used(null, 0, []));
    }

    /// <param name="cylinder">Whose plug.</param>
    /// <param name="code">Of the new one; nothing where the old one goes back.</param>
    /// <param name="attempt">The last one counts.</param>
    private static PlugCheck Check(int cylinder, string? code, int attempt = 1) => new()
    {
        Id = NewId.At(Instant.FromUtc(2026, 3, 2, 9, attempt)), EngineId = Guid.Empty, JobCardNumber = 1001, Cylinder = cylinder, Plug = 1, Attempt = attempt,
        Condition = PlugCondition.Normal, Renewed = code is not null, PartCode = code, GapLeftMm = 0.8m, Gauge = GapGauge.Wire, OdometerReadingId = Guid.Empty,
        CheckedAt = Instant.FromUtc(2026, 3, 2, 9, 0), CheckedBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = Instant.FromUtc(2026, 3, 2, 9, 0),
    };
}
