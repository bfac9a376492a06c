using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Intervals;

/// <summary>Where a riding rate comes from; a page says it beside every date that rests on it.</summary>
public enum RateBasis
{
    /// <summary>Readings of three days or more: the median of the rates between all pairs of them.</summary>
    OwnReadings,

    /// <summary>One reading beside the day from which the odometer counts: the rate between them, with a wide span.</summary>
    OneStretch,

    /// <summary>No readings far enough apart: a usual rate, with a very wide span.</summary>
    Assumed,
}

/// <summary>How far a motorcycle is ridden in a day of the calendar, standing days included.</summary>
/// <param name="PerDay">The rate to expect; not negative.</param>
/// <param name="Slowest">Lower end of its span; zero where the readings allow that it stands still.</param>
/// <param name="Fastest">Upper end of its span.</param>
/// <param name="Basis">Where it comes from.</param>
/// <param name="Days">Days with a reading that it rests on, the start included.</param>
/// <param name="Confidence">
/// What the span has, two-sided, between 0 and 1; nothing where it is a rule of thumb. It is about the mean rate so far: how
/// the owner will ride from now on, nobody knows.
/// </param>
public sealed record RidingRate(
    Distance PerDay, Distance Slowest, Distance Fastest, RateBasis Basis, int Days, double? Confidence)
{
    /// <summary>Two-sided confidence wished for the span.</summary>
    public const double ConfidenceWished = 0.8;

    /// <summary>Rates from readings closer together than this many days tell of one tour, not of a year.</summary>
    public const int FewestDaysApart = 60;

    /// <summary>How many of the latest days with a reading count: a rate is of these years, not of the first owner's.</summary>
    public const int MostDays = 24;

    /// <summary>One stretch says little about the next: a third and three times of its rate. Common practice, no source.</summary>
    public const int OneStretchFactor = 3;

    /// <summary>Days in a year of the Gregorian calendar, on average: 146,097 days in 400 years.</summary>
    public const decimal DaysPerYear = 365.2425m;

    /// <summary>A usual rate where nothing is known: 5000 km a year, from 1000 to 15,000. Common practice, no source.</summary>
    public static readonly RidingRate Usual = new(FromYearly(5_000), FromYearly(1_000), FromYearly(15_000), RateBasis.Assumed, 0, null);

    /// <summary>What is expected to have been done on a day; before a reading, what stood at it.</summary>
    /// <param name="day">The day.</param>
    /// <param name="last">The last reading.</param>
    public Distance DistanceOn(LocalDate day, OdometerPoint last) =>
        last.Distance + Distance.FromMetres(PerDay.Metres * Math.Max(0, Period.DaysBetween(last.On, day)));

    /// <summary>A daily distance by the year, to the kilometre, for showing.</summary>
    public static Distance Yearly(Distance perDay) =>
        Distance.FromKilometres(Rounding.HalfEven(perDay.Kilometres * DaysPerYear, 0));

    /// <summary>
    /// The motorcycle's own rate from its readings: by Theil and Sen, which a mistyped reading does not move; of one stretch
    /// where there are two points; else the usual one.
    /// </summary>
    public static RidingRate Of(OdometerTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        var points = track.Points.TakeLast(MostDays).ToList();
        if (Period.DaysBetween(points[0].On, points[^1].On) < FewestDaysApart)
        {
            return Usual with { Days = points.Count };
        }

        return points.Count < TheilSen.FewestPoints ? OfOneStretch(points[0], points[1]) : OfMany(points);
    }

    private static RidingRate OfMany(List<OdometerPoint> points)
    {
        var days = points.Select(point => (double)Period.DaysBetween(points[0].On, point.On)).ToArray();
        var metres = points.Select(point => (double)point.Distance.Metres).ToArray();
        var line = TheilSen.Fit(days, metres, ConfidenceWished).Value;
        return new RidingRate(
            Metres(line.Slope), Metres(line.Lower), Metres(line.Upper), RateBasis.OwnReadings, points.Count, line.Confidence);
    }

    private static RidingRate OfOneStretch(OdometerPoint from, OdometerPoint to)
    {
        var perDay = (to.Distance - from.Distance).Metres / Period.DaysBetween(from.On, to.On);
        var rate = Distance.FromMetres(Math.Max(0, decimal.Round(perDay, 3)));
        return new RidingRate(
            rate,
            Distance.FromMetres(rate.Metres / OneStretchFactor),
            Distance.FromMetres(rate.Metres * OneStretchFactor),
            RateBasis.OneStretch,
            2,
            null);
    }

    private static Distance Metres(double slope) => Distance.FromMetres(Math.Max(0, decimal.Round((decimal)slope, 3)));

    private static Distance FromYearly(decimal kilometres) =>
        Distance.FromMetres(kilometres * Distance.MetresPerKilometre / DaysPerYear);
}
