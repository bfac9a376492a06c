using CsCheck;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Intervals;

/// <summary>What must hold for every interval, history and rate.</summary>
public class NextDueProperties
{
    private static readonly Gen<LocalDate> Day = Gen.Int[0, 20_000].Select(days => new LocalDate(1990, 1, 1).PlusDays(days));

    private static readonly Gen<ServiceInterval> Interval = Gen.Select(
        Gen.Int[500, 48_000].Nullable(), Gen.Int[1, 60].Nullable(), Gen.Int[500, 48_000].Nullable(), Gen.Int[1, 60].Nullable(),
        (every, months, first, firstMonths) => new ServiceInterval
        {
            Every = Km(every), EveryMonths = months, First = Km(first), FirstMonths = firstMonths,
        });

    /// <summary>Steps of days and kilometres from one reading to the next.</summary>
    private static readonly Gen<(int Days, int Km)[]> Steps = Gen.Select(Gen.Int[1, 400], Gen.Int[0, 9_000]).Array[1, 12];

    private static readonly Gen<(ServiceInterval Interval, OdometerPoint Start, (int Days, int Km)[] Steps, int? DoneAt)> History =
        Gen.Select(Interval, Day, Steps, Gen.Int[0, 11].Nullable(), (interval, day, steps, done) =>
            (interval, new OdometerPoint(day, Distance.Zero), steps, done is { } at ? at % steps.Length : (int?)null));

    [Fact]
    public void It_is_due_at_whichever_comes_first() => History.Sample(h =>
    {
        if (Due(h.Interval, h.Start, h.Steps, h.DoneAt) is not { } due)
        {
            return;
        }

        var byDistance = due.At is null ? null : Due(h.Interval with { EveryMonths = null, FirstMonths = null }, h.Start, h.Steps, h.DoneAt);
        LocalDate[] both = [.. new[] { due.On, byDistance?.ExpectedOn }.OfType<LocalDate>()];
        Assert.Equal(both.Min(), due.ExpectedOn);
    });

    [Fact]
    public void The_expected_day_lies_within_its_span() => History.Sample(h =>
    {
        if (Due(h.Interval, h.Start, h.Steps, h.DoneAt) is { Span: { } span } due)
        {
            Assert.InRange(due.ExpectedOn, span.First, span.Last);
        }
    });

    /// <summary>The whole way through, with the rate fitted anew: the last reading is moved up and all else stays.</summary>
    [Fact]
    public void It_is_never_later_when_more_distance_has_been_ridden() => Gen.Select(History, Gen.Int[1, 20_000]).Sample((h, more) =>
    {
        // Done at the last reading itself, the due distance would move along with it.
        int? doneAt = h.DoneAt == h.Steps.Length - 1 ? null : h.DoneAt;
        var further = h.Steps.ToArray();
        further[^1].Km += more;
        var (less, now) = (Due(h.Interval, h.Start, h.Steps, doneAt), Due(h.Interval, h.Start, further, doneAt));

        Assert.Equal(less is null, now is null);
        if (less is not null)
        {
            // The last day of the span may be later: a stretch unlike the others makes the rider less sure.
            Assert.True(now!.ExpectedOn <= less.ExpectedOn);
            Assert.True(now.Span is null || now.Span.Value.First <= less.Span!.Value.First);
        }
    });

    [Fact]
    public void Doing_it_again_never_brings_the_next_time_forward() => History.Where(h => h.DoneAt > 0).Sample(h =>
    {
        var earlier = Due(h.Interval, h.Start, h.Steps, h.DoneAt - 1);
        var later = Due(h.Interval, h.Start, h.Steps, h.DoneAt);

        Assert.True(earlier is null || later!.ExpectedOn >= earlier.ExpectedOn);
    });

    /// <summary>What a check found is in the forecast already: it cannot have wanted that check before it was done.</summary>
    [Fact]
    public void A_forecast_wants_it_before_the_interval_but_never_before_it_was_last_done() => Gen.Select(History, Gen.Int[0, 60_000]).Sample((h, km) =>
    {
        var wanted = Distance.FromKilometres(km);
        var (plain, foretold) = (Due(h.Interval, h.Start, h.Steps, h.DoneAt), Due(h.Interval, h.Start, h.Steps, h.DoneAt, wanted));
        var done = h.DoneAt is { } at
            ? new OdometerPoint(
                h.Start.On.PlusDays(h.Steps.Take(at + 1).Sum(s => s.Days)), Distance.FromKilometres(h.Steps.Take(at + 1).Sum(s => s.Km)))
            : h.Start;

        Assert.NotNull(foretold);
        if (foretold.ByForecast)
        {
            Assert.Equal(wanted > done.Distance ? wanted : done.Distance, foretold.At);
            Assert.True(plain?.At is null || foretold.At < plain.At);
            Assert.True(foretold.ExpectedOn >= done.On);
            Assert.True(foretold.Span is not { } span || (span.First <= foretold.ExpectedOn && foretold.ExpectedOn <= span.Last));
        }
        else
        {
            Assert.Equal(plain, foretold);
            Assert.True(foretold.At <= wanted || foretold.At <= done.Distance);
        }
    });

    /// <summary>Against the calendar arithmetic of System.DateOnly, which is not NodaTime's and has the same rule.</summary>
    [Fact]
    public void Calendar_months_end_where_another_calendar_says() => Gen.Select(Day, Gen.Int[1, 120]).Sample((day, months) =>
    {
        var due = Due(new ServiceInterval { EveryMonths = months }, new OdometerPoint(day, Distance.Zero), [(1, 1)], null)!;

        Assert.Equal(new DateOnly(day.Year, day.Month, day.Day).AddMonths(months), due.On!.Value.ToDateOnly());
    });

    /// <summary>The exact factor of NIST SP 811, appendix B.8: 1.609344 km a mile; as whole millimetres, free of rounding.</summary>
    [Fact]
    public void Whole_units_come_back_whole_in_miles_and_in_kilometres() =>
        Gen.Select(Gen.Int[0, OdometerCount.Largest], Gen.Enum<OdometerUnit>()).Sample((count, unit) =>
        {
            var distance = unit.ToDistance(count);

            Assert.Equal(count, unit.CountOf(distance));
            Assert.Equal(count * (unit == OdometerUnit.Miles ? 1_609_344L : 1_000_000L), distance.Metres * 1000);
        });

    private static DueNext? Due(ServiceInterval interval, OdometerPoint start, (int Days, int Km)[] steps, int? doneAt, Distance? forecastAt = null)
    {
        var points = new List<OdometerPoint>();
        var last = start;
        foreach (var (days, km) in steps)
        {
            last = new OdometerPoint(last.On.PlusDays(days), last.Distance + Distance.FromKilometres(km));
            points.Add(last);
        }

        var track = OdometerTrack.Of(start, points);
        OdometerPoint? done = doneAt is { } at ? points[at] : null;
        return NextDue.Of(interval, start, done, track, RidingRate.Of(track, FleetRiding.Usual), forecastAt);
    }

    private static Distance? Km(int? km) => km is { } known ? Distance.FromKilometres(known) : null;
}
