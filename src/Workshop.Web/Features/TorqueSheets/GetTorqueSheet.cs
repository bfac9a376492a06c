using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>The torque sheet of a visit: every fastener that was opened, what it gets, with which wrench, and how it stands.</summary>
public static class GetTorqueSheet
{
    public sealed record Request(int Number);

    public sealed record Answer(int JobCardNumber, int NotTightened, IReadOnlyList<Section> Sections);

    /// <param name="JointCode">Absent for fasteners that belong to no joint.</param>
    public sealed record Section(string? JointCode, string? Joint, IReadOnlyList<SealLine> Seals, SealantLine? Sealant, IReadOnlyList<Line> Fasteners);

    public sealed record SealLine(string PartCode, string? Part, decimal Quantity, SealPolicy Policy);

    public sealed record SealantLine(string PartCode, string? Part, int CureMinutes);

    /// <param name="Steps">The stages in order, then the final torque.</param>
    public sealed record Line(
        string FastenerCode,
        string Name,
        int Count,
        string Thread,
        ThreadTreatment Treatment,
        string? ThreadCompound,
        IReadOnlyList<Step> Steps,
        decimal? AngleDegrees,
        string? Sequence,
        string Tool,
        IReadOnlyList<SealLine> Seals,
        bool UseOnce,
        string? Note,
        Provenance Provenance,
        TickState State,
        TickLine? Tick);

    /// <param name="Wrenches">Calibrated ones that suit this setting, the finest scale first.</param>
    public sealed record Step(decimal TorqueNm, decimal TorqueLbfFt, decimal TorqueLbfIn, IReadOnlyList<Wrench> Wrenches);

    public sealed record Wrench(Guid Id, string Name, string SerialNumber);

    /// <summary>The last word on the fastener; see the state for whether it still counts.</summary>
    public sealed record TickLine(bool Tightened, string TickedBy, Instant TickedAt, string? Wrench);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var sheet = await Read(db, open, ct);
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var wrenches = await Wrenches(db, ct);
        var words = await Words.Read(db, sheet, ct);
        return new Answer(
            request.Number,
            sheet.Lines.Count(l => !l.IsTightened),
            [.. sheet.Sections.Select(s => new Section(
                s.Joint?.Code,
                s.Joint?.Name,
                [.. (s.Joint?.Seals ?? []).Select(words.Of)],
                s.Joint?.Sealant is { } sealant
                    ? new SealantLine(sealant.PartCode, words.PartName(sealant.PartCode), sealant.CureMinutes)
                    : null,
                [.. s.Lines.Select(l => LineOf(l, words, wrenches, today))]))]);
    }

    /// <summary>The sheet itself, for the use cases that tick and sign off.</summary>
    internal static async Task<TorqueSheet> Read(WorkshopDbContext db, OpenCard open, CancellationToken ct) => TorqueSheet.Of(
        open.Specification,
        open.UnderWay,
        await db.FastenerTicks.AsNoTracking().Where(t => t.JobCardNumber == open.Card.Number).ToListAsync(ct));

    internal static Task<List<Instrument>> Wrenches(WorkshopDbContext db, CancellationToken ct) =>
        db.Instruments.AsNoTracking().Where(i => i.Kind == InstrumentKind.TorqueWrench).ToListAsync(ct);

    private static Line LineOf(TorqueLine line, Words words, List<Instrument> wrenches, LocalDate today)
    {
        var fastener = line.Fastener;
        return new Line(
            fastener.Code, fastener.Name, fastener.Count, fastener.Thread, fastener.Treatment, fastener.ThreadCompound,
            [.. line.Steps.Select(torque => StepOf(torque, wrenches, today))],
            fastener.AngleDegrees, fastener.Sequence, fastener.Tool, [.. fastener.Seals.Select(words.Of)], fastener.UseOnce,
            fastener.Note, fastener.Provenance, line.Tick.State, line.Tick.Last is { } tick ? words.Of(tick) : null);
    }

    private static Step StepOf(Torque torque, List<Instrument> wrenches, LocalDate today) => new(
        torque.NewtonMetres,
        decimal.Round(torque.PoundFeet, 1),
        decimal.Round(torque.PoundInches, 0),
        [.. TorqueWrench.Suited(wrenches, torque, today).Select(w => new Wrench(w.Id, w.Name, w.SerialNumber))]);

    /// <summary>The names behind the codes and ids of a sheet.</summary>
    private sealed record Words(
        Dictionary<string, string> Parts, Dictionary<Guid, string> People, Dictionary<Guid, string> Instruments)
    {
        public static async Task<Words> Read(WorkshopDbContext db, TorqueSheet sheet, CancellationToken ct)
        {
            var codes = sheet.Sections.SelectMany(s => s.Joint?.Seals ?? []).Select(s => s.PartCode)
                .Concat(sheet.Sections.Select(s => s.Joint?.Sealant?.PartCode).OfType<string>())
                .Concat(sheet.Lines.SelectMany(l => l.Fastener.Seals).Select(s => s.PartCode))
                .ToHashSet();
            var ticks = sheet.Lines.Select(l => l.Tick.Last).OfType<FastenerTick>().ToList();
            var people = ticks.Select(t => t.TickedBy).ToHashSet();
            var wrenches = ticks.Select(t => t.WrenchId).OfType<Guid>().ToHashSet();
            return new Words(
                await db.Parts.Where(p => codes.Contains(p.Code)).ToDictionaryAsync(p => p.Code, p => p.Name, ct),
                await db.People.Where(p => people.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Name, ct),
                await db.Instruments.Where(i => wrenches.Contains(i.Id)).ToDictionaryAsync(i => i.Id, i => $"{i.Name} ({i.SerialNumber})", ct));
        }

        public string? PartName(string code) => Parts.GetValueOrDefault(code);

        public SealLine Of(Seal seal) => new(seal.PartCode, PartName(seal.PartCode), seal.Quantity, seal.Policy);

        public TickLine Of(FastenerTick tick) => new(
            tick.Tightened, People[tick.TickedBy], tick.TickedAt, tick.WrenchId is { } id ? Instruments[id] : null);
    }
}
