using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>
/// Says what the plan of a card is to be made by: aim, guard band, set all, and shims chosen by hand. What is not given stays
/// as it was, so that two people may choose for two valves at once. Answers with the plan made anew.
/// </summary>
public static class ChooseShimPlan
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public PlanAim? Aim { get; init; }

        public bool? SetAll { get; init; }

        public GuardBand? Guard { get; init; }

        /// <summary>Takes back every choice made by hand, before those of this send are made.</summary>
        public bool FreeAll { get; init; }

        public IReadOnlyList<Lock?>? Locks { get; init; }
    }

    public sealed record Lock
    {
        public string? Valve { get; init; }

        /// <summary>The code of a shim of the plan, or <c>stay</c>; empty takes the choice back.</summary>
        public string? Shim { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Aim).IsInEnum();
            RuleFor(r => r.Guard).IsInEnum();
            RuleForEach(r => r.Locks).SetValidator(new LockValidator()!);
        }
    }

    public static async Task<Outcome<GetShimPlan.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var typed = (request.Locks ?? []).Select((row, index) => (Path: $"locks[{index}]", Row: row)).Where(l => l.Row is not null)
            .Select(l => (l.Path, Valve: ValveKey.Parse(l.Row!.Valve!), l.Row.Shim)).ToList();
        var unknown = typed.Select(l => ReadingRules.FaultOfValve($"{l.Path}.valve", l.Valve, open.Specification)).OfType<FieldFault>().ToList();
        if (unknown.Count > 0)
        {
            return Problem.Impossible("not-possible", unknown);
        }

        var last = await CardPlan.LastChoice(db, request.Number, ct);
        var locks = (request.FreeAll ? [] : last?.Locks ?? []).ToDictionary(l => l.Valve, l => l.Shim);
        foreach (var (_, valve, shim) in typed)
        {
            locks.Remove(valve);
            if (!string.IsNullOrWhiteSpace(shim))
            {
                locks.Add(valve, shim.Trim());
            }
        }

        var choice = new ShimPlanChoice
        {
            JobCardNumber = request.Number,
            Version = (last?.Version ?? 0) + 1,
            Aim = request.Aim ?? last?.Aim ?? PlanAim.SetTo,
            SetAll = request.SetAll ?? last?.SetAll ?? false,
            Guard = request.Guard ?? last?.Guard ?? GuardBand.Off,
            Locks = [.. locks.OrderBy(l => l.Key).Select(l => new ShimLock(l.Key, l.Value))],
            ChosenBy = actor.PersonId,
            ChosenAt = clock.GetCurrentInstant(),
        };
        var card = await CardPlan.Make(db, open, choice, ct);
        var faults = typed.Where(l => !string.IsNullOrWhiteSpace(l.Shim))
            .SelectMany(l => card.Plan.SetAside.Where(s => s.Valve == l.Valve).Select(s => new FieldFault(
                $"{l.Path}.shim", $"{l.Path}.shim is {l.Shim}, which cannot be chosen for {l.Valve.Spoken}: {s.Why}. {Allowed(card.Plan, l.Valve)}")))
            .ToList();
        if (faults.Count > 0)
        {
            return Problem.Impossible("not-possible", faults);
        }

        db.ShimPlanChoices.Add(choice);
        await db.SaveChangesAsync(ct);
        return await GetShimPlan.Say(db, card, ct);
    }

    private static string Allowed(ShimPlan plan, ValveKey valve)
    {
        var at = plan.Valves.Single(v => v.Valve == valve);
        var codes = at.Alternatives.Select(a => a.Shim?.Code).Append(at.Shim?.Code).OfType<string>().Distinct().Append(ShimLot.Stay).ToList();
        return $"The plan offers it {string.Join(", ", codes)}.";
    }

    private sealed class LockValidator : AbstractValidator<Lock>
    {
        public LockValidator()
        {
            RuleFor(l => l.Valve).IsValve();
            RuleFor(l => l.Shim).IsAtMost(Limits.Name);
        }
    }
}
