using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Intervals;

/// <summary>Where a riding rate comes from; a page says it beside every date that rests on it.</summary>
public enum RateBasis
{
    /// <summary>Readings of four days or more: the median of the rates between all pairs of them.</summary>
    OwnReadings,

    /// <summary>One or two readings beside the day from which the odometer counts: leaning on what the fleet rides.</summary>
    Borrowed,

    /// <summary>No readings far enough apart: what the fleet rides.</summary>
    Assumed,
}

/// <summary>
/// How far a motorcycle is ridden in a day, standing days included, and how surely. What will be ridden in u riding days is
/// taken as log-normal: its log has the variance of the rate itself plus ln(1 + w / u), as single days are not alike.
/// </summary>
/// <param name="PerDay">The median rate; not negative.</param>
/// <param name="Variance">Of the log of the rate.</param>
/// <param name="WanderDays">
/// w: what is ridden in u riding days has a relative variance of w / u about the rate. A w of 15 days is a fifth, up or down,
/// in a year.
/// </param>
/// <param name="Season">How riding is spread over the year.</param>
/// <param name="Basis">Where it comes from.</param>
/// <param name="Points">Days with a reading that it rests on, the start included.</param>
public sealed record RidingRate(
    Distance PerDay, double Variance, double WanderDays, RidingSeason Season, RateBasis Basis, int Points)
{
    /// <summary>Of a span of days or of rates, both ends: one in ten is before it, one in ten beyond.</summary>
    public const double SpanTail = 0.1;

    /// <summary>The standard normal quantile of 0.9.</summary>
    public const double SpanDeviations = 1.2815515655446004;

    /// <summary>Rates from readings closer together than this many days tell of one tour, not of a year.</summary>
    public const int FewestDaysApart = 60;

    /// <summary>With fewer days with a reading, the start included, the rate leans on the fleet.</summary>
    public const int FewestPointsAlone = 4;

    /// <summary>How many of the latest days with a reading count: a rate is of these years, not of the first owner's.</summary>
    public const int MostDays = 24;

    /// <summary>Days in a year of the Gregorian calendar, on average: 146,097 days in 400 years.</summary>
    public const decimal DaysPerYear = 365.2425m;

    /// <summary>Nobody goes on as before: a tenth of the rate, up or down, stays unknown however many readings there are (our own choice).</summary>
    private const double LeastDeviation = 0.1;

    /// <summary>
    /// The slope of a line through a random walk has 6/5 of the variance that its ends alone would give; so for least squares,
    /// and near enough for the median of slopes (the coverage test says so).
    /// </summary>
    private const double SlopeOfWalk = 1.2;

    /// <summary>The fleet's wander counts like so many stretches of the motorcycle's own (our own choice).</summary>
    private const int WanderOfFleet = 6;

    /// <summary>A stretch counts as at most so many deviations: a mistyped reading does not make a rider wild.</summary>
    private const double MostDeviations = 3;

    /// <summary>A tenth of the motorcycles go slower than this over a year.</summary>
    public Distance Slowest => Yearlong(-SpanDeviations);

    /// <summary>A tenth go faster.</summary>
    public Distance Fastest => Yearlong(SpanDeviations);

    /// <summary>What is expected to have been done on a day; before a reading, what stood at it.</summary>
    /// <param name="day">The day.</param>
    /// <param name="last">The last reading.</param>
    public Distance DistanceOn(LocalDate day, OdometerPoint last) => day <= last.On
        ? last.Distance
        : last.Distance + Metres(Season.DaysBetween(last.On, day) * (double)PerDay.Metres);

    /// <summary>
    /// Days of the calendar until a distance is ridden, as the quantile so many standard deviations from the median; nothing
    /// where that is beyond the horizon.
    /// </summary>
    /// <param name="from">From when on.</param>
    /// <param name="left">What is left to ride; not negative.</param>
    /// <param name="deviations">0 for the median, below for earlier.</param>
    /// <param name="horizonDays">Days beyond which dates are not told apart.</param>
    public double? DaysFor(LocalDate from, Distance left, double deviations, int horizonDays)
    {
        if (left <= Distance.Zero)
        {
            return 0;
        }

        if (PerDay <= Distance.Zero)
        {
            return null;
        }

        var median = (double)(left.Metres / PerDay.Metres);
        var days = median * Math.Exp(deviations * Math.Sqrt(Variance + Math.Log(1 + (WanderDays / median))));
        return days < horizonDays ? Season.CalendarDays(from, days) : null;
    }

    /// <summary>A daily distance by the year, to the kilometre, for showing.</summary>
    public static Distance Yearly(Distance perDay) =>
        Distance.FromKilometres(Rounding.HalfEven(perDay.Kilometres * DaysPerYear, 0));

    /// <summary>
    /// The rate from the readings of one motorcycle: the median of the rates between all pairs (Theil and Sen), in riding days,
    /// which neither a mistyped reading nor a gap moves. Where few readings tell it, it is weighed against the fleet by precision,
    /// both on the log scale; where none do, it is the fleet's.
    /// </summary>
    /// <param name="track">The odometer's readings.</param>
    /// <param name="fleet">What the fleet rides; the usual where nothing is known.</param>
    public static RidingRate Of(OdometerTrack track, FleetRiding fleet)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(fleet);
        var points = track.Points.TakeLast(MostDays).ToArray();
        if (Period.DaysBetween(points[0].On, points[^1].On) < FewestDaysApart)
        {
            return new RidingRate(
                fleet.PerDay, fleet.LogDeviation * fleet.LogDeviation, fleet.WanderDays, fleet.Season, RateBasis.Assumed, points.Length);
        }

        var (perDay, span) = SlopeOf(points, fleet.Season);
        if (points.Length < FewestPointsAlone)
        {
            return Leaning(perDay, span, points.Length, fleet);
        }

        var wander = perDay > 0 ? WanderOf(points, perDay, fleet) : fleet.WanderDays;
        return new RidingRate(
            Metres(perDay), OwnVariance(wander, span), wander, fleet.Season, RateBasis.OwnReadings, points.Length);
    }

    /// <summary>Metres a riding day and riding days from first to last.</summary>
    internal static (double PerDay, double Span) SlopeOf(ReadOnlySpan<OdometerPoint> points, RidingSeason season)
    {
        var days = new double[points.Length];
        var metres = new double[points.Length];
        for (var i = 0; i < points.Length; i++)
        {
            days[i] = season.DaysBetween(points[0].On, points[i].On);
            metres[i] = (double)points[i].Distance.Metres;
        }

        return (Math.Max(0, TheilSen.Slope(days, metres)), days[^1]);
    }

    private static RidingRate Leaning(double perDay, double span, int points, FleetRiding fleet)
    {
        var (own, wide) = (OwnVariance(fleet.WanderDays, span), fleet.LogDeviation * fleet.LogDeviation);
        var variance = 1 / ((1 / own) + (1 / wide));
        var (ridden, usual) = (Math.Max(perDay, FleetRiding.SlowestMetresPerDay), (double)fleet.PerDay.Metres);
        var log = variance * ((Math.Log(ridden) / own) + (Math.Log(usual) / wide));
        return new RidingRate(Metres(Math.Exp(log)), variance, fleet.WanderDays, fleet.Season, RateBasis.Borrowed, points);
    }

    private static double OwnVariance(double wander, double span) =>
        (SlopeOfWalk * wander / span) + (LeastDeviation * LeastDeviation);

    /// <summary>How unlike its stretches are, weighed with the fleet's.</summary>
    private static double WanderOf(ReadOnlySpan<OdometerPoint> points, double perDay, FleetRiding fleet)
    {
        var most = MostDeviations * MostDeviations * fleet.WanderDays;
        var (sum, stretches) = (WanderOfFleet * fleet.WanderDays, WanderOfFleet);
        for (var i = 1; i < points.Length; i++)
        {
            var days = fleet.Season.DaysBetween(points[i - 1].On, points[i].On);
            var off = ((double)(points[i].Distance - points[i - 1].Distance).Metres / (perDay * days)) - 1;
            sum += Math.Min(off * off * days, most);
            stretches++;
        }

        return sum / stretches;
    }

    private Distance Yearlong(double deviations) => Metres(
        (double)PerDay.Metres * Math.Exp(deviations * Math.Sqrt(Variance + Math.Log(1 + (WanderDays / (double)DaysPerYear)))));

    private static Distance Metres(double metres) => Distance.FromMetres(Math.Max(0, decimal.Round((decimal)metres, 3)));
}
