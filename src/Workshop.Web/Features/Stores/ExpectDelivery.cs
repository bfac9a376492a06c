using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Parts are ordered and expected on a day: visits whose kit is short of them can start on the working day after.</summary>
public static class ExpectDelivery
{
    private const decimal SmallestQuantity = 0.0001m;
    private const decimal LargestQuantity = 1_000_000m;
    private const int QuantityDecimals = 4;

    public sealed record Request
    {
        public string? PartCode { get; init; }

        /// <summary>In the part's unit: pieces, or millilitres.</summary>
        public decimal? Quantity { get; init; }

        public LocalDate? ExpectedOn { get; init; }
    }

    public sealed record Answer(Guid Id, string PartCode, string Name, PartUnit Unit, decimal Quantity, LocalDate ExpectedOn);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of what is ordered").IsAtMost(Limits.Code);
            RuleFor(r => r.Quantity).IsGiven("how much is ordered").IsWithin(SmallestQuantity, LargestQuantity, QuantityDecimals, "pieces or ml");
            RuleFor(r => r.ExpectedOn).IsGiven("the day on which it is expected");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        if (!(await PartsByCode.Read(db, [request.PartCode!], ct)).TryGetValue(request.PartCode!, out var part))
        {
            return Problem.Impossible("part-unknown", "partCode",
                $"partCode is \"{request.PartCode}\": no part has it; choose one of GET /api/v1/stock.");
        }

        if (part.Kind == PartKind.Shim)
        {
            return Problem.Impossible("part-is-shim", "partCode",
                $"partCode is \"{request.PartCode}\", a shim: a kit holds none, so no visit waits for it here; take it in when it comes.");
        }

        if (PackageSizes.Refuse("quantity", part, request.Quantity!.Value, supply: null) is { } fault)
        {
            return Problem.Impossible("quantity", [fault]);
        }

        if (request.ExpectedOn < today)
        {
            return Problem.Impossible("past", "expectedOn",
                $"expectedOn is {Days.Write(request.ExpectedOn.Value)}, which is past; {Days.Write(today)} or a later day is allowed.");
        }

        var delivery = new ExpectedDelivery
        {
            Id = NewId.At(clock), PartId = part.Id, Quantity = request.Quantity!.Value, ExpectedOn = request.ExpectedOn!.Value,
            EnteredBy = actor.PersonId, EnteredAt = now,
        };
        db.ExpectedDeliveries.Add(delivery);
        await db.SaveChangesAsync(ct);
        return new Answer(delivery.Id, part.Code, part.Name, part.Unit, delivery.Quantity, delivery.ExpectedOn);
    }
}
