using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>What is on its way, by the day on which it is expected.</summary>
public static class ListDeliveries
{
    private const int Most = 500;

    public sealed record Request;

    public sealed record Row(Guid Id, string PartCode, string Name, PartUnit Unit, decimal Quantity, LocalDate ExpectedOn);

    public sealed record Answer(IReadOnlyList<Row> Rows);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer(await (
            from delivery in db.ExpectedDeliveries.AsNoTracking()
            join part in db.Parts on delivery.PartId equals part.Id
            where delivery.ClosedAt == null
            orderby delivery.ExpectedOn, part.Code
            select new Row(delivery.Id, part.Code, part.Name, part.Unit, delivery.Quantity, delivery.ExpectedOn)).Take(Most).ToListAsync(ct));
}
