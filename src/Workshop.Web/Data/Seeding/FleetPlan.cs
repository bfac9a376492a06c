using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// Which motorcycle came when, with how many kilometres, and for what: histories as workshops see them. Computed from the
/// fleet's seed and the seeding day alone.
/// </summary>
internal sealed class FleetPlan
{
    private const double DaysAYear = 365.25;
    private const double LeastOilGapKm = 2_500;
    private const int YoungestVisitDays = 4;

    // Valve checks behind each motorcycle: most have one to three, a few more, a few none yet.
    private static readonly int[] ChecksBehind = [2, 1, 3, 2, 1, 2, 0, 3, 1, 5, 2, 1, 3, 2, 2, 1, 6, 3, 0, 2, 1, 3, 2, 1, 2, 3, 4, 1, 2, 3];

    // How far through the maker's interval each motorcycle is since its last check: some are overdue, some nearly due.
    private static readonly double[] ThroughInterval = [0.35, 0.97, 0.6, 1.2, 0.15, 0.8, 0.45, 0.99, 0.7, 0.25, 1.08, 0.55];

    /// <summary>
    /// Its chain is read at every visit: a four that is ridden far, and comes for oil every few thousand kilometres of its last thirty
    /// thousand.
    /// </summary>
    public const int ChainReadOften = 9;
    private const int OilServicesMore = 4;
    private const double OverKm = 30_000;

    private readonly DemoFleet fleet;
    private readonly LocalDate today;
    private readonly RandomSource random;
    private readonly OpenDays openDays;

    public FleetPlan(DemoFleet fleet, OpenDays openDays, LocalDate today, IReadOnlyList<SeedEngineModel> engineModels)
    {
        (this.fleet, this.openDays, this.today) = (fleet, openDays, today);
        BooksBegin = today.PlusYears(-fleet.YearsInBooks);
        random = new RandomSource(fleet.Seed);
        var engines = fleet.Engines.SelectMany(e => Enumerable.Repeat(e, e.Count)).ToList();
        for (var i = 0; i < engines.Count; i++)
        {
            // Neighbours in the book are not of one model: seven is prime to every count.
            var engine = engines[i * 7 % engines.Count];
            Add(i, engine, engineModels.Single(m => m.Maker == engine.Maker && m.Name == engine.Name));
        }
    }

    /// <summary>The day on which the workshop began with this service.</summary>
    public LocalDate BooksBegin { get; }

    public List<PlannedMotorcycle> Motorcycles { get; } = [];

    public List<PlannedVisit> Visits { get; } = [];

    private void Add(int index, DemoFleetEngine engine, SeedEngineModel model)
    {
        var draw = random.Stream($"motorcycle {index}");
        var checks = Checks(index, engine, draw);
        var interval = (double)CheckInterval(model).Kilometres;
        var sinceLast = ThroughInterval[index % ThroughInterval.Length] * interval * draw.Uniform(0.97, 1.03);
        var nowKm = (checks.Count > 0 ? checks[^1] : 0) + Math.Max(sinceLast, 400);
        var kmAYear = checks.Count > 3 ? draw.Uniform(15_000, 21_000) : draw.Uniform(5_500, 12_500);
        var days = (int)(Math.Min(nowKm / kmAYear, fleet.Years) * DaysAYear);
        var motorcycle = new PlannedMotorcycle(
            index, engine, model, $"DEMO {101 + index}", draw.Pick(engine.Models),
            index % 13 == 5 ? OdometerUnit.Miles : OdometerUnit.Kilometres,
            today.PlusDays(-days), fleet.Owners[index % fleet.Owners.Count], nowKm);
        Motorcycles.Add(motorcycle);
        foreach (var (km, purpose) in WithOilServices(checks, nowKm, draw).Concat(index == ChainReadOften ? MoreOil(checks, nowKm) : []))
        {
            AddVisit(motorcycle, km, purpose, days, draw);
        }
    }

    private static IEnumerable<(double Km, VisitPurpose Purpose)> MoreOil(List<double> checks, double nowKm) =>
        Enumerable.Range(0, OilServicesMore).Select(i => nowKm - (OverKm * (i + 0.5) / OilServicesMore))
            .Where(km => checks.TrueForAll(check => Math.Abs(check - km) > LeastOilGapKm))
            .Select(km => (km, VisitPurpose.OilService));

