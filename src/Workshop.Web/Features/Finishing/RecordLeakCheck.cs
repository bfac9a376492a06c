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

/// <summary>
/// The engine ran warm, and somebody looked: each place is dry, weeps or leaks. A send may name some of the places; of each, the
/// last look counts. A leak holds the sign-off until the place was put right and looked at again.
/// </summary>
public static class RecordLeakCheck
{
    public const int LongestRunMinutes = 240;
    private const int MostPlaces = 60;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>How long the engine ran.</summary>
        public int? RunMinutes { get; init; }

        public IReadOnlyList<PlaceRow?>? Places { get; init; }

        public Instant? LookedAt { get; init; }

        /// <summary>Why a place is entered again.</summary>
        public string? Reason { get; init; }
    }

    public sealed record PlaceRow
    {
        /// <summary>As the page of the visit names it; absent for a place that is not among them.</summary>
        public string? Code { get; init; }

        /// <summary>Of a place that is not among them.</summary>
        public string? Name { get; init; }

        public LeakState? State { get; init; }

        /// <summary>What is seen; asked where it is not dry.</summary>
        public string? Words { get; init; }
    }

    public sealed record Answer(int Number, int Looked, IReadOnlyList<string> Leaking, IReadOnlyList<string> Weeping);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.RunMinutes).NotNull().WithMessage("{PropertyName} is empty: give how many minutes the engine ran.").IsWhole(1, LongestRunMinutes);
            RuleFor(r => r.Places).Must(p => p?.OfType<PlaceRow>().Count() is >= 1 and <= MostPlaces)
                .WithMessage($"{{PropertyName}} is empty or too long: say of 1 to {MostPlaces} places how they look.");
            RuleForEach(r => r.Places).SetValidator(new PlaceValidator()!);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
        }
    }

    private sealed class PlaceValidator : AbstractValidator<PlaceRow>
    {
        public PlaceValidator()
        {
            RuleFor(r => r.Code).IsAtMost(Limits.Code);
            RuleFor(r => r.Name).IsAtMost(Limits.Code);
            RuleFor(r => r.Name).Must(n => n is not null && BayCount.CodeOf(n).Length > 0).When(r => string.IsNullOrWhiteSpace(r.Code))
                .WithMessage("{PropertyName} is empty: name the place, or give the code of one that is listed.");
            RuleFor(r => r.State).IsChosen("what was seen", FinishingWords.Spoken).IsInEnum();
            RuleFor(r => r.Words).IsGiven("what is seen there").When(r => r.State is LeakState.Weeping or LeakState.Leaking);
            RuleFor(r => r.Words).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FinishingEntry.Begin(db, request.Number, request.Reason, actor, clock, ct)).TryGet(out var entry, out var problem)
            || !entry.When("lookedAt", request.LookedAt).TryGet(out var at, out problem))
        {
            return problem;
        }

        var known = LeakPlaces.StatesOf(entry.Facts);
        var faults = new List<FieldFault>();
        var seen = new List<(LeakPlaceState Place, PlaceRow Row)>();
        for (var i = 0; i < request.Places!.Count; i++)
        {
            if (request.Places[i] is { } row)
            {
                var place = Find(known, row);
                if (place is null)
                {
                    faults.Add(new FieldFault($"places[{i}].code", $"places[{i}].code is \"{row.Code}\": there is {string.Join(", ", known.Select(k => k.Place.Code))}; name another place by its name."));
                }
                else if (seen.Exists(s => s.Place.Place.Code == place.Place.Code))
                {
                    faults.Add(new FieldFault($"places[{i}].code", $"places[{i}] is \"{place.Place.Name}\" for the second time: each place once."));
                }
                else
                {
                    seen.Add((place, row));
                }
            }
        }

        if (faults.Count > 0)
        {
            return Problem.Impossible("place-unknown", faults);
        }

        if (entry.AgainstAgain(seen.Select(s => (s.Place.Place.Name, (IAttempt?)s.Place.Last))) is { } again)
        {
            return again;
        }

        db.LeakLooks.AddRange(seen.Select(s => new LeakLook
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, PlaceCode = s.Place.Place.Code, PlaceName = s.Place.Place.Name,
            Attempt = Attempts.After(s.Place.Last), State = s.Row.State!.Value, WordsRemarkId = entry.Words(s.Row.Words),
            RunMinutes = request.RunMinutes!.Value, LookedAt = at, LookedBy = actor.PersonId, EnteredAt = entry.Now,
            SupersedesId = s.Place.Last?.Id, ReasonRemarkId = entry.ReasonFor(s.Place.Last),
        }));
        entry.EngineRanUntil(at);
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, seen.Count, Names(LeakState.Leaking), Names(LeakState.Weeping));

        string[] Names(LeakState state) => [.. seen.Where(s => s.Row.State == state).Select(s => s.Place.Place.Name)];
    }

    private static LeakPlaceState? Find(IReadOnlyList<LeakPlaceState> known, PlaceRow row)
    {
        var code = string.IsNullOrWhiteSpace(row.Code) ? BayCount.CodeOf(row.Name!) : row.Code;
        return known.FirstOrDefault(k => k.Place.Code == code)
            ?? (string.IsNullOrWhiteSpace(row.Code) ? new LeakPlaceState(new LeakPlace(code, row.Name!.Trim(), []), null, false) : null);
    }
}
