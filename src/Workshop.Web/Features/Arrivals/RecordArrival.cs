using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Arrivals;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Arrivals;

/// <summary>
/// Writes what was seen of a motorcycle that is here, or what its owner complains of: all of a send or none. What is said anew of the
/// same thing, corrected or struck takes the place of what stood there, with a reason.
/// </summary>
public static class RecordArrival
{
    public const int MostRows = 60;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public IReadOnlyList<Row?>? Notes { get; init; }

        /// <summary>Leaks, damage and lamps were looked for: of those of which nothing is said, none was seen.</summary>
        public bool NothingElseSeen { get; init; }

        /// <summary>Why what was said before is said anew.</summary>
        public string? Reason { get; init; }
    }

    public sealed record Row
    {
        public ArrivalKind? Kind { get; init; }

        /// <summary>Absent where nothing of the kind was seen.</summary>
        public ArrivalSubject? Subject { get; init; }

        public ArrivalState? State { get; init; }

        /// <summary>One of the usual places of a leak or of damage, or "elsewhere", where words say it.</summary>
        public string? Place { get; init; }

        /// <summary>Where, what, how much.</summary>
        public string? Words { get; init; }

        /// <summary>The note that this one takes the place of; needed where several may stand, such as leaks.</summary>
        public Guid? Corrects { get; init; }

        /// <summary>What it corrects was not so at all.</summary>
        public bool Struck { get; init; }
    }

    /// <param name="Missing">What nobody has said yet.</param>
    public sealed record Answer(int Number, int Written, IReadOnlyList<string> Missing);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            this.NotesAreShaped(r => r.Notes);
            RuleFor(r => r.Notes).Must((r, notes) => r.NothingElseSeen || (notes ?? []).Any(n => n is not null))
                .WithMessage("Nothing was entered: give at least one note, or say that nothing else was seen.");
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
        }
    }

    /// <summary>The shape of notes, as a check-in and a later send type them.</summary>
    internal static void NotesAreShaped<T>(this AbstractValidator<T> rules, System.Linq.Expressions.Expression<Func<T, IReadOnlyList<Row?>?>> notes)
    {
        rules.RuleFor(notes).Must(n => n is null || n.Count <= MostRows)
            .WithMessage($"{{PropertyName}} has more than the {MostRows} rows that are allowed.");
        rules.RuleForEach(System.Linq.Expressions.Expression.Lambda<Func<T, IEnumerable<Row?>?>>(notes.Body, notes.Parameters)).SetValidator(new RowValidator()!);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var _, out var problem))
        {
            return problem;
        }

        var begun = await db.PhaseStarts.AnyAsync(s => s.JobCardNumber == request.Number && s.Phase == VisitPhase.Work, ct);
        var entry = new ArrivalEntry(
            db, request.Number, begun ? ArrivalStage.DuringWork : ArrivalStage.OnArrival, request.Reason, actor, clock,
            await db.ArrivalNotes.AsNoTracking().Where(n => n.JobCardNumber == request.Number).ToListAsync(ct));
        if (entry.Add("notes", request.Notes, request.NothingElseSeen) is { } refused)
        {
            return refused;
        }

        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, entry.Written, ArrivalRules.Missing(entry.All));
    }

    private sealed class RowValidator : AbstractValidator<Row>
    {
        public RowValidator()
        {
            RuleFor(r => r.Kind).IsChosen("what was looked at", ArrivalWords.Spoken).When(r => !r.Struck);
            RuleFor(r => r.State).NotNull().When(r => !r.Struck).WithMessage("{PropertyName} is empty: say in which state it is.");
            RuleFor(r => r.Corrects).NotNull().When(r => r.Struck).WithMessage("{PropertyName} is empty: name the note that was not so.");
            RuleFor(r => r.Place).IsAtMost(Limits.Name);
            RuleFor(r => r.Words).IsAtMost(Limits.Remark);
            RuleFor(r => r.Words).Must((r, words) => words?.Length > Limits.Remark || ArrivalPlaces.Sentence(r.Place, words) is not { Length: > Limits.Remark })
                .WithMessage($"{{PropertyName}} has more than {Limits.Remark} characters together with the place.");
        }
    }
}
