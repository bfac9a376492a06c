using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

/// <summary>One item that is due, as a list says it: figures for programs, sentences for people.</summary>
public sealed record DueLine
{
    public required Guid MotorcycleId { get; init; }

    public required string Registration { get; init; }

    public required string Maker { get; init; }

    public required string Model { get; init; }

    public string? Owner { get; init; }

    /// <summary>What the sentences are said in.</summary>
    public required OdometerUnit OdometerUnit { get; init; }

    public required string Code { get; init; }

    public required string Name { get; init; }

    public LocalDate? DueOn { get; init; }

    [JsonPropertyName("dueAtKm")]
    public Distance? DueAt { get; init; }

    /// <summary>From the last reading; below zero when it is passed.</summary>
    [JsonPropertyName("leftKm")]
    public Distance? Left { get; init; }

    public required LocalDate ExpectedOn { get; init; }

    /// <summary>One case in ten is before this day.</summary>
    public LocalDate? EarliestOn { get; init; }

    /// <summary>Nine cases in ten are by this day.</summary>
    public LocalDate? LatestOn { get; init; }

    public RateBasis? RateBasis { get; init; }

    public LocalDate? LastDoneOn { get; init; }

    [JsonPropertyName("lastDoneAtKm")]
    public Distance? LastDoneAt { get; init; }

    public required DueState State { get; init; }

    /// <summary>When it comes up in the list: when it is expected, or until when it was put off.</summary>
    public required LocalDate ComesOn { get; init; }

    /// <summary>What the proposed visit does with it.</summary>
    public required DueAdvice Advice { get; init; }

    /// <summary>Minutes of opening and closing that doing it in that visit saves.</summary>
    public required int SavesMinutes { get; init; }

    /// <summary>The bigger item that it is done with.</summary>
    public string? IncludedIn { get; init; }

    public Postponed? PutOff { get; init; }

    /// <summary>"at 24,000 km, in 900 km".</summary>
    public string? ByDistance { get; init; }

    /// <summary>The distance is that of the drift forecast, which comes before the interval's.</summary>
    public bool ByForecast { get; init; }

    /// <summary>The day on which a valve was left outside its limits, where that is why the check is due again.</summary>
    public LocalDate? LeftOutsideOn { get; init; }

    /// <summary>"2026-05-01, in 8 weeks".</summary>
    public string? ByDate { get; init; }

    /// <summary>"2026-04-20 (2026-03-30 to 2026-06-01), by its own readings".</summary>
    public required string Expected { get; init; }

    /// <summary>"2025-04-30 at 12,030 km", or that nobody has recorded it.</summary>
    public required string LastDone { get; init; }

    /// <summary>"in 900 km: do it in the same visit, saves 2 h 0 min"; absent where there is nothing to say.</summary>
    public string? Proposal { get; init; }

    /// <summary>An item that was put off.</summary>
    /// <param name="Spoken">"until 2027-03-01: owner wants it in spring (Ada Visor, 2026-11-26)".</param>
    public sealed record Postponed(LocalDate Until, string Reason, string DecidedBy, LocalDate DecidedOn, string Spoken);

    /// <summary>The lines of some items, in their order, by as many queries as there are tables.</summary>
    internal static async Task<IReadOnlyList<DueLine>> Read(
        WorkshopDbContext db, IReadOnlyList<DueItem> items, LocalDate today, CancellationToken ct)
    {
        var motorcycles = items.Select(i => i.MotorcycleId).Distinct().ToList();
        var found = await (
            from motorcycle in db.Motorcycles.AsNoTracking()
            join odometer in db.Odometers on motorcycle.Id equals odometer.MotorcycleId
            join person in db.People on motorcycle.OwnerId equals person.Id into owners
            from owner in owners.DefaultIfEmpty()
            where motorcycles.Contains(motorcycle.Id) && odometer.RemovedOn == null
            select new Subject(motorcycle.Id, motorcycle.Registration, motorcycle.Maker, motorcycle.Model, owner!.Name, odometer.Unit))
            .ToDictionaryAsync(m => m.Id, ct);
        var ids = items.Select(i => i.PutOffId).OfType<Guid>().ToList();
        var putOffs = ids.Count == 0
            ? []
            : await (
                from decided in db.PutOffs.AsNoTracking()
                join person in db.People on decided.DecidedBy equals person.Id
                where ids.Contains(decided.Id)
                select new { decided, person.Name }).ToDictionaryAsync(
                    p => p.decided.Id,
                    p => new Postponed(
                        p.decided.Until!.Value, p.decided.Reason, p.Name, p.decided.DecidedOn,
                        $"until {Days.Write(p.decided.Until.Value)}: {p.decided.Reason} ({p.Name}, {Days.Write(p.decided.DecidedOn)})"),
                    ct);
        var leftOutside = await LeftOutsideDays.Load(db, [.. items.Where(IsWantedSinceItWasDone).Select(i => i.MotorcycleId).Distinct()], ct);
        var names = items.DistinctBy(i => (i.MotorcycleId, i.ServiceItemCode)).ToDictionary(i => (i.MotorcycleId, i.ServiceItemCode), i => i.Name);
        return [.. items.Where(i => found.ContainsKey(i.MotorcycleId)).Select(i => Of(
            found[i.MotorcycleId], i, i.PutOffId is { } id ? putOffs[id] : null,
            i.IncludedIn is { } bigger ? names.GetValueOrDefault((i.MotorcycleId, bigger), bigger) : null,
            IsWantedSinceItWasDone(i) && leftOutside.TryGetValue(i.MotorcycleId, out var leftOn) ? leftOn : null, today))];
    }

