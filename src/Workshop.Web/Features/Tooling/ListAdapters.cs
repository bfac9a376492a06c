using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>What goes between a torque wrench and a fastener, retired ones last; or one of them.</summary>
public static class ListAdapters
{
    public sealed record Request(Guid? Id = null);

    public sealed record Answer(IReadOnlyList<Row> Adapters);

    /// <param name="EffectiveLengthMm">From the centre of the drive to the centre of the fastener; 0 of a straight extension.</param>
    /// <param name="ThicknessMm">Of the end that goes over the fastener.</param>
    public sealed record Row(
        Guid Id, string Name, WrenchAdapterKind Kind, decimal EffectiveLengthMm, decimal? ThicknessMm, string? Drive, string Tool, bool Retired,
        uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer(await Rows(db, null).ToListAsync(ct));

    public static async Task<Outcome<Row>> HandleOne(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        await Rows(db, request.Id).SingleOrDefaultAsync(ct) is { } row ? row : Problem.NotFound($"Wrench adapter {request.Id}");

    private static IQueryable<Row> Rows(WorkshopDbContext db, Guid? id) =>
        from adapter in db.WrenchAdapters.AsNoTracking()
        where id == null || adapter.Id == id
        orderby adapter.Retired, adapter.Name
        select new Row(
            adapter.Id, adapter.Name, adapter.Kind, adapter.EffectiveLengthMm, adapter.ThicknessMm, adapter.Drive, adapter.Tool, adapter.Retired,
            EF.Property<uint>(adapter, MappingExtensions.RowVersion));
}
