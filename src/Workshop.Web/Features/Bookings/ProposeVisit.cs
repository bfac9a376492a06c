using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// What a visit of a motorcycle could be for, how long it would take, what it would need and use: before anything is booked.
/// Without items it proposes what is due within a month, and beside each check its adjustment as the forecast has it.
/// </summary>
public static class ProposeVisit
{
    private const int DueWithinDays = 30;

    /// <param name="Item">
    /// Each as code:likelihood. Absent: what is due. An adjustment whose check is not among them is left out.
    /// </param>
    public sealed record Request(Guid? MotorcycleId, IReadOnlyList<string>? Item = null);

    public sealed record Answer(
        Guid MotorcycleId,
        string Registration,
        string Motorcycle,
        string EngineModel,
        bool Invented,
        int SpecificationVersion,
        Provenance Provenance,
        IReadOnlyList<Bookable> Items,
        IReadOnlyList<LabourLine> Labour,
        int BookedMinutes,
        int PossibleMinutes,
        IReadOnlyList<string> Skills,
        IReadOnlyList<string> SpecialTools,
        KitOnShelf Kit)
    {
        /// <summary>What is taken, as a booking names it.</summary>
        public IReadOnlyList<NamedItem> Taken =>
            [.. Items.Where(i => i.Taken is not null).Select(i => new NamedItem(i.Code, i.Taken!.Value))];
    }

    /// <param name="DueOn">When it is expected to fall due, whichever of distance and date comes first.</param>
    /// <param name="FollowsFrom">Of an adjustment, the check that decides on it.</param>
    /// <param name="Outlook">Of an adjustment, how the forecast has it.</param>
    /// <param name="Taken">How it is taken into this proposal; absent when it is left out.</param>
    public sealed record Bookable(
        string Code, string Name, int LabourMinutes, LocalDate? DueOn, string? FollowsFrom, Likelihood? Outlook, Likelihood? Taken);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.MotorcycleId).IsGiven("the motorcycle that comes");
            RuleForEach(r => r.Item).Must(item => ItemInAddress.Read(item) is not null)
                .WithMessage((_, item) => $"{{PropertyName}} is \"{item}\": {ItemInAddress.Form}, is allowed.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        if (!(await VisitSubject.Find(db, request.MotorcycleId!.Value, today, ct)).TryGet(out var subject, out var problem))
        {
            return problem;
        }

        var specification = subject.Version.Specification;
        var due = await db.DueItems.AsNoTracking().Where(d => d.MotorcycleId == subject.Motorcycle.Id)
            .ToDictionaryAsync(d => d.ServiceItemCode, d => d.ExpectedOn, ct);
        var outlooks = await Outlooks(db, subject, ct);
        IReadOnlyList<NamedItem> named = request.Item is { } items
            ? [.. items.Select(i => ItemInAddress.Read(i)!).DistinctBy(n => n.Code)]
            :
        [
            .. specification.ServiceItems
                .Where(i => due.TryGetValue(i.Code, out var on) && on <= today.PlusDays(DueWithinDays))
                .Select(i => new NamedItem(i.Code, Likelihood.Certain)),
            .. outlooks.Select(o => new NamedItem(o.Key, o.Value)),
        ];
        var codes = named.Select(n => n.Code).ToHashSet(StringComparer.Ordinal);
        named = [.. named.Where(n => !VisitItems.LacksItsCheck(specification, n.Code, codes))];
        if (!VisitItems.Choose(specification, named).TryGet(out var chosen, out problem))
        {
            return problem;
        }

        var duration = VisitDuration.Of(specification, chosen);
        var needs = VisitNeeds.Of(chosen);
        var kit = await KitCase.Of(
            db, specification,
            chosen.Where(c => c.Likelihood == Likelihood.Certain).Select(c => c.Item),
            chosen.Where(c => c.Likelihood != Likelihood.Certain).Select(c => c.Item),
            cardNumber: null, today, ct);
        return new Answer(
            subject.Motorcycle.Id,
            subject.Motorcycle.Registration,
            $"{subject.Motorcycle.Maker} {subject.Motorcycle.Model}",
            $"{subject.EngineModel.Maker} {subject.EngineModel.Name}",
            subject.EngineModel.Invented,
            subject.Version.Version,
            specification.Provenance,
            Bookables(specification, due, outlooks, named),
            duration.Lines,
            duration.BookedMinutes,
            duration.PossibleMinutes,
            needs.Skills,
            needs.SpecialTools,
            await KitOnShelf.Read(db, kit, cardNumber: null, closed: false, lacking: null, ct));
    }

    /// <summary>Each adjustment after its check, so that what belongs together stands together.</summary>
    private static IReadOnlyList<Bookable> Bookables(
        EngineSpecification specification,
        Dictionary<string, LocalDate> due,
        IReadOnlyDictionary<string, Likelihood> outlooks,
        IReadOnlyList<NamedItem> named)
    {
        var alone = specification.ServiceItems.Where(i => VisitItems.ChecksOf(specification, i.Code).Count == 0);
        return [.. alone.SelectMany(item => (IEnumerable<Bookable>)
        [
            Bookable(item, null),
            .. VisitItems.Find(specification, item.AdjustmentItem ?? "") is { } adjustment ? [Bookable(adjustment, item.Code)] : Array.Empty<Bookable>(),
        ])];

        Bookable Bookable(ServiceItem item, string? check) => new(
            item.Code,
            item.Name,
            item.LabourMinutes,
            due.TryGetValue(item.Code, out var on) ? on : null,
            check,
            outlooks.TryGetValue(item.Code, out var outlook) ? outlook : null,
            named.FirstOrDefault(n => n.Code == item.Code)?.Likelihood);
    }

    private static async Task<IReadOnlyDictionary<string, Likelihood>> Outlooks(
        WorkshopDbContext db, VisitSubject subject, CancellationToken ct)
    {
        var specification = subject.Version.Specification;
        var forecasts = await db.ClearanceForecasts.AsNoTracking().Where(f => f.EngineId == subject.Fitting.EngineId).ToListAsync(ct);
        var last = await OdometerEntry.Standing(db, subject.Motorcycle.Id)
            .OrderByDescending(r => r.Distance).Select(r => (Distance?)r.Distance).FirstOrDefaultAsync(ct);
        var engineDistance = subject.Fitting.EngineDistanceAt(last ?? subject.Fitting.MotorcycleDistance);
        return specification.ServiceItems
            .Where(check => check.AdjustmentItem is not null)
            .GroupBy(check => check.AdjustmentItem!, StringComparer.Ordinal)
            .ToDictionary(
                checks => checks.Key,
                checks => checks.Min(check => AdjustmentOutlook.Of(check, forecasts, engineDistance)),
                StringComparer.Ordinal);
    }
}