    private static List<double> Checks(int index, DemoFleetEngine engine, RandomSource draw)
    {
        var checks = new List<double>();
        for (var i = 0; i < ChecksBehind[index % ChecksBehind.Length]; i++)
        {
            var span = i == 0 ? engine.FirstCheckKm : engine.GapKm;
            checks.Add((i == 0 ? 0 : checks[^1]) + draw.Uniform(span.From, span.To));
        }

        return checks;
    }

    /// <summary>Oil is changed at every check, and in most of the long stretches between.</summary>
    private static IEnumerable<(double Km, VisitPurpose Purpose)> WithOilServices(List<double> checks, double nowKm, RandomSource draw)
    {
        var last = 0.0;
        foreach (var check in checks)
        {
            if (check - last > 4 * LeastOilGapKm && draw.Chance(0.3))
            {
                yield return (last + ((check - last) * draw.Uniform(0.4, 0.6)), VisitPurpose.OilService);
            }

            yield return (check, VisitPurpose.ValveCheck);
            last = check;
        }

        if (nowKm - last > LeastOilGapKm && draw.Chance(0.8))
        {
            yield return (last + ((nowKm - last) * draw.Uniform(0.5, 0.97)), VisitPurpose.OilService);
        }
    }

    private void AddVisit(PlannedMotorcycle motorcycle, double km, VisitPurpose purpose, int days, RandomSource draw)
    {
        var wished = motorcycle.InServiceSince.PlusDays((int)(days * km / motorcycle.NowKm));
        var latest = today.PlusDays(-YoungestVisitDays);
        var day = openDays.FirstFree(LocalDate.Min(wished, latest), motorcycle.EngineModel, purpose, latest);
        var old = Period.DaysBetween(day, today) > 5 * DaysAYear;
        var set = motorcycle.Unit == OdometerUnit.Miles ? "FB-IN" : draw.Chance(old ? 0.5 : 0.15) ? "FB-05" : "FB-01";
        Visits.Add(new PlannedVisit(motorcycle, day, km, purpose, set, Sloppy: old && draw.Chance(0.35)));
    }

    private static Distance CheckInterval(SeedEngineModel model) => model.Specification.ServiceItems
        .Where(i => i.Kind == Domain.EngineModels.ServiceItemKind.ValveClearanceCheck)
        .Select(i => i.Interval?.Every).OfType<Distance>().First();
}

/// <summary>The days on which the workshop is open, and how many visits each has taken.</summary>
internal sealed class OpenDays(DemoWorkshop workshop)
{
    private readonly Dictionary<LocalDate, List<string>> taken = [];

    /// <summary>
    /// The first day from one on that is open and has a bay and the tools left. Where none is left before the latest, it is
    /// looked for backwards: nothing is planned into the future.
    /// </summary>
    public LocalDate FirstFree(LocalDate from, SeedEngineModel model, VisitPurpose purpose, LocalDate latest)
    {
        var day = from;
        var step = 1;
        while (!TryTake(day, model, purpose))
        {
            if (day == latest)
            {
                (day, step) = (from, -1);
            }

            day = day.PlusDays(step);
        }

        return day;
    }

    public bool IsOpen(LocalDate day) =>
        workshop.OpeningHours.Any(h => h.Weekday == day.DayOfWeek)
        && !workshop.Holidays.Any(h => h.Month == day.Month && h.Day == day.Day);

    public LocalDate Before(LocalDate day) => Next(day, -1);

    public LocalDate After(LocalDate day) => Next(day, 1);

    private LocalDate Next(LocalDate day, int step)
    {
        do
        {
            day = day.PlusDays(step);
        }
        while (!IsOpen(day));

        return day;
    }

    /// <summary>Two visits a day, one of them with covers off: technicians, jig and bays then always suffice.</summary>
    private bool TryTake(LocalDate day, SeedEngineModel model, VisitPurpose purpose)
    {
        if (!IsOpen(day))
        {
            return false;
        }

        if (!taken.TryGetValue(day, out var names))
        {
            taken.Add(day, names = []);
        }

        var name = purpose == VisitPurpose.ValveCheck ? "covers off" : "oil";
        if (names.Count >= 2 || names.Contains(name))
        {
            return false;
        }

        names.Add(name);
        return true;
    }
}
