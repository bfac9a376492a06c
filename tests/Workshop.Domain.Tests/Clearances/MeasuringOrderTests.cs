using CsCheck;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Clearances;

public class MeasuringOrderTests
{
    private static readonly IReadOnlyList<MeasuringStop> Stops =
    [
        new("A", [Lobe("1-intake-1"), Lobe("1-intake-2"), Lobe("2-exhaust-1")]),
        new("B", [Lobe("2-intake-1"), Lobe("1-exhaust-1")]),
    ];

    private static readonly IReadOnlyList<LobeKey> All = [.. Stops.SelectMany(s => s.Lobes)];

    [Fact]
    public void The_next_lobe_is_at_the_same_position_until_all_there_are_read()
    {
        Assert.Equal(Lobe("1-intake-1"), MeasuringOrder.Next(Stops, All.ToHashSet(), null));
        Assert.Equal(Lobe("1-intake-2"), MeasuringOrder.Next(Stops, Except("1-intake-1"), Lobe("1-intake-1")));
        Assert.Equal(Lobe("1-intake-1"), MeasuringOrder.Next(Stops, Except("2-exhaust-1", "1-intake-2"), Lobe("2-exhaust-1")));
        Assert.Equal(Lobe("2-intake-1"), MeasuringOrder.Next(Stops, Except("1-intake-1", "1-intake-2", "2-exhaust-1"), Lobe("1-intake-1")));
    }

    [Fact]
    public void What_was_left_out_at_an_earlier_position_comes_when_the_crankshaft_is_round_again() =>
        Assert.Equal(Lobe("1-intake-2"), MeasuringOrder.Next(Stops, new HashSet<LobeKey> { Lobe("1-intake-2") }, Lobe("1-exhaust-1")));

    [Fact]
    public void Whatever_was_read_before_every_lobe_is_asked_for_once_and_the_crankshaft_goes_round_once_at_most() =>
        Gen.Shuffle(All.ToArray()).Select(Gen.Int[0, All.Count]).Sample((order, read) =>
        {
            var open = order.Skip(read).ToHashSet();
            var (asked, after) = (new List<LobeKey>(), read == 0 ? (LobeKey?)null : order[read - 1]);
            while (MeasuringOrder.Next(Stops, open, after) is { } next)
            {
                asked.Add(next);
                open.Remove(next);
                after = next;
            }

            Assert.Equal(order.Skip(read).Order(), asked.Order());
            var turns = asked.Select(l => Stops.ToList().FindIndex(s => s.Lobes.Contains(l))).ToList();
            Assert.True(turns.Zip(turns.Skip(1)).Count(p => p.First != p.Second) <= Stops.Count);
        });

    [Fact]
    public void Every_lobe_of_an_engine_stands_at_exactly_one_position() => Assert.All(SeedFile.All, seed => Assert.Equal(
        ReadingRules.LobesOf(seed.Specification), MeasuringOrder.Of(seed.Specification).SelectMany(s => s.Lobes).Order()));

    private static HashSet<LobeKey> Except(params string[] read) => [.. All.Except(read.Select(Lobe))];

    private static LobeKey Lobe(string valve) => new(ValveKey.Parse(valve));
}
