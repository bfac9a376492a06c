using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Finishing;

/// <summary>Makes the answer of <see cref="GetAfterWork"/> out of the facts of a visit, with the words and names that its rows point at.</summary>
internal sealed class AfterWorkReader(WorkshopDbContext db, OpenCard open, SignOffFacts facts, Actor actor)
{
    private static readonly ISignOffRule[] Rules =
    [
        new AsLeftSetHasASecondPerson(), new CylindersAreBalanced(), new NothingLeaks(), new TestRideIsSaid(), new RechecksAreDone(), new ReminderIsSaid(),
        new EverythingIsCountedBack(),
    ];

    private Dictionary<Guid, string> people = [];
    private Dictionary<Guid, string> texts = [];
    private Dictionary<Guid, string> gauges = [];

    private FinishedWork Work => facts.Finished;

    public async Task<GetAfterWork.Answer> Read(CancellationToken ct)
    {
        await ReadNames(ct);
        var specification = open.Specification;
        var turned = Rechecks.Of(facts);
        return new GetAfterWork.Answer(
            open.Card.Number,
            open.Card.State,
            [.. AskedChecks.Of(facts).Select(a => new GetAfterWork.Asked(a.Kind, a.Because, a.Stated?.Note, a.Stated?.SpokenFigures(specification) ?? ""))],
            open.Card.State == JobCardState.CheckedIn ? [.. Rules.SelectMany(r => r.Against(facts)).Select(r => new GetAfterWork.Open(r.Subject, r.Sentence))] : [],
            BalanceOf(specification),
            [.. LeakPlaces.StatesOf(facts).Select(Of)],
            await RideOf(ct),
            [.. turned.Select(Of)],
            [.. OpenedDrive.Of(specification.CamDrives, facts.ToBeTight).Select(d => new GetAfterWork.Drive(d.Drive.Code, d.Drive.Name, d.Recheck(facts.CamRechecks) is not null))],
            Attempts.Last(Work.Reminders) is { } reset ? new GetAfterWork.Reminder(reset.Outcome, Text(reset.WordsRemarkId), reset.EnteredAt, Name(reset.EnteredBy)) : null,
            [.. BayCount.Of(facts).Select(t => new GetAfterWork.Thing(
                t.Thing.Code, t.Thing.Name, t.WentIn, t.CameBack, t.Taps, t.Difference, t.Words, Text(t.Explanation?.WordsRemarkId),
                t.Explanation is { } e ? Name(e.ExplainedBy) : null))],
            AsLeftOf(),
            [.. Earlier().OrderBy(e => e.At)]);
    }

    private GetAfterWork.Balance BalanceOf(EngineSpecification specification)
    {
        var figures = specification.VisitChecks.FirstOrDefault(c => c.Kind == VisitCheckKind.Balance)?.Balance;
        return new GetAfterWork.Balance(
            [.. specification.Layout.Cylinders.Select(c => c.Number)],
            figures,
            [.. Work.Balances.OrderBy(b => b.Stage).ThenBy(b => b.Attempt).Select(run =>
            {
                var judged = BalanceJudgement.Of(figures, run.Vacuums);
                return new GetAfterWork.Run(
                    run.Stage, run.Attempt, Work.Balances.All(b => b.SupersedesId != run.Id), run.SpeedRpm, run.HotAt.Celsius, run.HotOf,
                    gauges.GetValueOrDefault(run.GaugeId, ""), judged.Verdict, judged.Sentence,
                    [.. judged.Cylinders.Select(c => new GetAfterWork.Cylinder(c.Cylinder, c.Vacuum.Kilopascals, decimal.Round(c.Vacuum.MillimetresOfMercury, 1), c.FromKpa))],
                    run.MeasuredAt, Name(run.MeasuredBy), Text(run.ReasonRemarkId));
            })]);
    }

    private GetAfterWork.Place Of(LeakPlaceState place) => new(
        place.Place.Code, place.Place.Name, place.Last?.State, Text(place.Last?.WordsRemarkId), place.Last?.RunMinutes, place.Last?.LookedAt,
        place.Last is { } look ? Name(look.LookedBy) : null, place.TightenedSince, place.IsOpen);

    private async Task<GetAfterWork.Ride?> RideOf(CancellationToken ct)
    {
        if (Attempts.Last(Work.Rides) is not { } ride)
        {
            return null;
        }

        var count = ride.OdometerReadingId is { } id
            ? await db.OdometerReadings.AsNoTracking().Where(r => r.Id == id).Select(r => (int?)r.Count).SingleAsync(ct)
            : null;
        return new GetAfterWork.Ride(
            ride.WhyNot is null, ride.WhyNot, ride.RiderId is { } rider ? Name(rider) : null, ride.Distance?.Kilometres, count, Text(ride.WordsRemarkId),
            ride.RiddenAt, Name(ride.EnteredBy));
    }

