using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Paper;

/// <summary>What labels are printed of.</summary>
public enum LabelOf
{
    /// <summary>Places of the stores, by their codes.</summary>
    Places,

    /// <summary>Shim boxes, by the code of their shims.</summary>
    ShimBoxes,

    /// <summary>The compartments of one shim box; chosen by their addresses, all where none is.</summary>
    Compartments,

    /// <summary>The kit of one job card.</summary>
    Kit,
}

/// <summary>Labels of places, shim boxes, their compartments, or a kit, each with a code that leads to its page.</summary>
public static class GetLabels
{
    private const int MostLabels = 600;

    public sealed record Request
    {
        public string? Of { get; init; }

        /// <summary>Which of them, by code; all where none is named.</summary>
        public IReadOnlyList<string> Codes { get; init; } = [];

        /// <summary>Compartments: the code of the box's shims.</summary>
        public string? Box { get; init; }

        /// <summary>Kit: the job card.</summary>
        public int? Number { get; init; }

        /// <summary>A kind of label sheet; see <see cref="LabelStock"/>.</summary>
        public string? Stock { get; init; }

        /// <summary>The first free label of the first sheet, from 1.</summary>
        public int? First { get; init; }

        /// <summary>How an address is written so that it works from elsewhere.</summary>
        internal Func<string, Uri> AddressOf { get; init; } = path => new Uri(path, UriKind.Relative);
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Of).IsGiven($"one of {string.Join(", ", Words.All<LabelOf>())}").IsWordOf<Request, LabelOf>();
            RuleFor(r => r.Stock).IsGiven("a kind of label sheet");
            RuleFor(r => r.Stock).Must(s => string.IsNullOrEmpty(s) || LabelStock.Find(s) is not null)
                .WithMessage((_, s) => $"{{PropertyName}} is \"{s}\": one of {string.Join(", ", LabelStock.All.Select(l => l.Code))} is allowed.");
            RuleFor(r => r.First).Must((r, first) => first is null || LabelStock.Find(r.Stock) is not { } stock || (first >= 1 && first <= stock.PerSheet))
                .WithMessage((r, first) => $"{{PropertyName}} is {first}: 1 to {LabelStock.Find(r.Stock)?.PerSheet} is allowed, as a sheet has so many labels.");
            RuleFor(r => r.Box).IsGiven("the code of the box's shims").When(r => Words.Read<LabelOf>(r.Of) == LabelOf.Compartments);
            RuleFor(r => r.Number).NotNull().WithMessage("{PropertyName} is empty: give the number of the job card.").When(r => Words.Read<LabelOf>(r.Of) == LabelOf.Kit);
        }
    }

    public static async Task<Outcome<LabelSheets>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var chosen = request.Codes.ToHashSet(StringComparer.OrdinalIgnoreCase);
        var made = Words.Read<LabelOf>(request.Of)!.Value switch
        {
            LabelOf.Places => await Places(request, db, ct),
            LabelOf.ShimBoxes => await ShimBoxes(request, db, ct),
            LabelOf.Compartments => await Compartments(request, db, ct),
            _ => await Kit(request, db, actor, clock, ct),
        };
        if (!made.TryGet(out var all, out var problem))
        {
            return problem;
        }

        var unknown = chosen.Where(c => all.All(l => !string.Equals(l.Code, c, StringComparison.OrdinalIgnoreCase))).Order(StringComparer.Ordinal).ToList();
        if (unknown.Count > 0)
        {
            return Problem.Impossible("label-unknown", "codes", $"codes names {string.Join(", ", unknown)}: there is none with that code to print a label of.");
        }

        var labels = chosen.Count == 0 ? all : all.FindAll(l => chosen.Contains(l.Code));
        return labels.Count is > 0 and <= MostLabels
            ? new LabelSheets(LabelStock.Find(request.Stock)!, request.First ?? 1, labels)
            : labels.Count == 0 ? Problem.NotFound("Anything to print labels of")
            : Problem.Impossible("labels-many", "codes", $"codes leaves {labels.Count} labels: at most {MostLabels} are printed at once; choose some.");
    }

    private static async Task<Outcome<List<Label>>> Places(Request request, WorkshopDbContext db, CancellationToken ct)
    {
        var places = await db.StoragePlaces.AsNoTracking().Where(p => !p.Retired).OrderBy(p => p.WalkOrder).ThenBy(p => p.Name).ToListAsync(ct);
        return (List<Label>)[.. places.Select(p =>
            new Label(p.Name, [], p.Code, request.AddressOf($"/stores/places/{Uri.EscapeDataString(p.Code)}")))];
    }

    private static async Task<Outcome<List<Label>>> ShimBoxes(Request request, WorkshopDbContext db, CancellationToken ct)
    {
        var boxes = (await Boxes(db, ct)).Select(b => new Label(
            b.Place,
            [b.Name, FormattableString.Invariant($"{b.Series.Smallest.Millimetres:0.00#} to {b.Series.Largest} in steps of {b.Series.StepMm:0.###} mm")],
            b.PartCode, request.AddressOf($"/stores/shims?box={Uri.EscapeDataString(b.PartCode)}"))).ToList();
        return boxes;
    }

    private static async Task<Outcome<List<Label>>> Compartments(Request request, WorkshopDbContext db, CancellationToken ct)
    {
        if ((await Boxes(db, ct)).SingleOrDefault(b => b.PartCode == request.Box) is not { } box)
        {
            return Problem.NotFound($"A shim box of {request.Box}");
        }

        return (List<Label>)[.. BoxMap.Of(box.Series).Compartments.Select(c => new Label(
            c.Nominal.ToString(), [$"{c.Address} of {box.Place}", box.PartCode], c.Address,
            request.AddressOf($"/stores/shims?box={Uri.EscapeDataString(box.PartCode)}&find={Uri.EscapeDataString(c.Address)}")))];
    }

    private static async Task<Outcome<List<Label>>> Kit(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var number = request.Number!.Value;
        if (!(await CardHead.Load(db, number, ct)).TryGet(out var head, out var problem)
            || !(await GetKit.Handle(new GetKit.Request(number), db, actor, clock, ct)).TryGet(out var kit, out problem))
        {
            return problem;
        }

        var shortOf = kit.Lines.Count(l => l.ShortBy > 0);
        return (List<Label>)
        [
            new Label(
                $"Kit of card {number}",
                [
                    $"{head.Registration}, {head.Motorcycle}", head.Time.Say(head.Card.StartsAt),
                    $"{kit.Lines.Count} {(kit.Lines.Count == 1 ? "line" : "lines")}{(shortOf == 0 ? "" : $", {shortOf} short")}, {head.Card.State.Spoken()}",
                ],
                number.ToString(System.Globalization.CultureInfo.InvariantCulture), request.AddressOf($"/job-cards/{number}/kit")),
        ];
    }

    private static async Task<List<ShimBoxRow>> Boxes(WorkshopDbContext db, CancellationToken ct) =>
    [
        .. (await (
            from series in db.ShimSeries.AsNoTracking()
            join part in db.Parts on series.PartId equals part.Id
            join place in db.StoragePlaces on series.PlaceId equals place.Id
            orderby part.Code
            select new { part.Code, part.Name, Place = place.Name, series }).ToListAsync(ct)).Select(b => new ShimBoxRow(b.Code, b.Name, b.Place, b.series)),
    ];

    private sealed record ShimBoxRow(string PartCode, string Name, string Place, ShimSeries Series);
}
