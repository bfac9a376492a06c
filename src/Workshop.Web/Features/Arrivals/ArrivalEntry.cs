using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Arrivals;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Arrivals;

/// <summary>One send of notes to a card: gathers every fault before anything is written.</summary>
internal sealed class ArrivalEntry(
    WorkshopDbContext db, int number, ArrivalStage stage, string? reason, Actor actor, IClock clock, IReadOnlyCollection<ArrivalNote> before)
{
    private readonly List<ArrivalNote> all = [.. before];
    private readonly List<FieldFault> faults = [];
    private Guid? reasonId;
    private bool replaces;

    public int Written { get; private set; }

    /// <summary>Rows of the card, with those of this send.</summary>
    public IReadOnlyCollection<ArrivalNote> All => all;

    /// <summary>Adds them to be saved; nothing is added where any of them is refused.</summary>
    /// <param name="list">What the caller calls the list.</param>
    /// <param name="rows">As typed; those left alone are null.</param>
    /// <param name="nothingElseSeen">See <see cref="RecordArrival.Request.NothingElseSeen"/>.</param>
    public Problem? Add(string list, IReadOnlyList<RecordArrival.Row?>? rows, bool nothingElseSeen)
    {
        var notes = (rows ?? [])
            .Select((row, index) => (Path: $"{list}[{index}]", Row: row))
            .Where(r => r.Row is not null)
            .Select(r => NoteOf(r.Path, r.Row!))
            .ToList();
        if (replaces && string.IsNullOrWhiteSpace(reason))
        {
            faults.Add(new FieldFault("reason", "reason is empty: say why what was noted before is said anew."));
        }

        if (faults.Count > 0)
        {
            return Problem.Impossible("not-possible", faults);
        }

        if (nothingElseSeen)
        {
            var said = ArrivalRules.Standing(all).Select(n => n.Kind).ToHashSet();
            notes.AddRange(ArrivalRules.LookedFor.Where(k => !said.Contains(k)).Select(k => Note(k, null, ArrivalState.NoneSeen, null, null, false)));
        }

        db.ArrivalNotes.AddRange(notes.OfType<ArrivalNote>());
        Written = notes.Count;
        return null;
    }

    private ArrivalNote? NoteOf(string path, RecordArrival.Row row)
    {
        var corrected = row.Corrects is { } id ? ArrivalRules.Standing(all).FirstOrDefault(n => n.Id == id) : null;
        if (row.Corrects is not null && corrected is null)
        {
            faults.Add(new FieldFault($"{path}.corrects", $"{path}.corrects is {row.Corrects}: no note that stands on job card {number} has it."));
            return null;
        }

        if (row.Struck)
        {
            return Note(corrected!.Kind, corrected.Subject, corrected.State, null, corrected, struck: true);
        }

        var (kind, state) = (row.Kind!.Value, row.State!.Value);
        var words = ArrivalPlaces.Sentence(row.Place, row.Words);
        if ((ArrivalPlaces.FaultOf(path, kind, row.Subject, row.Place) ?? ArrivalRules.FaultOf(path, kind, row.Subject, state, words is not null)) is { } fault)
        {
            faults.Add(fault);
            return null;
        }

        if (corrected is not null && corrected.Kind != kind)
        {
            faults.Add(new FieldFault($"{path}.kind", $"{path}.kind is \"{kind.Spoken()}\", but it corrects a note of {corrected.Kind.Spoken()}: strike that one, and note this one by itself."));
            return null;
        }

        if (state == ArrivalState.NoneSeen && ArrivalRules.Standing(all).FirstOrDefault(n => n.Kind == kind && n.Id != corrected?.Id) is { } standing)
        {
            faults.Add(new FieldFault($"{path}.state",
                $"{path}.state is \"{state.Spoken()}\", but it is noted already: {ArrivalWords.Say(standing.Subject, standing.State, null)}; correct or strike that one."));
            return null;
        }

        var takes = corrected ?? ArrivalRules.TakesThePlaceOf(all, kind, row.Subject, stage);
        if (takes is not null && before.All(n => n.Id != takes.Id))
        {
            faults.Add(new FieldFault($"{path}.subject", $"{path}.subject is \"{row.Subject?.Spoken()}\" for the second time in one send: once."));
            return null;
        }

        return Note(kind, row.Subject, state, words, takes, struck: false);
    }

    private ArrivalNote Note(ArrivalKind kind, ArrivalSubject? subject, ArrivalState state, string? words, ArrivalNote? takes, bool struck)
    {
        replaces |= takes is not null;
        var note = new ArrivalNote
        {
            Id = NewId.At(clock), JobCardNumber = number, Stage = takes?.Stage ?? stage, Kind = kind, Subject = subject, State = state, Struck = struck,
            WordsRemarkId = Remarks.Add(db, words, actor, clock), NotedBy = actor.PersonId, NotedAt = clock.GetCurrentInstant(),
            SupersedesId = takes?.Id, ReasonRemarkId = takes is null ? null : reasonId ??= Remarks.Add(db, reason, actor, clock),
        };
        all.Add(note);
        return note;
    }
}
