using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Finishing;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Finishing;

/// <summary>Parts and tools are counted in or back, tap by tap; a tap below zero takes one back.</summary>
public static class CountThings
{
    private const int MostTaps = 100;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public IReadOnlyList<Tap?>? Taps { get; init; }

        public Instant? CountedAt { get; init; }
    }

    public sealed record Tap
    {
        /// <summary>By its code; absent for something that is not listed yet.</summary>
        public string? Thing { get; init; }

        /// <summary>Of something that is not listed yet.</summary>
        public string? Name { get; init; }

        public CountWay? Way { get; init; }

        /// <summary>So many pieces; below 0 takes taps back.</summary>
        public int? Change { get; init; }
    }

    /// <param name="Things">Those that the send touched.</param>
    public sealed record Answer(int Number, IReadOnlyList<Count> Things);

    /// <param name="Taps">How many taps the two are made of: the greater number knows more.</param>
    public sealed record Count(string Thing, string Name, int WentIn, int CameBack, int Taps, string Words);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Taps).Must(t => t?.OfType<Tap>().Count() is >= 1 and <= MostTaps)
                .WithMessage($"{{PropertyName}} is empty or too long: 1 to {MostTaps} are allowed.");
            RuleForEach(r => r.Taps).ChildRules(tap =>
            {
                tap.RuleFor(t => t!.Thing).IsAtMost(Limits.Code);
                tap.RuleFor(t => t!.Name).IsAtMost(Limits.Code);
                tap.RuleFor(t => t!.Name).Must(n => n is not null && BayCount.CodeOf(n).Length > 0).When(t => string.IsNullOrWhiteSpace(t!.Thing))
                    .WithMessage("{PropertyName} is empty: name the thing, or give the code of one that is listed.");
                tap.RuleFor(t => t!.Way).IsGiven("wentIn or cameBack").IsInEnum();
                tap.RuleFor(t => t!.Change).NotNull().WithMessage("{PropertyName} is empty: give how many.")
                    .IsWhole(-BayCount.MostPieces, BayCount.MostPieces);
                tap.RuleFor(t => t!.Change).NotEqual(0).WithMessage("{PropertyName} is 0: that counts nothing.");
            }).When(r => r.Taps?.OfType<Tap>().Any() == true);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FinishingEntry.Begin(db, request.Number, null, actor, clock, ct)).TryGet(out var entry, out var problem)
            || !entry.When("countedAt", request.CountedAt).TryGet(out var at, out problem))
        {
            return problem;
        }

        var listed = BayCount.Of(entry.Facts).Select(t => t.Thing).ToDictionary(t => t.Code, StringComparer.Ordinal);
        var faults = new List<FieldFault>();
        var added = new List<CountTap>();
        for (var i = 0; i < request.Taps!.Count; i++)
        {
            if (request.Taps[i] is not { } tap)
            {
                continue;
            }

            var thing = string.IsNullOrWhiteSpace(tap.Thing) ? new CountedThing(BayCount.CodeOf(tap.Name!), tap.Name!.Trim()) : listed.GetValueOrDefault(tap.Thing);
            if (thing is null)
            {
                faults.Add(new FieldFault($"taps[{i}].thing", $"taps[{i}].thing is \"{tap.Thing}\": there is {string.Join(", ", listed.Keys)}; give another by its name."));
                continue;
            }

            added.Add(new CountTap
            {
                Id = NewId.At(clock), JobCardNumber = request.Number, ThingCode = thing.Code, ThingName = listed.GetValueOrDefault(thing.Code)?.Name ?? thing.Name,
                Way = tap.Way!.Value, Change = tap.Change!.Value, CountedBy = actor.PersonId, CountedAt = at,
            });
        }

        if (faults.Count > 0)
        {
            return Problem.Impossible("thing-unknown", faults);
        }

        var after = BayCount.Of(entry.Facts with { Finished = entry.Facts.Finished with { Taps = [.. entry.Facts.Finished.Taps, .. added] } });
        if (after.FirstOrDefault(t => Math.Min(t.WentIn, t.CameBack) < 0 || Math.Max(t.WentIn, t.CameBack) > BayCount.MostPieces) is { } wrong)
        {
            return Problem.Conflict("count-impossible", wrong.WentIn < 0 || wrong.CameBack < 0
                ? $"{wrong.Thing.Name}: that would take back more than was counted; look again."
                : $"{wrong.Thing.Name}: at most {BayCount.MostPieces} pieces are counted.");
        }

        db.CountTaps.AddRange(added);
        await db.SaveChangesAsync(ct);
        var touched = added.Select(t => t.ThingCode).ToHashSet(StringComparer.Ordinal);
        return new Answer(request.Number, [.. after.Where(t => touched.Contains(t.Thing.Code))
            .Select(t => new Count(t.Thing.Code, t.Thing.Name, t.WentIn, t.CameBack, t.Taps, t.Words))]);
    }
}
