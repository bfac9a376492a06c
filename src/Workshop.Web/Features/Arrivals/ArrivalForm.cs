using Workshop.Domain.Arrivals;

namespace Workshop.Web.Features.Arrivals;

/// <summary>
/// The notes of a page's form: one row for everything that may be said, in the order of the kinds, with what was typed; and one row
/// more for each kind of which several may stand.
/// </summary>
/// <param name="Prefix">Of the fields: <c>Input.Arrival</c>.</param>
/// <param name="Rows">Each with kind and subject; state and words as typed.</param>
public sealed record ArrivalForm(string Prefix, IReadOnlyList<RecordArrival.Row> Rows)
{
    /// <summary>Rows for every subject of every kind; what was typed keeps its place.</summary>
    public static ArrivalForm Of(string prefix, IReadOnlyList<RecordArrival.Row?>? typed) => new(prefix,
    [
        .. Enum.GetValues<ArrivalKind>().SelectMany(kind => ArrivalRules.SubjectsOf(kind).Select(subject =>
            typed?.FirstOrDefault(t => t?.Kind == kind && t.Subject == subject) ?? new RecordArrival.Row { Kind = kind, Subject = subject })),
    ]);

    /// <summary>Rows that nobody touched are taken out; the others keep their numbers, so that a fault's number is the row's on the page.</summary>
    public static IReadOnlyList<RecordArrival.Row?> WithoutUntouched(IReadOnlyList<RecordArrival.Row?>? typed) =>
        [.. (typed ?? []).Select(row => row is null || IsUntouched(row) ? null : IsSaidByItsPlace(row) ? row with { State = ArrivalRules.StatesOf(row.Kind!.Value)[0] } : row)];

    /// <summary>Whether the place alone says it, as of damage, which is in no other state than noted.</summary>
    public static bool HasPlaceOnly(ArrivalKind kind, ArrivalSubject subject) => ArrivalRules.StatesOf(kind).Count == 1 && ArrivalPlaces.Of(kind, subject).Count > 0;

    /// <summary>The words of a field where a kind wants more than a tap.</summary>
    public static string WordsOf(ArrivalKind kind, ArrivalSubject subject) => kind switch
    {
        ArrivalKind.Leak or ArrivalKind.Damage when ArrivalPlaces.Of(kind, subject).Count > 0 => "where else, or more in words",
        ArrivalKind.Leak or ArrivalKind.Damage => "what and where",
        ArrivalKind.Complaint => "in the owner's words",
        _ => "words",
    };

    /// <summary>Kinds in whose rows something may be said beside the tap.</summary>
    public static bool HasWords(ArrivalKind kind, ArrivalSubject subject) =>
        kind is ArrivalKind.Complaint or ArrivalKind.Leak or ArrivalKind.Damage or ArrivalKind.Left || subject == ArrivalSubject.Other;

    private static bool IsUntouched(RecordArrival.Row row) => row.State is null && string.IsNullOrWhiteSpace(row.Place) && string.IsNullOrWhiteSpace(row.Words);

    private static bool IsSaidByItsPlace(RecordArrival.Row row) => row is { State: null, Corrects: null, Kind: { } kind, Subject: { } subject } && HasPlaceOnly(kind, subject);
}
