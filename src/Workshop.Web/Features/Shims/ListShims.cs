using System.Globalization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>Shims one by one, the thinnest first, a page at a time; by part, thickness, condition and where they are.</summary>
public static class ListShims
{
    /// <param name="Where">Box, engine, bench or gone; in the box where it is not given.</param>
    /// <param name="FromMm">The thinnest.</param>
    /// <param name="ToMm">The thickest.</param>
    /// <param name="JobCard">Only those on the bench of this card.</param>
    public sealed record Request(
        string? PartCode = null,
        decimal? FromMm = null,
        decimal? ToMm = null,
        string? Condition = null,
        string? Where = null,
        int? JobCard = null,
        string? After = null,
        int? Take = null);

    /// <param name="NominalMm">What is stamped on it, where that is noted.</param>
    /// <param name="Compartment">Of the box, where it lies in one.</param>
    /// <param name="Valve">In an engine: where it is. On the bench: where it came from.</param>
    /// <param name="CameFrom">The registration of the motorcycle that it came out of.</param>
    public sealed record Row(
        Guid Id,
        string PartCode,
        decimal? DiameterMm,
        ShimThickness ThicknessMm,
        ShimThickness? NominalMm,
        StockCondition Condition,
        ShimWhere Where,
        string? Place,
        string? Compartment,
        Guid? EngineId,
        ValveKey? Valve,
        int? JobCardNumber,
        ShimEnd? Gone,
        string? CameFrom);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.Where).IsWordOf<Request, ShimWhere>();
            RuleFor(r => r.Condition).IsWordOf<Request, StockCondition>();
            RuleFor(r => r.FromMm).IsShimThickness();
            RuleFor(r => r.ToMm).IsShimThickness();
            RuleFor(r => r.After).Must(a => a is null || ReadAfter(a) is not null)
                .WithMessage((_, a) => $"after is \"{a}\": send what the page before gave as next.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var shims = (Words.Read<ShimWhere>(request.Where) ?? (request.JobCard is null ? ShimWhere.Box : ShimWhere.Bench)) switch
        {
            ShimWhere.Box => db.Shims.Where(s => s.PlaceId != null),
            ShimWhere.Engine => db.Shims.Where(s => s.EngineId != null),
            ShimWhere.Bench => db.Shims.Where(s => s.BenchCardNumber != null),
            _ => db.Shims.Where(s => s.Gone != null),
        };
        if (request.JobCard is { } card)
        {
            shims = shims.Where(s => s.BenchCardNumber == card);
        }

        if (Words.Read<StockCondition>(request.Condition) is { } condition)
        {
            shims = shims.Where(s => s.Condition == condition);
        }

        if (request.FromMm is { } from)
        {
            var thinnest = ShimThickness.FromMillimetres(from);
            shims = shims.Where(s => s.Thickness >= thinnest);
        }

        if (request.ToMm is { } to)
        {
            var thickest = ShimThickness.FromMillimetres(to);
            shims = shims.Where(s => s.Thickness <= thickest);
        }

        if (ReadAfter(request.After) is { } after)
        {
            var (thickness, id) = after;
            shims = shims.Where(s => s.Thickness > thickness || (s.Thickness == thickness && s.Id > id));
        }

        var slice = await Rows(db, shims, request.PartCode).ToSlice(
            request.Take, r => $"{r.Shim.Thickness.Millimetres.ToString(CultureInfo.InvariantCulture)}/{r.Shim.Id}", ct);
        return new Slice<Row>([.. slice.Rows.Select(Say)], slice.Next);
    }

    /// <summary>A shim with what is said beside it.</summary>
    internal sealed record Known(
        Shim Shim, string PartCode, ShimSeries? Series, string? Place, string? CameFrom);

    internal static IQueryable<Known> Rows(WorkshopDbContext db, IQueryable<Shim> shims, string? partCode) =>
        from shim in shims.AsNoTracking()
        join part in db.Parts on shim.PartId equals part.Id
        from series in db.ShimSeries.Where(s => s.PartId == shim.PartId).DefaultIfEmpty()
        from place in db.StoragePlaces.Where(p => p.Id == shim.PlaceId).DefaultIfEmpty()
        from motorcycle in db.Motorcycles.Where(m => m.Id == shim.CameFromMotorcycleId).DefaultIfEmpty()
        where partCode == null || part.Code == partCode
        orderby shim.Thickness, shim.Id
        select new Known(shim, part.Code, series, place!.Name, motorcycle!.Registration);

    internal static Row Say(Known known) => new(
        known.Shim.Id, known.PartCode, known.Series?.DiameterMm, known.Shim.Thickness, known.Shim.Nominal, known.Shim.Condition,
        known.Shim.Where, known.Place,
        known.Shim.PlaceId is { } place ? ShimBoxes.CompartmentOf(place, known.Series, known.Shim.Thickness)?.Address : null,
        known.Shim.EngineId, known.Shim.Valve, known.Shim.BenchCardNumber, known.Shim.Gone, known.CameFrom);

    private static (ShimThickness Thickness, Guid Id)? ReadAfter(string? after) =>
        after?.Split('/') is [var mm, var id]
        && decimal.TryParse(mm, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var thickness)
        && thickness >= ShimThickness.SmallestMm && thickness <= ShimThickness.LargestMm
        && decimal.Round(thickness, ShimThickness.DecimalsMm) == thickness
        && Guid.TryParse(id, out var shim)
            ? (ShimThickness.FromMillimetres(thickness), shim)
            : null;
}
