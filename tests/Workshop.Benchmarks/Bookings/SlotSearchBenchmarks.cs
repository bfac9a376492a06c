using BenchmarkDotNet.Attributes;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Benchmarks.Bookings;

/// <summary>
/// The search alone, without the database: 8 bays, 12 technicians, 10 parking places, 2,000 visits in the first weeks of 90 days, so that the
/// first free slot lies behind most of them. Floors are laid out anew each time, as every request does.
/// </summary>
[MemoryDiagnoser]
public class SlotSearchBenchmarks
{
    private const int Days = 135;
    private static readonly LocalDate First = new(2026, 1, 5);
    private static readonly WorkshopTime Time = new(DateTimeZoneProviders.Tzdb["Europe/Vienna"]);

    private readonly VisitShape valveCheck = new()
    {
        ArrivalMinutes = 30, ArrivalTakes = ArrivalTakes.TechnicianAndBay, Soak = Duration.FromHours(10), WorkMinutes = 280,
        CureMinutes = 45, WarmRunMinutes = 15, TestRideMinutes = 20, HandOverMinutes = 15,
    };

    private readonly VisitNeeds needs = new([], [], TechnicianGrade.Apprentice, []);
    private List<(Resource Resource, List<Interval> Taken)> rows = [];
    private WorkshopFloor floor = null!;

    [GlobalSetup]
    public void FillTheDiary()
    {
        rows = [.. Of(ResourceKind.Bay, 8), .. Of(ResourceKind.Technician, 12), .. Of(ResourceKind.ParkingPlace, 10)];
        var (bays, technicians) = (rows.FindAll(r => r.Resource.Kind == ResourceKind.Bay), rows.FindAll(r => r.Resource.Kind == ResourceKind.Technician));
        var open = Enumerable.Range(0, Days).Select(First.PlusDays).Where(d => d.DayOfWeek < IsoDayOfWeek.Saturday).ToList();
        for (var visit = 0; visit < 2000; visit++)
        {
            // Four visits of two hours a day and bay.
            var (day, place, hour) = (open[visit / 32], visit % 8, visit / 8 % 4);
            var from = (day + new LocalTime(8, 0).PlusMinutes(135 * hour)).InZoneLeniently(Time.Zone).ToInstant();
            bays[place].Taken.Add(new Interval(from, from + Duration.FromMinutes(125)));
            technicians[(place + (8 * hour)) % 12].Taken.Add(new Interval(from, from + Duration.FromMinutes(110)));
        }

        floor = LayOut();
    }

    [Benchmark]
    public SlotsFound Search() => SlotSearch.Find(Planner(floor), new SlotQuery(5, 60));

    [Benchmark]
    public SlotsFound SearchAndExplain() => SlotSearch.Find(Planner(floor), new SlotQuery(5, 60, Explain: true));

    [Benchmark]
    public SlotsFound LayOutAndSearch() => SlotSearch.Find(Planner(LayOut()), new SlotQuery(5, 60));

    private PhasePlanner Planner(WorkshopFloor on) => new(on, valveCheck, needs, new PlanTerms { Now = Time.WholeDay(First).Start });

    private WorkshopFloor LayOut()
    {
        var calendar = new OpeningCalendar(
            Time,
            Enumerable.Range(1, 5).Select(d => new OpeningHours { Weekday = (IsoDayOfWeek)d, OpensAt = new LocalTime(8, 0), ClosesAt = new LocalTime(17, 30) }),
            []);
        var days = new DateInterval(First, First.PlusDays(Days - 1));
        var opening = new OpeningDays(calendar, days);
        return new WorkshopFloor(opening, new Interval(Time.WholeDay(First).Start, Time.WholeDay(days.End).End),
            [.. rows.Select(r => ResourceTimeline.Of(r.Resource, opening, days, [], Breaks(r.Resource), [], r.Taken))]);
    }

    private static IEnumerable<WorkBreak> Breaks(Resource resource) => resource.Kind != ResourceKind.Technician ? [] :
        Enumerable.Range(1, 5).Select(d => new WorkBreak
        {
            Id = Guid.Empty, ResourceId = resource.Id, Weekday = (IsoDayOfWeek)d, StartsAt = new LocalTime(12, 15), EndsAt = new LocalTime(12, 45),
        });

    private static IEnumerable<(Resource, List<Interval>)> Of(ResourceKind kind, int count) => Enumerable.Range(1, count).Select(i => (
        new Resource { Id = new Guid((int)kind + 1, (short)i, 0, new byte[8]), Kind = kind, Name = $"{kind} {i}" }, new List<Interval>()));
}
