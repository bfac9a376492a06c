using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>A supplier sells a part no more. Orders and the audit keep what was.</summary>
public static class RemoveSupply
{
    public sealed record Request(string PartCode, Guid Id, uint? RowVersion) : IExpectsVersion;

    public sealed record Answer(Guid Id);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartOrdering.Lock(db, request.PartCode, ct)).TryGet(out var part, out var problem))
        {
            return problem;
        }

        if (await db.PartSupplies.SingleOrDefaultAsync(s => s.Id == request.Id && s.PartId == part.Id, ct) is not { } supply)
        {
            return Problem.NotFound($"Supply {request.Id} of {part.Code}");
        }

        db.Entry(supply).Property<uint>(MappingExtensions.RowVersion).OriginalValue = request.RowVersion!.Value;
        db.PartSupplies.Remove(supply);
        await db.SaveChangesAsync(ct);
        return new Answer(supply.Id);
    }
}
