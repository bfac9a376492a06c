using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Bays;

/// <summary>The steps of a job at the engine, how far each is, and the tools that it takes.</summary>
public static class GetBayJob
{
    public sealed record Request(int Number);

    /// <param name="Now">The first step that is not done; nothing once all are.</param>
    /// <param name="WorkBegun">Somebody said that the work begins.</param>
    /// <param name="AsLeftWaitsFor">What has to be done before the readings as left open.</param>
    /// <param name="CompressionAsked">What of the visit speaks for compression or leak-down, in sentences; empty where nothing does.</param>
    public sealed record Answer(
        int Number, JobCardState State, BayStep? Now, bool WorkBegun, IReadOnlyList<Step> Steps, IReadOnlyList<string> AsLeftWaitsFor,
        IReadOnlyList<Undisturbed> NotDisturbed, IReadOnlyList<string> CompressionAsked);

    /// <param name="Left">What is still to be done, in a few words; empty where it is done.</param>
    /// <param name="Fasteners">The codes of those that are tightened in it.</param>
    public sealed record Step(BayStep Key, string Name, bool Done, string Left, IReadOnlyList<string> Tools, IReadOnlyCollection<string> Fasteners);

    /// <summary>A valve whose camshaft stayed in and that was not touched: what was found may stand as left.</summary>
    /// <param name="Carried">It stands as left already.</param>
    public sealed record Undisturbed(ValveKey Valve, bool Carried);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var begun = open.CheckIn is not null && (await VisitState.Read(db, open, ct)).SoFar.WorkBegunAt is not null;
        var measured = await CardMeasurements.Load(db, request.Number, ct);
        var waits = await AsLeft.Against(db, open, measured, ct);
        var facts = await SignOffCase.Gather(db, open, ct);
        var steps = BaySteps.Of(facts, begun, waits);
        return new Answer(
            request.Number,
            open.Card.State,
            steps.FirstOrDefault(s => !s.Done)?.Step,
            begun,
            [.. steps.Select(s => new Step(s.Step, s.Step.Spoken(), s.Done, s.Left, ToolsOf(s.Step, open), s.Fasteners))],
            waits,
            [.. NotDisturbed(open, measured, facts)],
            CompressionAsked.Because(open.Specification, facts.Readings, facts.Arrival));
    }

    private static IEnumerable<Undisturbed> NotDisturbed(OpenCard open, CardMeasurements measured, SignOffFacts facts)
    {
        var found = open.Specification.Valves.Where(v => Enumerable.Range(1, v.Lobes).All(lobe =>
            Domain.Clearances.ReadingRules.Standing(measured.Readings, new LobeKey(v.Key, lobe), Domain.Clearances.Stage.AsFound) is not null));
        return found.Select(v => v.Key).Where(v => !facts.Disturbed.ContainsKey(v)).Order().Select(valve => new Undisturbed(valve,
            measured.Events.Exists(e => e.Valve == valve && e.Kind == Domain.Clearances.ValveEventKind.NotDisturbed)));
    }

    private static IReadOnlyList<string> ToolsOf(BayStep step, OpenCard open)
    {
        var items = open.ItemsUnderWay;
        var adjustments = open.Items.Select(open.ItemOf).Where(i => i.Kind == ServiceItemKind.ValveClearanceAdjustment).ToList();
        var checks = items.Where(i => i.Kind == ServiceItemKind.ValveClearanceCheck);
        IEnumerable<string> tools = step switch
        {
            BayStep.Open => Opened.By(open.Specification, items).Fasteners.Select(f => f.Tool).Concat(items.SelectMany(i => i.SpecialTools.Select(SpecificationWords.SpokenTool))),
            BayStep.Measure or BayStep.MeasureAgain =>
                checks.SelectMany(i => i.SpecialTools.Select(SpecificationWords.SpokenTool)).Append("Feeler set").Append("Tool for turning the crankshaft").Append(open.Specification.Cold.Method),
            BayStep.Cylinders => ["Compression gauge", "Leak-down tester", "Plug gauge", "Plug spanner", "Tool for turning the crankshaft"],
            BayStep.Adjust when open.Specification.Shims is not null => adjustments.SelectMany(i => i.SpecialTools.Select(SpecificationWords.SpokenTool)).Append("Micrometer").Append("Magnet"),
            BayStep.Adjust => adjustments.SelectMany(i => i.SpecialTools.Select(SpecificationWords.SpokenTool)),
            BayStep.Refit or BayStep.Tighten => Opened.By(open.Specification, items).Fasteners.Select(f => f.Tool).Append("Torque wrenches of the torque sheet"),
            _ => [],
        };
        return [.. tools.Distinct(StringComparer.OrdinalIgnoreCase)];
    }
}
