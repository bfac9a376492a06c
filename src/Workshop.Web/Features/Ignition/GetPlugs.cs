using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Ignition;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Ignition;

/// <summary>One plug of the engine as it stands at a visit.</summary>
/// <param name="Name">"Plug of cylinder 1".</param>
/// <param name="Condition">Absent until somebody looked; so is what follows.</param>
/// <param name="Means">What the condition likely tells; empty where it tells nothing.</param>
/// <param name="FoundWords">The gap as it came out against what is allowed; absent where nothing is stated or measured.</param>
public sealed record PlugView(
    int Cylinder, int Plug, string Name, PlugCondition? Condition, string Means, decimal? GapFoundMm, string? FoundWords, bool? Renewed, string? PartCode,
    decimal? GapLeftMm, string? LeftWords, GapGauge? Gauge)
{
    internal static IReadOnlyList<PlugView> Of(EngineSpecification specification, IReadOnlyCollection<PlugCheck> ofTheVisit) =>
        [.. PlugRules.PlugsOf(specification).Select(key => Of(specification, key, PlugRules.Standing(ofTheVisit, key)))];

    private static PlugView Of(EngineSpecification specification, PlugKey key, PlugCheck? check) => new(
        key.Cylinder, key.Plug, key.SpokenIn(specification), check?.Condition, check?.Condition.LikelyMeans() ?? "", check?.GapFoundMm,
        Words(check?.GapFoundMm, specification), check?.Renewed, check?.PartCode, check?.GapLeftMm, Words(check?.GapLeftMm, specification), check?.Gauge);

    private static string? Words(decimal? gapMm, EngineSpecification specification) =>
        gapMm is { } mm && specification.SparkPlugs is { } stated ? PlugRules.Judge(mm, stated).Words : null;
}

/// <summary>The spark plugs of a visit: whether they are asked for, what is stated, what was seen, and every entry.</summary>
public static class GetPlugs
{
    public sealed record Request(int Number);

    /// <param name="Asked">Why the engine model holds the sign-off until they are checked; absent where it does not.</param>
    /// <param name="Stated">Absent where the engine model states nothing.</param>
    public sealed record Answer(int Number, string? Asked, SparkPlugs? Stated, IReadOnlyList<PlugView> Plugs, IReadOnlyList<Entry> History);

    public sealed record Entry(
        Guid Id, string Name, int Attempt, PlugCondition Condition, decimal? GapFoundMm, bool Renewed, string? PartCode, decimal GapLeftMm, Instant CheckedAt,
        string CheckedBy, bool Counts, string? Reason);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var rows = await (
            from check in db.PlugChecks.AsNoTracking()
            join person in db.People on check.CheckedBy equals person.Id
            join reason in db.Remarks on check.ReasonRemarkId equals reason.Id into reasons
            from reason in reasons.DefaultIfEmpty()
            where check.JobCardNumber == request.Number
            orderby check.CheckedAt, check.Id
            select new { check, person.Name, Reason = reason.Text }).ToListAsync(ct);
        var checks = rows.ConvertAll(r => r.check);
        var superseded = checks.Select(c => c.SupersedesId).OfType<Guid>().ToHashSet();
        return new Answer(
            request.Number,
            AskedChecks.Find(await SignOffCase.Gather(db, open, ct), VisitCheckKind.Plugs)?.Because,
            open.Specification.SparkPlugs,
            PlugView.Of(open.Specification, checks),
            [.. rows.Select(r => new Entry(
                r.check.Id, r.check.Key.SpokenIn(open.Specification), r.check.Attempt, r.check.Condition, r.check.GapFoundMm, r.check.Renewed, r.check.PartCode,
                r.check.GapLeftMm, r.check.CheckedAt, r.Name, !superseded.Contains(r.check.Id), r.Reason))]);
    }
}
