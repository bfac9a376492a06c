using CsCheck;
using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>A workshop of some days, made up: hours, breaks, absences and visits that stand already, and one visit more to find a slot for.</summary>
internal sealed record MadeUpFloor(
    OpeningCalendar Calendar,
    Instant Begin,
    int Days,
    IReadOnlyList<MadeUpResource> Resources,
    VisitShape Shape,
    VisitNeeds Needs,
    PlanTerms Terms)
{
    private static readonly string[] Zones = ["Europe/Vienna", "America/New_York"];

    /// <summary>Before a change of the clocks in either zone, and before none.</summary>
    private static readonly LocalDate[] FirstDays = [new(2026, 3, 27), new(2026, 10, 23), new(2026, 3, 6), new(2026, 10, 30), new(2026, 6, 1)];

    public Interval Window => new(Begin, Begin + Duration.FromDays(Days));

    public WorkshopFloor Floor()
    {
        var first = Calendar.Time.DayOf(Begin);
        var dates = new DateInterval(first, first.PlusDays(Days - 1));
        var opening = new OpeningDays(Calendar, dates);
        return new WorkshopFloor(opening, Window,
            [.. Resources.Select(r => ResourceTimeline.Of(r.Resource, opening, dates, r.Hours, r.Breaks, r.Absences, r.Taken))]);
    }

    public static readonly Gen<MadeUpFloor> Gen = CsCheck.Gen.Int[0, int.MaxValue].Select(Of);

    private static MadeUpFloor Of(int seed)
    {
        const int days = 6;
        var random = new Random(seed);
        var time = new WorkshopTime(DateTimeZoneProviders.Tzdb[Zones[random.Next(Zones.Length)]]);
        var first = FirstDays[random.Next(FirstDays.Length)];
        var calendar = new OpeningCalendar(
            time,
            Enumerable.Range(1, 7).Where(_ => random.Next(6) > 0).Select(d => new OpeningHours
            {
                Weekday = (IsoDayOfWeek)d, OpensAt = new LocalTime(random.Next(1, 9), 0), ClosesAt = new LocalTime(random.Next(12, 19), 30),
            }).ToArray(),
            random.Next(4) == 0 ? [new Holiday { Day = first.PlusDays(random.Next(days)), Name = "Fair" }] : []);
        var begin = time.WholeDay(first).Start;
        var load = random.Next(0, 9);
        var resources = new List<MadeUpResource>();
        Add(ResourceKind.Bay, random.Next(1, 4));
        Add(ResourceKind.Technician, random.Next(1, 4));
        Add(ResourceKind.SpecialTool, random.Next(1, 3));
        Add(ResourceKind.ParkingPlace, random.Next(0, 3));
        var soak = Pick(0, 0, 120, 480, 601);
        var shape = new VisitShape
        {
            ArrivalMinutes = soak > 0 ? Pick(10, 25) : Pick(0, 10, 25),
            ArrivalTakes = (ArrivalTakes)random.Next(3),
            Soak = Duration.FromMinutes(soak),
            WorkMinutes = Pick(1, 33, 60, 250, 700),
            CureMinutes = Pick(0, 0, 45),
            WarmRunMinutes = Pick(0, 15),
            TestRideMinutes = Pick(0, 20),
            Cool = Duration.FromMinutes(Pick(0, 300)),
            RecheckMinutes = Pick(0, 0, 12),
            HandOverMinutes = Pick(0, 15),
        };
        var now = begin + Duration.FromMinutes(random.Next(0, 1500));
        return new MadeUpFloor(calendar, begin, days, resources, shape,
            new VisitNeeds([], random.Next(3) == 0 ? ["tool"] : [], TechnicianGrade.Apprentice, []),
            new PlanTerms
            {
                Now = now,
                NotBefore = random.Next(4) == 0 ? now + Duration.FromMinutes(random.Next(0, 2000)) : null,
                ReadyBy = random.Next(4) == 0 ? now + Duration.FromMinutes(random.Next(500, 6000)) : null,
                PartsFrom = random.Next(4) == 0 ? now + Duration.FromMinutes(random.Next(0, 2000)) : null,
            });

        int Pick(params int[] values) => values[random.Next(values.Length)];

        void Add(ResourceKind kind, int count)
        {
            for (var i = 0; i < count; i++)
            {
                var technician = kind == ResourceKind.Technician;
                var resource = new Resource { Id = new Guid((int)kind + 1, (short)i, 0, new byte[8]), Kind = kind, Name = $"{kind} {i}", Capabilities = kind == ResourceKind.SpecialTool ? ["tool"] : [] };
                var absences = random.Next(3) > 0 ? [] : new[] { Span(random.Next(0, days * 1440), random.Next(30, 2800)) };
                resources.Add(new MadeUpResource(
                    resource,
                    technician && random.Next(2) == 0
                        ? [.. Enumerable.Range(1, 7).Where(_ => random.Next(4) > 0).Select(d => new WorkingHours
                        {
                            ResourceId = resource.Id, Weekday = (IsoDayOfWeek)d, StartsAt = new LocalTime(random.Next(1, 9), 10), EndsAt = new LocalTime(random.Next(11, 20), 0),
                        })]
                        : [],
                    technician && random.Next(2) == 0
                        ? [.. Enumerable.Range(1, 7).Select(d => new WorkBreak
                        {
                            Id = Guid.Empty, ResourceId = resource.Id, Weekday = (IsoDayOfWeek)d, StartsAt = new LocalTime(random.Next(2, 13), 7), EndsAt = new LocalTime(13, 37),
                        })]
                        : [],
                    absences,
                    [.. Enumerable.Range(0, load).Select(_ => Span(random.Next(0, days * 1440), random.Next(1, 400)))]));
            }
        }

        Interval Span(int minute, int length) =>
            new(begin + Duration.FromMinutes(minute), begin + Duration.FromMinutes(minute + length));
    }
}

internal sealed record MadeUpResource(
    Resource Resource, IReadOnlyList<WorkingHours> Hours, IReadOnlyList<WorkBreak> Breaks, IReadOnlyList<Interval> Absences, IReadOnlyList<Interval> Taken);
