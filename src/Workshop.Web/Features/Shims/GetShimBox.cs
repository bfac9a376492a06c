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

/// <summary>One shim box: its compartments with what lies in each, what lies beside them, and what waits on a bench.</summary>
public static class GetShimBox
{
    public sealed record Request(string PartCode);

    /// <param name="Sizes">What is there, the thinnest first; beside every compartment too.</param>
    /// <param name="Compartments">Row by row, empty ones included.</param>
    /// <param name="OnBenches">Came out of engines and is neither put away, nor fitted, nor scrapped.</param>
    public sealed record Answer(
        string PartCode,
        string Name,
        ValveTrainKind Seat,
        decimal DiameterMm,
        ShimThickness SmallestMm,
        ShimThickness LargestMm,
        decimal StepMm,
        string Source,
        string Place,
        int Columns,
        int New,
        int Used,
        IReadOnlyList<Size> Sizes,
        IReadOnlyList<Cell> Compartments,
        IReadOnlyList<ListShims.Row> OnBenches);

    /// <param name="Compartment">Absent where the box has none for it, or it lies in another place.</param>
    public sealed record Size(ShimThickness ThicknessMm, StockCondition Condition, int Count, string Place, string? Compartment, IReadOnlyList<Guid> ShimIds);

    public sealed record Cell(string Address, int Row, int Column, ShimThickness NominalMm, int New, int Used);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.PartCode).IsAtMost(Limits.Code);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ShimBoxes.Named(db, request.PartCode, ct)).TryGet(out var box, out var problem))
        {
            return problem;
        }

        var (part, series) = (box.Part.Id, box.Series);
        var rows = (await ListShims.Rows(
            db, db.Shims.Where(s => s.PartId == part && (s.PlaceId != null || s.BenchCardNumber != null)), null).ToListAsync(ct))
            .Select(ListShims.Say).ToList();
        var inPlaces = rows.Where(r => r.Where == ShimWhere.Box).ToList();
        var byCompartment = inPlaces.Where(r => r.Compartment is not null).ToLookup(r => r.Compartment);
        return new Answer(
            box.Part.Code, box.Part.Name, series.Seat, series.DiameterMm, series.Smallest, series.Largest, series.StepMm, series.Source,
            box.Place.Name, series.Columns,
            inPlaces.Count(r => r.Condition == StockCondition.New), inPlaces.Count(r => r.Condition == StockCondition.Used),
            [.. inPlaces.GroupBy(r => (r.ThicknessMm, r.Condition, r.Place, r.Compartment)).Select(g => new Size(
                g.Key.ThicknessMm, g.Key.Condition, g.Count(), g.Key.Place!, g.Key.Compartment, [.. g.Select(r => r.Id)]))
                .OrderBy(s => s.ThicknessMm).ThenBy(s => s.Condition).ThenBy(s => s.Place, StringComparer.Ordinal)],
            [.. BoxMap.Of(series).Compartments.Select(c => new Cell(
                c.Address, c.Row, c.Column, c.Nominal,
                byCompartment[c.Address].Count(r => r.Condition == StockCondition.New),
                byCompartment[c.Address].Count(r => r.Condition == StockCondition.Used)))],
            [.. rows.Where(r => r.Where == ShimWhere.Bench)]);
    }
}
