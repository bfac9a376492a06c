using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

public class TakenAtOnceProperties
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 0, 0);

    private static readonly Gen<Interval> Spans =
        Gen.Select(Gen.Int[0, 200], Gen.Int[1, 40]).Select((from, minutes) => Span(from, from + minutes));

    private static readonly Interval[] Open = [Span(10, 70), Span(90, 150), Span(150, 170)];

    [Fact]
    public void Every_minute_is_counted_as_somebody_who_looks_would_count_it() => Spans.Array[0, 12].Sample(taken =>
    {
        var counted = Enumerable.Range(0, 250)
            .Where(minute => Open.Any(o => o.Contains(At(minute))))
            .GroupBy(minute => taken.Count(t => t.Contains(At(minute))))
            .ToDictionary(g => g.Key, g => Duration.FromMinutes(g.Count()));

        var times = TakenAtOnce.Of(taken, Open);

        Assert.All(times, t => Assert.Equal(counted.GetValueOrDefault(t.Count), t.Time));
        Assert.Equal(TakenAtOnce.Total(Open), times.Aggregate(Duration.Zero, (sum, t) => sum + t.Time));
        Assert.Equal(TakenAtOnce.Total(TakenAtOnce.Cut(taken, Open)), times.Aggregate(Duration.Zero, (sum, t) => sum + (t.Time * t.Count)));
    });

    /// <summary>
    /// Intervals can be given to as many bays as overlap at the most, and to no fewer: an interval graph's chromatic number is its clique
    /// number. Given in order of their start, each to any bay that is free.
    /// </summary>
    [Fact]
    public void As_many_bays_are_enough_as_are_taken_at_once() => Spans.Array[1, 20].Sample(taken =>
    {
        var most = TakenAtOnce.Of(taken, [Span(-1, 300)])[^1].Count;
        var freeFrom = new List<Instant>();
        foreach (var span in taken.OrderBy(t => t.Start))
        {
            var bay = freeFrom.FindIndex(free => free <= span.Start);
            if (bay < 0)
            {
                freeFrom.Add(span.End);
            }
            else
            {
                freeFrom[bay] = span.End;
            }
        }

        Assert.Equal(most, freeFrom.Count);
    });

    [Fact]
    public void What_touches_is_not_at_the_same_time() => Assert.Equal(
        [new AtOnce(0, Duration.FromMinutes(40)), new AtOnce(1, Duration.FromMinutes(20))],
        TakenAtOnce.Of([Span(10, 20), Span(20, 30)], [Span(0, 60)]));

    [Fact]
    public void Nothing_taken_is_nought_all_the_time() => Assert.Equal(
        [new AtOnce(0, Duration.FromMinutes(60))], TakenAtOnce.Of([], [Span(0, 60)]));

    private static Instant At(int minute) => Start + Duration.FromMinutes(minute);

    private static Interval Span(int from, int until) => new(At(from), At(until));
}
