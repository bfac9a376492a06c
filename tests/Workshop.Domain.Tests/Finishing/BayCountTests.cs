using CsCheck;
using NodaTime;
using Workshop.Domain.Finishing;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Finishing;

public class BayCountTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 8, 0);
    private static readonly CountedThing[] Usual = [new("rags", "Rags"), new("magnet", "Magnet")];

    [Fact]
    public void The_list_is_made_of_what_the_job_takes()
    {
        var specification = SeedFile.VTwin.Specification;
        var check = specification.ServiceItems.First(i => i.Code == "valve-clearance-check");
        var oil = specification.ServiceItems.First(i => i.Code == "engine-oil-and-filter");

        var things = BayCount.Usual(specification, [check]).Select(t => t.Code).ToArray();
        Assert.Contains("feeler-blades", things);
        Assert.Contains("removed-shims", things);
        Assert.All(check.SpecialTools, tool => Assert.Contains(BayCount.CodeOf(tool), things));
        Assert.Equal(["rags", "caps", "removed-seals"], BayCount.Usual(specification, [oil]).Select(t => t.Code).Except(oil.SpecialTools.Select(BayCount.CodeOf)));
    }

    [Theory]
    [InlineData("Torch, small", "torch-small")]
    [InlineData("  10 mm socket ", "10-mm-socket")]
    [InlineData("--", "")]
    public void A_code_is_made_of_a_name(string name, string code) => Assert.Equal(code, BayCount.CodeOf(name));

    [Fact]
    public void An_explanation_holds_for_its_difference_only()
    {
        CountTap[] taps = [Tap("rags", CountWay.WentIn, 3), Tap("rags", CountWay.CameBack, 1)];
        var explained = Explain("rags", -2);

        var rags = BayCount.Of(Usual, taps, [explained])[0];
        Assert.Equal((-2, "2 not back", true), (rags.Difference, rags.Words, rags.IsSettled));
        Assert.False(BayCount.Of(Usual, [.. taps, Tap("rags", CountWay.WentIn, 1)], [explained])[0].IsSettled);
        Assert.True(BayCount.Of(Usual, [.. taps, Tap("rags", CountWay.CameBack, 2)], [explained])[0].IsSettled);
        Assert.Equal("1 more came back than went in", BayCount.Of(Usual, [Tap("magnet", CountWay.CameBack, 1)], [])[1].Words);
    }

    [Fact]
    public void What_is_not_usual_is_counted_beside() =>
        Assert.Equal(["rags", "magnet", "torch"], BayCount.Of(Usual, [Tap("torch", CountWay.WentIn, 1)], []).Select(t => t.Thing.Code));

    /// <summary>A device that was without network sends late: the sums are the same in any order.</summary>
    [Fact]
    public void The_order_in_which_taps_arrive_does_not_matter() => Gen.Select(
        Gen.OneOf(Gen.Const("rags"), Gen.Const("magnet"), Gen.Const("torch")), Gen.Enum<CountWay>(), Gen.Int[-2, 4].Where(i => i != 0), Gen.Int[0, 60])
        .Select((thing, way, change, minute) => Tap(thing, way, change, minute)).Array[0, 12].Sample(taps =>
        {
            var (sent, late) = (BayCount.Of(Usual, taps, []), BayCount.Of(Usual, taps.Reverse().ToArray(), []));
            Assert.Equal(Said(sent), Said(late));
            Assert.Equal(taps.Where(t => t.Way == CountWay.CameBack).Sum(t => t.Change) - taps.Where(t => t.Way == CountWay.WentIn).Sum(t => t.Change), sent.Sum(t => t.Difference));
        });

    private static (string, int, int)[] Said(IReadOnlyList<ThingCount> things) =>
        [.. things.Select(t => (t.Thing.Code, t.WentIn, t.CameBack)).OrderBy(t => t.Code, StringComparer.Ordinal)];

    private static CountTap Tap(string thing, CountWay way, int change, int minute = 0) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, ThingCode = thing, ThingName = thing, Way = way, Change = change, CountedBy = Guid.Empty,
        CountedAt = Start + Duration.FromMinutes(minute),
    };

    private static CountExplanation Explain(string thing, int difference) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, ThingCode = thing, Difference = difference, WordsRemarkId = Guid.Empty, ExplainedBy = Guid.Empty, ExplainedAt = Start,
    };
}
