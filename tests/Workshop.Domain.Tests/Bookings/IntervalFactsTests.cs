using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>Facts about spans of time on which booking rests.</summary>
public class IntervalFactsTests
{
    private static readonly Instant Begin = Instant.FromUtc(2026, 6, 1, 0, 0);

    /// <summary>
    /// The thirteen relations of J. F. Allen, "Maintaining knowledge about temporal intervals", Communications of the ACM 26 (1983),
    /// 832 to 843, figure 2. Two half-open spans have time in common in nine of them: not when one is before the other, or meets it.
    /// </summary>
    public static TheoryData<string, int, int, int, int, bool> Relations { get; } = new()
    {
        { "before", 0, 2, 4, 6, false },
        { "after", 4, 6, 0, 2, false },
        { "meets", 0, 3, 3, 6, false },
        { "met by", 3, 6, 0, 3, false },
        { "overlaps", 0, 4, 2, 6, true },
        { "overlapped by", 2, 6, 0, 4, true },
        { "starts", 0, 2, 0, 6, true },
        { "started by", 0, 6, 0, 2, true },
        { "during", 2, 4, 0, 6, true },
        { "contains", 0, 6, 2, 4, true },
        { "finishes", 4, 6, 0, 6, true },
        { "finished by", 0, 6, 4, 6, true },
        { "equals", 0, 6, 0, 6, true },
    };

    [Theory]
    [MemberData(nameof(Relations))]
    public void Of_the_thirteen_relations_of_two_spans_nine_share_time(string relation, int from, int until, int otherFrom, int otherUntil, bool shares)
    {
        var taken = Spans.Of([Hours(otherFrom, otherUntil)]);
        var (start, end) = (Spans.Ticks(Begin + Duration.FromHours(from)), Spans.Ticks(Begin + Duration.FromHours(until)));

        Assert.Equal((relation, shares), (relation, taken.Overlapping(start, end) >= 0));
        Assert.Equal((relation, shares), (relation, taken.LastOverlapping(start, end) >= 0));
        Assert.Equal((relation, shares), (relation, FreeSpans.Of(Hours(from, until), [Hours(otherFrom, otherUntil)]) is not [var whole] || whole != Hours(from, until)));
    }

    [Fact]
    public void The_thirteen_relations_are_all_there_are_and_exclude_each_other() =>
        Gen.Select(Gen.Int[0, 5], Gen.Int[1, 4], Gen.Int[0, 5], Gen.Int[1, 4]).Sample((a, aLength, b, bLength) =>
        {
            var (aEnd, bEnd) = (a + aLength, b + bLength);
            return Relations.Count(r => Order(a, aEnd, b, bEnd) == Order(r.Data.Item2, r.Data.Item3, r.Data.Item4, r.Data.Item5)) == 1;
        });

    /// <summary>
    /// Common knowledge of interval graphs: they are perfect, so the fewest bays are the most spans at one moment, and taking each
    /// span in order of its start into any free bay never needs more (F. Gavril, SIAM Journal on Computing 1 (1972), 180 to 187).
    /// </summary>
    [Fact]
    public void The_fewest_bays_are_the_most_visits_at_one_moment() =>
        Gen.Select(Gen.Int[0, 60], Gen.Int[1, 20]).List[0, 40].Sample(visits =>
        {
            var spans = visits.Select(v => Hours(v.Item1, v.Item1 + v.Item2)).OrderBy(s => s.Start).ToList();
            var bays = new List<List<Interval>>();
            foreach (var span in spans)
            {
                // A bay that is left at the minute at which the next visit begins will do: touching is not overlapping.
                var free = bays.Find(b => Spans.Of(b).Overlapping(Spans.Ticks(span.Start), Spans.Ticks(span.End)) < 0);
                if (free is null)
                {
                    bays.Add(free = []);
                }

                free.Add(span);
            }

            return bays.Count == (spans.Count == 0 ? 0 : spans.Max(s => spans.Count(o => o.Contains(s.Start))));
        });

    [Fact]
    public void Spans_without_others_are_what_the_others_leave() =>
        Gen.Select(List, List).Sample((mine, others) =>
        {
            var left = Spans.Of(mine).Without(Spans.Of(others));
            return Enumerable.Range(0, 100).All(minute =>
            {
                var at = Spans.Ticks(Begin + Duration.FromHours(minute));
                return (left.Holding(at) >= 0) == (Spans.Of(mine).Holding(at) >= 0 && Spans.Of(others).Holding(at) < 0);
            });
        });

    private static readonly Gen<List<Interval>> List =
        Gen.Select(Gen.Int[0, 80], Gen.Int[1, 15]).Select((from, length) => Hours(from, from + length)).List[0, 8];

    private static (int, int, int, int) Order(int a, int aEnd, int b, int bEnd) =>
        (Math.Sign(a - b), Math.Sign(a - bEnd), Math.Sign(aEnd - b), Math.Sign(aEnd - bEnd));

    private static Interval Hours(int from, int until) => new(Begin + Duration.FromHours(from), Begin + Duration.FromHours(until));
}
