using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Gauges;

/// <summary>The blades of a feeler set, thin to thick, each with its checks, the newest first.</summary>
public static class GetBlades
{
    public sealed record Request(Guid InstrumentId);

    public sealed record Answer(Guid InstrumentId, string Name, string SerialNumber, string Unit, IReadOnlyList<Blade> Blades);

    /// <param name="NominalIn">What is marked on it, of inch sets.</param>
    /// <param name="DeviationMm">Measured less nominal, where it was measured.</param>
    public sealed record Blade(
        Guid Id, decimal NominalMm, decimal? NominalIn, decimal? MeasuredMm, decimal? DeviationMm, bool Withdrawn, IReadOnlyList<Check> Checks);

    public sealed record Check(Instant CheckedAt, string CheckedBy, decimal? MeasuredMm, string? Micrometer, bool Withdrawn, string? Remark);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await db.Instruments.AsNoTracking().SingleOrDefaultAsync(i => i.Id == request.InstrumentId, ct) is not { Kind: InstrumentKind.FeelerSet } set)
        {
            return Problem.NotFound($"Feeler set {request.InstrumentId}");
        }

        var blades = await db.FeelerBlades.AsNoTracking().Where(b => b.InstrumentId == set.Id).OrderBy(b => b.Nominal).ToListAsync(ct);
        var checks = (await (
            from check in db.BladeChecks.AsNoTracking()
            join blade in db.FeelerBlades on check.BladeId equals blade.Id
            where blade.InstrumentId == set.Id
            join person in db.People on check.CheckedBy equals person.Id
            join micrometer in db.Instruments on check.MicrometerId equals micrometer.Id into with
            from used in with.DefaultIfEmpty()
            join remark in db.Remarks on check.RemarkId equals remark.Id into said
            from words in said.DefaultIfEmpty()
            orderby check.CheckedAt descending, check.Id descending
            select new { check, person.Name, Micrometer = used == null ? null : used.Name + " (" + used.SerialNumber + ")", Remark = words == null ? null : words.Text })
            .ToListAsync(ct)).ToLookup(c => c.check.BladeId);
        return new Answer(set.Id, set.Name, set.SerialNumber, set.Unit,
            [.. blades.Select(b => new Blade(
                b.Id, b.Nominal.Millimetres, set.Unit == "in" ? decimal.Round(b.Nominal.Inches, 4) : null, b.Measured?.Millimetres,
                b.Measured?.Millimetres - b.Nominal.Millimetres, b.Withdrawn,
                [.. checks[b.Id].Select(c => new Check(c.check.CheckedAt, c.Name, c.check.Measured?.Millimetres, c.Micrometer, c.check.Withdrawn, c.Remark))]))]);
    }
}
