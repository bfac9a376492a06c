using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Arrivals;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Arrivals;

/// <summary>What was seen of a motorcycle that came and what its owner complains of: what stands, and every row before it.</summary>
public static class GetArrival
{
    public sealed record Request(int Number);

    /// <param name="Standing">What counts, by kind.</param>
    /// <param name="Earlier">What was said anew, corrected or struck since.</param>
    /// <param name="Missing">What nobody has said yet.</param>
    /// <param name="Asked">Why the engine model wants the state on arrival; absent where it does not, and nothing waits for it.</param>
    public sealed record Answer(int Number, IReadOnlyList<Note> Standing, IReadOnlyList<Note> Earlier, IReadOnlyList<string> Missing, string? Asked);

    /// <param name="Said">In words: "engine oil dripping: at the drain plug".</param>
    /// <param name="Struck">It says that what it corrects was not so.</param>
    /// <param name="Because">Why it took the place of another.</param>
    public sealed record Note(
        Guid Id, ArrivalStage Stage, ArrivalKind Kind, ArrivalSubject? Subject, ArrivalState State, string? Words, string Said, bool Struck,
        string By, Instant At, Guid? SupersedesId, string? Because);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var rows = await (
            from note in db.ArrivalNotes.AsNoTracking()
            join person in db.People on note.NotedBy equals person.Id
            join words in db.Remarks on note.WordsRemarkId equals words.Id into said
            from words in said.DefaultIfEmpty()
            join reason in db.Remarks on note.ReasonRemarkId equals reason.Id into reasons
            from reason in reasons.DefaultIfEmpty()
            where note.JobCardNumber == request.Number
            orderby note.NotedAt, note.Id
            select new { note, person.Name, Words = words.Text, Reason = reason.Text }).ToListAsync(ct);
        var notes = rows.ConvertAll(r => r.note);
        var standing = ArrivalRules.Standing(notes);
        var views = rows.ToDictionary(r => r.note.Id, r => new Note(
            r.note.Id, r.note.Stage, r.note.Kind, r.note.Subject, r.note.State, r.Words, ArrivalWords.Say(r.note.Subject, r.note.State, r.Words),
            r.note.Struck, r.Name, r.note.NotedAt, r.note.SupersedesId, r.Reason));
        var asked = AskedChecks.Of(open.Specification, open.ItemsUnderWay, [], notes.Exists(ArrivalRules.AsksForCompression))
            .FirstOrDefault(c => c.Kind == VisitCheckKind.ArrivalState);
        return new Answer(
            request.Number,
            [.. standing.Select(n => views[n.Id])],
            [.. notes.Where(n => !standing.Contains(n)).Select(n => views[n.Id])],
            ArrivalRules.Missing(notes),
            asked?.Because);
    }
}