    /// <summary>Drift wants it where it was last done, so that what was left then may be why.</summary>
    private static bool IsWantedSinceItWasDone(DueItem item) => item.ByForecast && item.DueAt <= item.LastDoneAt;

    private sealed record Subject(Guid Id, string Registration, string Maker, string Model, string? Owner, OdometerUnit Unit);

    private static DueLine Of(Subject motorcycle, DueItem due, Postponed? putOff, string? includedIn, LocalDate? leftOutsideOn, LocalDate today)
    {
        var unit = motorcycle.Unit;
        var left = due.Left is { } far ? DueWords.HowFar(far, unit) : null;

        // The proposal is of the day on which the row was written; what has come up since is done in the same visit too.
        var advice = due.Advice == DueAdvice.Later && due.ComesOn <= today ? DueAdvice.Together : due.Advice;
        var when = left ?? DueWords.When(due.ExpectedOn, today);
        return new DueLine
        {
            MotorcycleId = due.MotorcycleId,
            Registration = motorcycle.Registration,
            Maker = motorcycle.Maker,
            Model = motorcycle.Model,
            Owner = motorcycle.Owner,
            OdometerUnit = unit,
            Code = due.ServiceItemCode,
            Name = due.Name,
            DueOn = due.DueOn,
            DueAt = due.DueAt,
            Left = due.Left,
            ExpectedOn = due.ExpectedOn,
            EarliestOn = due.EarliestOn,
            LatestOn = due.LatestOn,
            RateBasis = due.RateBasis,
            LastDoneOn = due.LastDoneOn,
            LastDoneAt = due.LastDoneAt,
            ByForecast = due.ByForecast,
            ComesOn = due.ComesOn,
            Advice = advice,
            SavesMinutes = due.SavesMinutes,
            IncludedIn = includedIn,
            PutOff = putOff,
            LeftOutsideOn = leftOutsideOn,
            State = leftOutsideOn is null ? DueWords.StateOf(due.DueOn, due.Left, due.ExpectedOn, today)
                : due.ExpectedOn < today ? DueState.Overdue : DueState.Ahead,
            ByDistance = leftOutsideOn is { } leftOn ? DueWords.LeftOutside(leftOn)
                : due.DueAt is { } point
                    ? $"at {DueWords.InUnit(point, unit)}, {left}{(due.ByForecast ? ", by its drift before the interval" : "")}"
                    : null,
            ByDate = due.DueOn is { } day ? $"{Days.Write(day)}, {DueWords.When(day, today)}" : null,
            Expected = DueWords.Expected(due.ExpectedOn, due.EarliestOn, due.LatestOn, due.RateBasis, due.Left),
            LastDone = due.LastDoneOn is { } doneOn ? $"{Days.Write(doneOn)} at {DueWords.InUnit(due.LastDoneAt!.Value, unit)}" : "not recorded",
            Proposal = advice switch
            {
                DueAdvice.BroughtForward => $"{when}: do it in the same visit, saves {VisitDuration.Say(due.SavesMinutes)}",
                DueAdvice.Together when due.SavesMinutes > 0 => $"in the same visit, saves {VisitDuration.Say(due.SavesMinutes)}",
                DueAdvice.Together => "in the same visit",
                DueAdvice.Included => $"done with {includedIn}",
                _ => null,
            },
        };
    }
}
