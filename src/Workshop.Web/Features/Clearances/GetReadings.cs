using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Shims;

namespace Workshop.Web.Features.Clearances;

/// <summary>What was measured at the valves of a visit, by measuring position in running direction, with every attempt.</summary>
public static class GetReadings
{
    public sealed record Request(int Number);

    /// <param name="Turning">Running direction and where it is seen from; overshot: round again, never back, unless the maker says so.</param>
    /// <param name="Cold">Inside which range and by which method the engine counts as cold.</param>
    /// <param name="OdometerCount">As typed at check-in; absent before it.</param>
    /// <param name="AsLeftWaitsFor">What has to be done before the readings as left open; empty where they are open.</param>
    /// <param name="Doubts">Valves where found, left and shims do not agree.</param>
    public sealed record Answer(
        int Number,
        ValveTrainKind ValveTrain,
        string Turning,
        ColdCondition Cold,
        int? OdometerCount,
        OdometerUnit? OdometerUnit,
        IReadOnlyList<string> AsLeftWaitsFor,
        IReadOnlyList<string> Doubts,
        IReadOnlyList<Position> Positions,
        IReadOnlyList<ValveState> Valves);

    /// <param name="CrankDegrees">Absent for lobes that the specification puts at no position.</param>
    public sealed record Position(string Name, decimal? CrankDegrees, string Mark, IReadOnlyList<LobeState> Lobes);

    /// <param name="AsFound">The attempt that stands; absent until it is read.</param>
    /// <param name="AsLeft">The attempt that stands; absent until it is read.</param>
    /// <param name="History">Every attempt, in order.</param>
    public sealed record LobeState(
        ValveKey Valve, int Lobe, string Name, ClearanceLimits Limits, Reading? AsFound, Reading? AsLeft, IReadOnlyList<Reading> History);

    public sealed record Reading(
        Guid Id,
        Stage Stage,
        int Attempt,
        BracketKind Kind,
        Clearance? GoMm,
        Clearance? NoGoMm,
        bool Stacked,
        Verdict Verdict,
        Clearance? TryBladeMm,
        string Words,
        Guid? InstrumentId,
        Temperature? HeadTemperatureC,
        string? TemperatureMethod,
        bool NotCold,
        bool NotRemeasured,
        Instant MeasuredAt,
        Guid MeasuredBy,
        string MeasuredByName,
        Guid EnteredBy,
        Instant EnteredAt,
        Guid? SupersedesId,
        string? Reason)
    {
        internal Bracket Bracket => Bracket.Of(Kind, GoMm, NoGoMm, Stacked);
    }

    /// <param name="ShimOut">What came out; absent until it is seen.</param>
    /// <param name="ShimIn">What went in; absent where none was fitted.</param>
    public sealed record ValveState(
        ValveKey Valve, string Name, Shim? ShimOut, Shim? ShimIn, IReadOnlyList<ValveEventKind> Events, IReadOnlyList<Shim> History);

