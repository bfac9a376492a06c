using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Domain.Tooling;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Stores;
using Workshop.Web.Features.Tooling;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>The torque sheet of a visit: every fastener that was opened, what it gets, with which wrench, and how it stands.</summary>
public static class GetTorqueSheet
{
    public sealed record Request(int Number);

    public sealed record Answer(int JobCardNumber, int NotTightened, IReadOnlyList<Section> Sections);

    /// <param name="JointCode">Absent for fasteners that belong to no joint.</param>
    public sealed record Section(string? JointCode, string? Joint, IReadOnlyList<SealLine> Seals, SealantLine? Sealant, IReadOnlyList<Line> Fasteners);

    /// <param name="Policy">What is done with it here: what the stores know as fitted once is replaced, unless the maker allows it again.</param>
    public sealed record SealLine(string PartCode, string? Part, decimal Quantity, SealPolicy Policy);

    public sealed record SealantLine(string PartCode, string? Part, int CureMinutes);

    /// <param name="Steps">The stages in order, then the final torque.</param>
    /// <param name="TorqueLowestNm">The maker's range of the final torque, where one is stated.</param>
    /// <param name="Pattern">Where the alike ones lie, in the order of tightening.</param>
    /// <param name="SpaceOverMm">Free over the head where no socket goes on.</param>
    /// <param name="AccessNote">Says so.</param>
    /// <param name="AskSecondPerson">The workshop asks for a second person here.</param>
    public sealed record Line(
        string FastenerCode,
        string Name,
        int Count,
        string Thread,
        ThreadTreatment Treatment,
        string? ThreadCompound,
        IReadOnlyList<Step> Steps,
        decimal? TorqueLowestNm,
        decimal? TorqueHighestNm,
        decimal? AngleDegrees,
        decimal? AngleToleranceDegrees,
        string? Sequence,
        FastenerPattern? Pattern,
        string Tool,
        decimal? SpaceOverMm,
        string? AccessNote,
        IReadOnlyList<SealLine> Seals,
        bool UseOnce,
        string? Note,
        Provenance Provenance,
        bool AskSecondPerson,
        TickState State,
        TickLine? Tick);

    /// <param name="Wrenches">Calibrated ones that suit this torque, with what is dialled; the best first, see <see cref="WrenchChoice"/>.</param>
    /// <param name="Missing">Where none suits: which range is missing, and what comes nearest.</param>
    public sealed record Step(decimal TorqueNm, decimal TorqueLbfFt, decimal TorqueLbfIn, IReadOnlyList<OfferLine> Wrenches, string? Missing);

    /// <summary>The last word on the fastener; see the state for whether it still counts.</summary>
    /// <param name="Dialled">For the final torque, in <paramref name="DialledUnit"/>.</param>
    /// <param name="Cycles">Counted on the wrench.</param>
    public sealed record TickLine(
        Guid Id, bool Tightened, string TickedBy, Instant TickedAt, string? Wrench, string? Adapter, decimal? AdapterAngleDegrees, decimal? Dialled,
        string? DialledUnit, int? Cycles, string? WitnessedBy, Instant? WitnessedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var sheet = await Read(db, open, ct);
        var time = await WorkshopTimes.Read(db, ct);
        var tools = new Tools(
            await WrenchesOnHand.Read(db, time, ct), await WrenchesOnHand.Adapters(db, ct), time.DayOf(clock.GetCurrentInstant()));
        var marked = await SecondPersons.Marked(db, open, ct);
        var words = await Words.Read(db, sheet, ct);
        return new Answer(
            request.Number,
            sheet.Lines.Count(l => !l.IsTightened),
            [.. sheet.Sections.Select(s => new Section(
                s.Joint?.Code,
                s.Joint?.Name,
                [.. (s.Joint?.Seals ?? []).Select(seal => words.Of(seal, fastenerUsedOnce: false))],
                s.Joint?.Sealant is { } sealant
                    ? new SealantLine(sealant.PartCode, words.PartName(sealant.PartCode), sealant.CureMinutes)
                    : null,
                [.. s.Lines.Select(l => LineOf(l, words, tools, marked))]))]);
    }

    /// <summary>The sheet itself, for the use cases that tick and sign off.</summary>
    internal static async Task<TorqueSheet> Read(WorkshopDbContext db, OpenCard open, CancellationToken ct) => TorqueSheet.Of(
        open.Specification,
        open.UnderWay,
        await db.FastenerTicks.AsNoTracking().Where(t => t.JobCardNumber == open.Card.Number).ToListAsync(ct));

