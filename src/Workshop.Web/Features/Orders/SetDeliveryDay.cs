using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>The supplier says another day for what is still open of an order: of one line, or of all.</summary>
public static class SetDeliveryDay
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public int Number { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Absent for all lines.</summary>
        public Guid? LineId { get; init; }

        public LocalDate? ExpectedOn { get; init; }
    }

    public sealed record Answer(int Number, int Lines, LocalDate ExpectedOn, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.ExpectedOn).IsGiven("the day on which it is expected now");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OrderLines.Lock(db, request.Number, ct)).TryGet(out var order, out var problem))
        {
            return problem;
        }

        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        if (OrderRules.RefuseReceipt(order) is { } refused)
        {
            return refused;
        }

        if (OrderRules.RefusePast("expectedOn", request.ExpectedOn, today) is { } past)
        {
            return Problem.Impossible("past", [past]);
        }

        var open = await (
            from line in db.PurchaseOrderLines
            join delivery in db.ExpectedDeliveries on line.Id equals delivery.OrderLineId
            where line.OrderNumber == order.Number && delivery.ClosedAt == null && (request.LineId == null || line.Id == request.LineId)
            select new { line, delivery }).ToListAsync(ct);
        if (open.Count == 0)
        {
            return Problem.Conflict("nothing-open", $"Nothing is open of {(request.LineId is null ? $"order {order.Number}" : $"that line of order {order.Number}")} any more.");
        }

        foreach (var pair in open)
        {
            (pair.line.ExpectedOn, pair.delivery.ExpectedOn) = (request.ExpectedOn, request.ExpectedOn!.Value);
        }

        return new Answer(order.Number, open.Count, request.ExpectedOn!.Value, await Versions.Save(db, order, request.RowVersion!.Value, ct));
    }
}
