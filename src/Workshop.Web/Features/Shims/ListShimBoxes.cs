using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Shims;

/// <summary>The shim boxes of the workshop with their series, by code.</summary>
public static class ListShimBoxes
{
    public sealed record Request;

    public sealed record Answer(IReadOnlyList<Box> Boxes);

    /// <param name="Count">Shims in places of the stores, new and used.</param>
    public sealed record Box(
        string PartCode, string Name, ValveTrainKind Seat, decimal DiameterMm, ShimThickness SmallestMm, ShimThickness LargestMm,
        decimal StepMm, string Place, int Count);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer(await (
            from series in db.ShimSeries.AsNoTracking()
            join part in db.Parts on series.PartId equals part.Id
            join place in db.StoragePlaces on series.PlaceId equals place.Id
            orderby part.Code
            select new Box(
                part.Code, part.Name, series.Seat, series.DiameterMm, series.Smallest, series.Largest, series.StepMm, place.Name,
                db.Shims.Count(s => s.PartId == part.Id && s.PlaceId != null))).ToListAsync(ct));
}