    private static Line LineOf(TorqueLine line, Words words, Tools tools, IReadOnlySet<string> marked)
    {
        var fastener = line.Fastener;
        var choices = WrenchTask.Of(fastener).Select(task => (task, Choice: tools.For(task))).ToList();
        return new Line(
            fastener.Code, fastener.Name, fastener.Count, fastener.Thread, fastener.Treatment, fastener.ThreadCompound,
            [.. choices.Select(c => StepOf(c.task.Torque, c.Choice))],
            fastener.TorqueLowest?.NewtonMetres, fastener.TorqueHighest?.NewtonMetres, fastener.AngleDegrees, fastener.AngleToleranceDegrees,
            fastener.Sequence, fastener.Pattern, fastener.Tool, fastener.SpaceOverMm, choices[^1].Choice.AccessNote,
            [.. fastener.Seals.Select(seal => words.Of(seal, fastener.UseOnce))], fastener.UseOnce, fastener.Note, fastener.Provenance, marked.Contains(fastener.Code),
            line.Tick.State, line.Tick.Last is { } tick ? words.Of(tick) : null);
    }

    private static Step StepOf(Torque torque, WrenchChoice choice) => new(
        torque.NewtonMetres,
        decimal.Round(torque.PoundFeet, 1),
        decimal.Round(torque.PoundInches, 0),
        [.. choice.Offers.Select(OfferLine.Of)],
        choice.Missing);

    /// <summary>What there is to choose from on the day. A sheet asks for the same torque with the same tool many times.</summary>
    private sealed class Tools(IReadOnlyList<WrenchOnHand> wrenches, IReadOnlyList<WrenchAdapter> adapters, LocalDate today)
    {
        private readonly Dictionary<WrenchTask, WrenchChoice> made = [];

        public WrenchChoice For(WrenchTask task)
        {
            if (!made.TryGetValue(task, out var choice))
            {
                made.Add(task, choice = WrenchChoice.For(task, wrenches, adapters, today));
            }

            return choice;
        }
    }

    /// <summary>The names behind the codes and ids of a sheet.</summary>
    private sealed record Words(
        IReadOnlyDictionary<string, Part> Parts,
        Dictionary<Guid, string> People,
        Dictionary<Guid, (string Name, string Unit)> Instruments,
        Dictionary<Guid, string> Adapters,
        Dictionary<Guid, TickWitness> Witnesses)
    {
        public static async Task<Words> Read(WorkshopDbContext db, TorqueSheet sheet, CancellationToken ct)
        {
            var codes = sheet.Sections.SelectMany(s => s.Joint?.Seals ?? []).Select(s => s.PartCode)
                .Concat(sheet.Sections.Select(s => s.Joint?.Sealant?.PartCode).OfType<string>())
                .Concat(sheet.Lines.SelectMany(l => l.Fastener.Seals).Select(s => s.PartCode))
                .ToHashSet();
            var ticks = sheet.Lines.Select(l => l.Tick.Last).OfType<FastenerTick>().ToList();
            var ids = ticks.Select(t => t.Id).ToHashSet();
            var witnesses = await db.TickWitnesses.AsNoTracking().Where(w => ids.Contains(w.TickId)).ToDictionaryAsync(w => w.TickId, ct);
            var people = ticks.Select(t => t.TickedBy).Concat(witnesses.Values.Select(w => w.WitnessedBy)).ToHashSet();
            var wrenches = ticks.Select(t => t.WrenchId).OfType<Guid>().ToHashSet();
            var adapters = ticks.Select(t => t.AdapterId).OfType<Guid>().ToHashSet();
            return new Words(
                await PartsByCode.Read(db, codes, ct),
                await db.People.Where(p => people.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Name, ct),
                await db.Instruments.Where(i => wrenches.Contains(i.Id)).ToDictionaryAsync(i => i.Id, i => ($"{i.Name} ({i.SerialNumber})", i.Unit), ct),
                await db.WrenchAdapters.Where(a => adapters.Contains(a.Id)).ToDictionaryAsync(a => a.Id, a => a.Name, ct),
                witnesses);
        }

        public string? PartName(string code) => Parts.GetValueOrDefault(code)?.Name;

        public SealLine Of(Seal seal, bool fastenerUsedOnce) => new(
            seal.PartCode, PartName(seal.PartCode), seal.Quantity, seal.PolicyFor(fastenerUsedOnce, Parts.GetValueOrDefault(seal.PartCode)));

        public TickLine Of(FastenerTick tick)
        {
            var witness = Witnesses.GetValueOrDefault(tick.Id);
            var wrench = tick.WrenchId is { } id ? Instruments[id] : ((string Name, string Unit)?)null;
            return new TickLine(
                tick.Id, tick.Tightened, People[tick.TickedBy], tick.TickedAt, wrench?.Name, tick.AdapterId is { } adapter ? Adapters[adapter] : null,
                tick.AdapterAngleDegrees, tick.Dialled, tick.Dialled is null ? null : wrench?.Unit, tick.Cycles,
                witness is null ? null : People[witness.WitnessedBy], witness?.WitnessedAt);
        }
    }
}
