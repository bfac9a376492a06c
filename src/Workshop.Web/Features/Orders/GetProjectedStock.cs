using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Kits;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>One part on the days to come, day by day: what comes, what visits want, what is then there.</summary>
public static class GetProjectedStock
{
    /// <param name="Days">From today.</param>
    public sealed record Request(string PartCode, int? Days = null);

    /// <param name="PartCode">Of a part that was merged into another, that one's.</param>
    /// <param name="Deliveries">Expected, with the day from which work can count on them.</param>
    public sealed record Answer(
        string PartCode,
        string Name,
        PartUnit Unit,
        LocalDate Today,
        LocalDate Until,
        decimal Reserved,
        decimal Expired,
        IReadOnlyList<Delivery> Deliveries,
        IReadOnlyList<Visit> Visits,
        ProjectedStock Stock);

    public sealed record Delivery(decimal Quantity, LocalDate ExpectedOn, LocalDate UsableFrom);

    public sealed record Visit(int JobCardNumber, string Registration, LocalDate On, decimal Needed, decimal HaveReady, decimal Reserved)
    {
        /// <summary>Of what lies there, what expires before the visit, in words; absent where all of it lasts.</summary>
        public string? Ends { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of the part").IsAtMost(Limits.Code);
            RuleFor(r => r.Days).IsWhole(1, ListProjectedStock.MostDays);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartsByCode.Read(db, [request.PartCode], ct)).TryGetValue(request.PartCode, out var part))
        {
            return Problem.NotFound($"Part {request.PartCode}");
        }

        if (part.Kind == PartKind.Shim)
        {
            return Problem.Impossible("part-is-shim", "partCode",
                $"partCode is \"{part.Code}\", a shim: a kit holds none. What visits will want of shims is in the stocking of shims.");
        }

        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var today = calendar.Time.DayOf(clock.GetCurrentInstant());
        var until = today.PlusDays(request.Days ?? ListProjectedStock.UsualDays);
        var kits = await BookedKits.Read(db, calendar.Time, today, ct);
        var needs = kits.Needs[part.Id].OrderBy(n => n.On).ThenBy(n => n.JobCardNumber).ToList();
        var there = (await PartsOnHand.Read(db, [part.Id], today, ct))[part.Id];
        var deliveries = (await PartsOnHand.Deliveries(db, calendar, today, ct))[part.Id].OrderBy(d => d.ExpectedOn).ToList();
        return new Answer(
            part.Code, part.Name, part.Unit, today, until, there.Reserved, there.Expired,
            deliveries.ConvertAll(d => new Delivery(d.Quantity, d.ExpectedOn, d.UsableFrom)),
            [.. needs.Where(n => n.On <= until && n.Needed + n.HaveReady > 0)
                .Select(n => new Visit(n.JobCardNumber, kits.Visits[n.JobCardNumber].Registration, n.On, n.Needed, n.HaveReady, n.Reserved)
                {
                    Ends = LotWords.Ends(part.Unit, there.Lots.Select(l => new LotQuantity(l.ExpiresOn, l.OnHand)), n.On),
                })],
            ProjectedStock.Of(new DateInterval(today, until), there.Lots, deliveries, needs));
    }
}