    /// <param name="ThicknessMm">Absent where nobody measured it.</param>
    public sealed record Shim(
        Guid Id, Stage Stage, ShimThickness? ThicknessMm, Guid? MicrometerId, Instant MeasuredAt, Guid MeasuredBy, string MeasuredByName,
        Guid? SupersedesId, string? Reason);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var measured = await CardMeasurements.Load(db, request.Number, ct);
        var odometer = open.CheckIn is { } checkIn
            ? await db.OdometerReadings.AsNoTracking().SingleAsync(r => r.Id == checkIn.OdometerReadingId, ct)
            : null;
        var texts = await Texts.Load(db, measured, ct);
        return new Answer(
            request.Number,
            open.Specification.ValveTrain,
            $"{(open.Specification.Layout.Turning == TurningDirection.Clockwise ? "clockwise" : "anticlockwise")}, seen from {open.Specification.Layout.TurningSeenFrom}",
            open.Specification.Cold,
            odometer?.Count,
            odometer?.Unit,
            await AsLeft.Against(db, open, measured, ct),
            [.. (await Fitted.Doubts(db, open, measured, ct)).Select(d => d.Sentence)],
            Positions(open.Specification, measured, texts),
            [.. open.Specification.Valves.Select(v => v.Key).Order().Select(v => StateOf(v, measured, texts))]);
    }

    private static List<Position> Positions(EngineSpecification specification, CardMeasurements measured, Texts texts)
    {
        var stated = specification.MeasuringPositions.ToDictionary(p => p.Name);
        var positions = MeasuringOrder.Of(specification).Select(stop => stated.TryGetValue(stop.Name, out var at)
            ? new Position(stop.Name, at.CrankDegrees, at.Mark, [.. stop.Lobes.Select(l => StateOf(l, specification, measured, texts))])
            : new Position(stop.Name, null, "see the maker's manual", [.. stop.Lobes.Select(l => StateOf(l, specification, measured, texts))]))
            .ToList();
        return positions;
    }

    private static LobeState StateOf(LobeKey lobe, EngineSpecification specification, CardMeasurements measured, Texts texts)
    {
        var limits = ReadingRules.LimitsOf(specification, lobe);
        Reading? Standing(Stage stage) =>
            ReadingRules.Standing(measured.Readings, lobe, stage) is { } reading ? Say(reading, limits, texts) : null;
        return new LobeState(lobe.Valve, lobe.Lobe, lobe.Spoken, limits, Standing(Stage.AsFound), Standing(Stage.AsLeft),
            [.. measured.Readings.Where(r => r.Key == lobe).OrderBy(r => r.Stage).ThenBy(r => r.Attempt).Select(r => Say(r, limits, texts))]);
    }

    private static Reading Say(ClearanceReading r, ClearanceLimits limits, Texts texts)
    {
        var verdict = ClearanceVerdict.Of(r.Bracket, limits);
        return new Reading(
            r.Id, r.Stage, r.Attempt, r.Kind, r.Go, r.NoGo, r.Stacked, verdict.Verdict, verdict.TryBlade, verdict.Sentence, r.InstrumentId,
            r.HeadTemperature, r.TemperatureMethod, r.NotCold, r.NotRemeasured, r.MeasuredAt, r.MeasuredBy, texts.Name(r.MeasuredBy), r.EnteredBy,
            r.EnteredAt, r.SupersedesId, texts.Remark(r.ReasonRemarkId));
    }

    private static ValveState StateOf(ValveKey valve, CardMeasurements measured, Texts texts)
    {
        Shim Say(ShimObservation s) => new(
            s.Id, s.Stage, s.Thickness, s.MicrometerId, s.MeasuredAt, s.MeasuredBy, texts.Name(s.MeasuredBy), s.SupersedesId,
            texts.Remark(s.ReasonRemarkId));
        Shim? Standing(Stage stage) => ShimRules.Standing(measured.Shims, valve, stage) is { } shim ? Say(shim) : null;
        return new ValveState(valve, valve.Spoken, Standing(Stage.AsFound), Standing(Stage.AsLeft),
            [.. measured.Events.Where(e => e.Valve == valve).Select(e => e.Kind)],
            [.. measured.Shims.Where(s => s.Valve == valve).OrderBy(s => s.EnteredAt).Select(Say)]);
    }

    /// <summary>Names and remarks of the rows; blank where they were erased.</summary>
    private sealed record Texts(Dictionary<Guid, string> Names, Dictionary<Guid, string> Remarks)
    {
        public static async Task<Texts> Load(WorkshopDbContext db, CardMeasurements measured, CancellationToken ct)
        {
            var people = measured.Readings.Select(r => r.MeasuredBy).Concat(measured.Shims.Select(s => s.MeasuredBy)).Distinct().ToList();
            var remarks = measured.Readings.Select(r => r.ReasonRemarkId).Concat(measured.Shims.Select(s => s.ReasonRemarkId))
                .OfType<Guid>().Distinct().ToList();
            return new Texts(
                await db.People.AsNoTracking().Where(p => people.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Name, ct),
                await db.Remarks.AsNoTracking().Where(r => remarks.Contains(r.Id)).ToDictionaryAsync(r => r.Id, r => r.Text, ct));
        }

        public string Name(Guid person) => Names.GetValueOrDefault(person, "");

        public string? Remark(Guid? remark) => remark is { } id ? Remarks.GetValueOrDefault(id) : null;
    }
}