    private GetAfterWork.Again Of(RecheckState recheck) => new(
        recheck.Key, recheck.Point, recheck.Fastener?.Code, recheck.Name, recheck.Fastener?.Torque.NewtonMetres, recheck.CoolHours,
        recheck.CoolHours is { } hours && open.EngineStoppedAt is { } stopped ? Rechecks.CooledFrom(stopped, hours) : null,
        recheck.Last?.InOrder, Text(recheck.Last?.WordsRemarkId), Text(recheck.Last?.EarlyRemarkId), recheck.Last?.RecheckedAt,
        recheck.Last is { } last ? Name(last.RecheckedBy) : null, recheck.TightenedSince);

    private GetAfterWork.AsLeft AsLeftOf()
    {
        var set = AsLeftSet.Of(facts.Readings);
        var confirmed = set.Confirmed(facts.AsLeftWitnesses);
        return new GetAfterWork.AsLeft(
            facts.AskAsLeftSecondPerson, set.Count, open.Card.State == JobCardState.CheckedIn && set.Against(set.Count, actor.PersonId, facts.AsLeftWitnesses) is null,
            confirmed is null ? null : Name(confirmed.WitnessedBy), confirmed?.WitnessedAt,
            confirmed is null && set.Count > 0 && (facts.AskAsLeftSecondPerson || facts.AsLeftWitnesses.Count > 0) ? AsLeftSet.Words(facts.AsLeftWitnesses) : null);
    }

    private IEnumerable<GetAfterWork.Entry> Earlier()
    {
        foreach (var (look, next) in Superseded(Work.Leaks, l => l.SupersedesId))
        {
            yield return new($"Leak check, {look.PlaceName}", Said(look.State.Spoken(), look.WordsRemarkId), look.LookedAt, Name(look.LookedBy), Text(next.ReasonRemarkId));
        }

        foreach (var (ride, next) in Superseded(Work.Rides, r => r.SupersedesId))
        {
            var words = ride.WhyNot is { } why ? $"not ridden: {why.Spoken()}" : FormattableString.Invariant($"{ride.Distance!.Value.Kilometres:0.#} km by {Name(ride.RiderId!.Value)}");
            yield return new("Test ride", Said(words, ride.WordsRemarkId), ride.RiddenAt, Name(ride.EnteredBy), Text(next.ReasonRemarkId));
        }

        foreach (var (recheck, next) in Superseded(Work.Rechecks, r => r.SupersedesId))
        {
            var what = recheck.FastenerCode is { } code ? facts.Specification.Fasteners.FirstOrDefault(f => f.Code == code)?.Name ?? code
                : recheck.Point == RecheckPoint.Cooled ? "the cooled engine" : "oil level after the run";
            yield return new($"Re-check, {what}", Said(recheck.InOrder ? "in order" : "not in order", recheck.WordsRemarkId), recheck.RecheckedAt, Name(recheck.RecheckedBy), Text(next.ReasonRemarkId));
        }

        foreach (var (reset, next) in Superseded(Work.Reminders, r => r.SupersedesId))
        {
            yield return new("Service reminder", Said(reset.Outcome.Spoken(), reset.WordsRemarkId), reset.EnteredAt, Name(reset.EnteredBy), Text(next.ReasonRemarkId));
        }
    }

    private static IEnumerable<(T Row, T Next)> Superseded<T>(IReadOnlyList<T> rows, Func<T, Guid?> supersedes)
        where T : class, IAttempt =>
        from row in rows
        let next = rows.FirstOrDefault(n => supersedes(n) == row.Id)
        where next is not null
        select (row, next);

    private async Task ReadNames(CancellationToken ct)
    {
        people = await db.People.AsNoTracking().Where(p => p.IsStaff).ToDictionaryAsync(p => p.Id, p => p.Name, ct);
        Guid?[] remarks =
        [
            .. Work.Balances.Select(b => b.ReasonRemarkId),
            .. Work.Leaks.SelectMany(l => new[] { l.WordsRemarkId, l.ReasonRemarkId }),
            .. Work.Rides.SelectMany(r => new[] { r.WordsRemarkId, r.ReasonRemarkId }),
            .. Work.Rechecks.SelectMany(r => new[] { r.WordsRemarkId, r.EarlyRemarkId, r.ReasonRemarkId }),
            .. Work.Reminders.SelectMany(r => new[] { r.WordsRemarkId, r.ReasonRemarkId }),
            .. Work.Explanations.Select(e => (Guid?)e.WordsRemarkId),
        ];
        var ids = remarks.OfType<Guid>().Distinct().ToArray();
        texts = await db.Remarks.AsNoTracking().Where(r => ids.Contains(r.Id)).ToDictionaryAsync(r => r.Id, r => r.Text, ct);
        var used = Work.Balances.Select(b => b.GaugeId).Distinct().ToArray();
        gauges = await db.Instruments.AsNoTracking().Where(i => used.Contains(i.Id)).ToDictionaryAsync(i => i.Id, i => $"{i.Name}, {i.SerialNumber}", ct);
    }

    private string Name(Guid person) => people.GetValueOrDefault(person, "somebody who is gone");

    private string? Text(Guid? remark) => remark is { } id ? texts.GetValueOrDefault(id) : null;

    private string Said(string what, Guid? remark) => Text(remark) is { } words ? $"{what}: {words}" : what;
}
