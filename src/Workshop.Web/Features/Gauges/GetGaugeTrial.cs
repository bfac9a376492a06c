using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Statistics.Gauges;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

/// <summary>
/// A study: how far it is, and what it found. While readings are missing nobody is shown what was read before, so that no hand is
/// led by an eye.
/// </summary>
public static class GetGaugeTrial
{
    /// <param name="Interaction">By the test where nothing is said.</param>
    public sealed record Request(Guid Id, string? Interaction = null);

    public sealed record Answer(
        Guid Id,
        string Name,
        GaugeDesign Design,
        Guid? InstrumentId,
        string Unit,
        int Parts,
        int Trials,
        decimal? Tolerance,
        Instant StartedAt,
        Instant? GivenUpAt,
        int Wanted,
        int Read,
        IReadOnlyList<Appraiser> Appraisers,
        IReadOnlyList<Reading> Readings,
        Analysis? Analysis,
        string? WhyNoAnalysis);

    /// <param name="NextPart">What this person reads next; absent when all is read.</param>
    public sealed record Appraiser(Guid PersonId, string Name, int Read, int? NextPart, int? NextTrial);

    /// <summary>Of a study that is complete or given up.</summary>
    public sealed record Reading(Guid AppraiserId, int Part, int Trial, decimal Value, bool Corrected);

    /// <param name="Table">The analysis of variance, by source.</param>
    /// <param name="Categories">How many classes of parts can be told apart, not rounded.</param>
    /// <param name="Confidence">Of all limits, as a share.</param>
    public sealed record Analysis(
        GaugeTrust Trust,
        IReadOnlyList<string> Words,
        bool InteractionPooled,
        IReadOnlyList<Source> Table,
        IReadOnlyList<Component> Components,
        double TotalDeviation,
        double Confidence,
        double? Categories,
        double? CategoriesLower,
        double? CategoriesUpper,
        int? DistinctCategories);

    /// <param name="F">Against what it is tested; absent where it is not tested, or nothing scatters.</param>
    public sealed record Source(string Name, int DegreesOfFreedom, double SumOfSquares, double MeanSquare, double? F, double? PValue);

    /// <param name="Deviation">Standard deviation, in the unit of the readings.</param>
    public sealed record Component(string Name, double Deviation, double Lower, double Upper, double ShareOfVariance, double ShareOfDeviation);

    public sealed class Validator : FluentValidation.AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Interaction).IsWordOf<Request, InteractionRule>();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await GaugeTrialRows.Find(db, request.Id, ct) is not { } rows)
        {
            return Problem.NotFound($"Gauge study {request.Id}");
        }

        var (trial, standing) = (rows.Trial, rows.Standing);
        var rule = Words.Read<InteractionRule>(request.Interaction) ?? InteractionRule.ByTest;
        var found = GaugeTrialPlan.Analyse(trial, [.. rows.Appraisers.Select(a => a.PersonId)], standing, rule);
        var open = standing.Count == rows.Wanted || trial.GivenUpAt is not null;
        return new Answer(
            trial.Id, trial.Name, trial.Design, trial.InstrumentId, trial.Unit, trial.Parts, trial.Trials, trial.Tolerance, trial.StartedAt,
            trial.GivenUpAt, rows.Wanted, standing.Count,
            [.. rows.Appraisers.Select(a =>
            {
                var next = GaugeTrialPlan.Next(trial, a.PersonId, standing);
                return new Appraiser(a.PersonId, a.Name, standing.Count(r => r.AppraiserId == a.PersonId), next?.Part, next?.Trial);
            })],
            open ? [.. standing.Select(r => new Reading(r.AppraiserId, r.Part, r.Trial, r.Value, r.SupersedesId is not null))] : [],
            found.HasValue ? AnalysisOf(found.Value, trial) : null,
            found.HasValue ? null : found.WhyNot!.Explanation);
    }

    private static Analysis AnalysisOf(GaugeAnalysis study, GaugeTrial trial)
    {
        var verdict = GaugeVerdict.Of(study, trial.Tolerance, trial.Unit);
        var categories = study.Categories.HasValue ? study.Categories.Value : null;
        var table = new List<Source>
        {
            SourceOf("parts", study.PartsTest),
            SourceOf("appraisers", study.AppraisersTest),
        };
        if (study.InteractionTest is { } interaction)
        {
            table.Add(SourceOf("parts by appraisers", interaction));
        }

        var repeat = study.Table.Repeatability;
        table.Add(new Source("from reading to reading", repeat.DegreesOfFreedom, repeat.SumOfSquares, repeat.MeanSquare, null, null));
        return new Analysis(
            verdict.Trust, verdict.Sentences, study.Table.InteractionPooled, table,
            [
                ComponentOf("repeatability", study.Repeatability),
                ComponentOf("reproducibility", study.Reproducibility),
                ComponentOf("of which people", study.Appraisers),
                ComponentOf("of which people by part", study.Interaction),
                ComponentOf("measuring altogether", study.Gauge),
                ComponentOf("parts", study.Parts),
            ],
            study.TotalStandardDeviation, study.Gauge.StandardDeviation.Confidence,
            categories?.Estimate, Finite(categories?.Lower), Finite(categories?.Upper),
            study.DistinctCategories.HasValue ? study.DistinctCategories.Value : null);
    }

    private static Source SourceOf(string name, Domain.Statistics.AnalysisOfVariance test) => new(
        name, test.Explained.DegreesOfFreedom, test.Explained.SumOfSquares, test.Explained.MeanSquare,
        test.F.HasValue ? test.F.Value : null, test.PValue.HasValue ? test.PValue.Value : null);

    private static Component ComponentOf(string name, GaugeComponent c) => new(
        name, c.StandardDeviation.Estimate, c.StandardDeviation.Lower, c.StandardDeviation.Upper, c.ShareOfVariance, c.ShareOfDeviation);

    private static double? Finite(double? value) => value is { } v && double.IsFinite(v) ? v : null;
}
