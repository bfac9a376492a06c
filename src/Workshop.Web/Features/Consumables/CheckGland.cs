using FluentValidation;
using NodaTime;
using Workshop.Domain.Consumables;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Consumables;

/// <summary>Squeeze, stretch and fill of an O-ring in a gland, over all that the tolerances allow.</summary>
public static class CheckGland
{
    private const decimal LargestMm = 1000;
    private const int DecimalsMm = 3;

    public sealed record Request
    {
        public string? Kind { get; init; }

        /// <summary>A size number or inner diameter x section: "AS568-214", "25 x 2.5".</summary>
        public string? Ring { get; init; }

        /// <summary>More or less; that of the catalogue where a size number is given and this is not.</summary>
        public decimal? InnerToleranceMm { get; init; }

        public decimal? SectionToleranceMm { get; init; }

        /// <summary>Radial: diameter of the groove's bottom. Face: of the wall that the ring lies against.</summary>
        public decimal? GrooveMm { get; init; }

        public decimal? GrooveToleranceMm { get; init; }

        /// <summary>The bore, or the diameter of what goes through it. Of a face groove its depth.</summary>
        public decimal? CounterpartMm { get; init; }

        public decimal? CounterpartToleranceMm { get; init; }

        /// <summary>Of the groove.</summary>
        public decimal? WidthMm { get; init; }

        public decimal? WidthToleranceMm { get; init; }
    }

    /// <param name="RingTolerances">Which tolerances of the ring were taken, in words.</param>
    public sealed record Answer(
        GlandKind Kind, string Ring, string RingTolerances, Percent Squeeze, Percent UsualSqueeze, Percent Stretch, Percent Fill,
        decimal SectionFromMm, decimal SectionToMm, IReadOnlyList<GlandRemark> Remarks, string Source);

    public sealed record Percent(decimal Least, decimal Most);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Kind).IsGiven("where the groove is").IsWordOf<Request, GlandKind>();
            RuleFor(r => r.Ring).IsGiven("the ring").IsAtMost(Limits.Code);
            RuleFor(r => r.Ring).Must(s => string.IsNullOrWhiteSpace(s) || SizeQuestion.TryParse(s, false, out var q) && q.Of == SizeOf.ORing)
                .WithMessage((_, s) => $"{{PropertyName}} is \"{s}\": inner diameter x section such as 25 x 2.5, or a number such as AS568-214 is allowed.");
            RuleFor(r => r.GrooveMm).IsGiven("the groove's diameter").IsWithin(0.1m, LargestMm, DecimalsMm, "mm");
            RuleFor(r => r.CounterpartMm).IsGiven("the bore, what goes through it, or a face groove's depth").IsWithin(0.1m, LargestMm, DecimalsMm, "mm");
            RuleFor(r => r.WidthMm).IsGiven("the groove's width").IsWithin(0.1m, LargestMm, DecimalsMm, "mm");
            RuleFor(r => r.InnerToleranceMm).IsWithin(0, 5, DecimalsMm, "mm");
            RuleFor(r => r.SectionToleranceMm).IsWithin(0, 1, DecimalsMm, "mm");
            RuleFor(r => r.GrooveToleranceMm).IsWithin(0, 5, DecimalsMm, "mm");
            RuleFor(r => r.CounterpartToleranceMm).IsWithin(0, 5, DecimalsMm, "mm");
            RuleFor(r => r.WidthToleranceMm).IsWithin(0, 5, DecimalsMm, "mm");
        }
    }

    public static Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) => Task.FromResult(Answered(request));

    private static Outcome<Answer> Answered(Request request)
    {
        var question = SizeQuestion.TryParse(request.Ring, false, out var read) ? read : throw new InvalidOperationException("The validator lets no such ring through.");
        var known = question.Code is { } code ? SizeCatalogue.Find(code) : null;
        if (question.Code is not null && known is null)
        {
            return Problem.Impossible("size-unknown", "ring",
                $"ring is \"{request.Ring}\": the catalogue has no {question.Code}; it has {SizeCatalogue.Numbers}. Give inner diameter and section instead.");
        }

        var size = known?.Size ?? SealSize.ORing(question.FirstMm, question.SecondMm);
        var (innerTolerance, sectionTolerance) = (request.InnerToleranceMm ?? known?.InnerToleranceMm ?? 0, request.SectionToleranceMm ?? known?.SectionToleranceMm ?? 0);
        var kind = Words.Read<GlandKind>(request.Kind)!.Value;
        if (TooWide(request, size, innerTolerance, sectionTolerance) is { } wide)
        {
            return wide;
        }

        var gland = new Gland(
            kind, Span.Around(request.GrooveMm!.Value, request.GrooveToleranceMm ?? 0),
            Span.Around(request.CounterpartMm!.Value, request.CounterpartToleranceMm ?? 0), Span.Around(request.WidthMm!.Value, request.WidthToleranceMm ?? 0));
        if (!gland.HasRoom)
        {
            return Problem.Impossible("no-room", "counterpartMm",
                $"counterpartMm is {request.CounterpartMm:0.###} mm and grooveMm {request.GrooveMm:0.###} mm: between them {(kind == GlandKind.RadialInBore ? "the groove must be the larger" : "there must be room for the ring")}, whatever the tolerances.");
        }

        var fit = ORingGland.Fit(Span.Around(size.InnerMm, innerTolerance), Span.Around(size.SectionMm, sectionTolerance), gland);
        var (least, most) = GlandVerdict.SqueezeBand(kind);
        return new Answer(
            kind, size.ToString(), Tolerances(innerTolerance, sectionTolerance, known is not null && request.InnerToleranceMm is null),
            Of(fit.Squeeze), new Percent((decimal)least, (decimal)most), Of(fit.Stretch), Of(fit.Fill),
            Math.Round((decimal)fit.SectionMm.Lowest, 2), Math.Round((decimal)fit.SectionMm.Highest, 2), GlandVerdict.Of(kind, fit), GlandVerdict.Source);
    }

    private static Problem? TooWide(Request request, SealSize size, decimal innerTolerance, decimal sectionTolerance)
    {
        var lengths = new[]
        {
            ("innerToleranceMm", innerTolerance, size.InnerMm), ("sectionToleranceMm", sectionTolerance, size.SectionMm),
            ("grooveToleranceMm", request.GrooveToleranceMm ?? 0, request.GrooveMm!.Value),
            ("counterpartToleranceMm", request.CounterpartToleranceMm ?? 0, request.CounterpartMm!.Value),
            ("widthToleranceMm", request.WidthToleranceMm ?? 0, request.WidthMm!.Value),
        };
        var faults = lengths.Where(l => l.Item2 >= l.Item3).Select(l =>
            new FieldFault(l.Item1, FormattableString.Invariant($"{l.Item1} is {l.Item2:0.###} mm: less than the length itself, {l.Item3:0.###} mm, is allowed."))).ToList();
        return faults.Count == 0 ? null : Problem.Impossible("tolerance-too-wide", faults);
    }

    private static string Tolerances(decimal inner, decimal section, bool ofCatalogue) =>
        inner == 0 && section == 0 ? "nominal sizes only: no tolerance of the ring is known"
        : FormattableString.Invariant($"inner ±{inner:0.###} mm, section ±{section:0.###} mm{(ofCatalogue ? ", by the size table (inner tolerance not verified)" : "")}");

    private static Percent Of(PercentSpan span) => new(Math.Round((decimal)span.Least, 1), Math.Round((decimal)span.Most, 1));
}
