using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;
using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Intervals;

/// <summary>What the motorcycles of the workshop ride, for those that have few readings of their own.</summary>
/// <param name="PerDay">Of the motorcycle in the middle.</param>
/// <param name="LogDeviation">Standard deviation of the log of their rates.</param>
/// <param name="WanderDays">How unlike the stretches of one motorcycle are: see <see cref="RidingRate"/>.</param>
/// <param name="Season">How riding is spread over the year; even where the readings do not show a season.</param>
/// <param name="SeasonProbability">
/// The probability of so much of a season by chance (F test); nothing where too few readings were there to ask.
/// </param>
/// <param name="Motorcycles">How many it rests on; none where it is assumed.</param>
public sealed record FleetRiding(
    Distance PerDay, double LogDeviation, double WanderDays, RidingSeason Season, double? SeasonProbability, int Motorcycles)
{
    /// <summary>Rates below 50 km a year are standing still, as far as logs go (our own choice).</summary>
    public const double SlowestMetresPerDay = 50_000 / 365.2425;

    /// <summary>Fewer motorcycles with a rate of their own tell nothing of the others.</summary>
    public const int FewestMotorcycles = 20;

    /// <summary>Days from first to last reading below which a motorcycle tells nothing of the fleet.</summary>
    public const int FewestDays = 180;

    /// <summary>A season that comes by chance more often than this is none.</summary>
    public const double SeasonLevel = 0.01;

    /// <summary>A season that moves a day by less than this is none.</summary>
    public const double SmallestAmplitude = 0.1;

    private const int FewestStretches = 60;
    private const int Passes = 3;
    private const double ShortestStretch = 7;
    private const double LeastLogDeviation = 0.3;
    private const double LeastWander = 2;
    private const double MostWander = 200;
    private const double MostDeviations = 3;

    /// <summary>Median absolute deviation to standard deviation of a normal distribution: 1 / quantile of 0.75.</summary>
    private const double ToDeviation = 1.4826022185056018;

    /// <summary>
    /// A usual rate where nothing is known: 5000 km a year, one in ten below 1700, one in ten above 15,000; single years differ
    /// by a quarter. Common practice, no source.
    /// </summary>
    public static FleetRiding Usual { get; } = new(
        Distance.FromMetres(5_000_000 / RidingRate.DaysPerYear), 0.857, 20, RidingSeason.None, null, 0);

    /// <summary>
    /// What these motorcycles ride. Medians and median deviations, which wild readings do not move. The season is a yearly wave
    /// fitted to all stretches between readings by weighted least squares (cosinor), each motorcycle at its own rate; it counts
    /// when the F test of its two parts says that chance makes as much in less than one case in a hundred.
    /// </summary>
    /// <remarks>The cosinor and its F test: Bloomfield, Fourier Analysis of Time Series, chapters 2 and 3 (from memory).</remarks>
    /// <param name="tracks">Of the motorcycles, in any order; those with too few readings are left aside.</param>
    public static FleetRiding Of(IEnumerable<OdometerTrack> tracks)
    {
        ArgumentNullException.ThrowIfNull(tracks);
        var known = tracks.Select(t => t.Points.TakeLast(RidingRate.MostDays).ToArray())
            .Where(p => p.Length >= RidingRate.FewestPointsAlone && Period.DaysBetween(p[0].On, p[^1].On) >= FewestDays)
            .ToArray();
        var season = RidingSeason.None;
        double? chance = null;
        for (var pass = 0; pass < Passes; pass++)
        {
            var (found, probability) = SeasonOf(Stretches(known, season));
            (season, chance) = (found, probability);
        }

        if (!(chance < SeasonLevel) || season.Amplitude < SmallestAmplitude)
        {
            season = RidingSeason.None;
        }

        return Of(known, season, chance);
    }

    private static FleetRiding Of(OdometerPoint[][] known, RidingSeason season, double? chance)
    {
        var logs = known.Select(p => RidingRate.SlopeOf(p, season).PerDay).Where(r => r > SlowestMetresPerDay).Select(r => Math.Log(r)).ToArray();
        if (logs.Length < FewestMotorcycles)
        {
            return Usual;
        }

        Array.Sort(logs);
        var middle = SortedArrayStatistics.Median(logs);
        var stretches = Stretches(known, season);
        var wander = Math.Pow(DeviationOf(stretches.Select(s => s.Off / Math.Sqrt(s.Days))), 2) * FreedomLost(stretches);
        return new FleetRiding(
            Distance.FromMetres(decimal.Round((decimal)Math.Exp(middle), 3)),
            Math.Max(LeastLogDeviation, DeviationOf(logs.Select(l => l - middle))),
            Math.Clamp(wander, LeastWander, MostWander), season, chance, logs.Length);
    }

    /// <summary>A stretch between two readings: its riding days, and how many more were ridden than its motorcycle's rate says.</summary>
    private readonly record struct Stretch(int Motorcycle, double Days, double Off, double CalendarOff, double Cosine, double Sine);

    private static List<Stretch> Stretches(OdometerPoint[][] known, RidingSeason season)
    {
        var stretches = new List<Stretch>();
        for (var m = 0; m < known.Length; m++)
        {
            var points = known[m];
            var (perDay, _) = RidingRate.SlopeOf(points, season);
            for (var i = 1; i < points.Length && perDay > SlowestMetresPerDay; i++)
            {
                var days = season.DaysBetween(points[i - 1].On, points[i].On);
                if (days < ShortestStretch)
                {
                    continue;
                }

                var ridden = (double)(points[i].Distance - points[i - 1].Distance).Metres / perDay;
                var (cosine, sine) = RidingSeason.Parts(points[i - 1].On, points[i].On);
                stretches.Add(new Stretch(
                    m, days, ridden - days, ridden - Period.DaysBetween(points[i - 1].On, points[i].On), cosine, sine));
            }
        }

        return stretches;
    }

    /// <summary>Two unknowns, normal equations; a stretch weighs by its days, and counts as at most three deviations off.</summary>
    private static (RidingSeason Season, double? Probability) SeasonOf(List<Stretch> stretches)
    {
        var motorcycles = stretches.Select(s => s.Motorcycle).Distinct().Count();
        var freedom = stretches.Count - motorcycles - 2;
        if (stretches.Count < FewestStretches || motorcycles < FewestMotorcycles || freedom < FewestMotorcycles)
        {
            return (RidingSeason.None, null);
        }

        var most = MostDeviations * DeviationOf(stretches.Select(s => s.CalendarOff / Math.Sqrt(s.Days)));
        double cc = 0, cs = 0, ss = 0, cy = 0, sy = 0, yy = 0;
        foreach (var s in stretches)
        {
            var root = Math.Sqrt(s.Days);
            var (c, n, y) = (s.Cosine / root, s.Sine / root, Math.Clamp(s.CalendarOff / root, -most, most));
            (cc, cs, ss, cy, sy, yy) = (cc + (c * c), cs + (c * n), ss + (n * n), cy + (c * y), sy + (n * y), yy + (y * y));
        }

        var determinant = (cc * ss) - (cs * cs);
        if (determinant <= 1e-9 * cc * ss)
        {
            return (RidingSeason.None, null);
        }

        var (cosine, sine) = (((ss * cy) - (cs * sy)) / determinant, ((cc * sy) - (cs * cy)) / determinant);
        var explained = (cosine * cy) + (sine * sy);
        var rest = Math.Max(yy - explained, double.Epsilon);
        var probability = 1 - FisherSnedecor.CDF(2, freedom, explained / 2 / (rest / freedom));
        return (RidingSeason.Of(cosine, sine), probability);
    }

    /// <summary>Each motorcycle's own rate has taken one stretch's worth of difference away.</summary>
    private static double FreedomLost(List<Stretch> stretches)
    {
        var motorcycles = stretches.Select(s => s.Motorcycle).Distinct().Count();
        return (double)stretches.Count / Math.Max(1, stretches.Count - motorcycles);
    }

    private static double DeviationOf(IEnumerable<double> values)
    {
        var sizes = values.Select(Math.Abs).ToArray();
        Array.Sort(sizes);
        return sizes.Length == 0 ? 0 : ToDeviation * SortedArrayStatistics.Median(sizes);
    }
}
