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
        [.. (typed ?? []).Select(row => row is null || (row.State is null && string.IsNullOrWhiteSpace(row.Words)) ? null : row)];

    /// <summary>The words of a field where a kind wants more than a tap.</summary>
    public static string WordsOf(ArrivalKind kind) => kind switch
    {
        ArrivalKind.Leak => "where",
        ArrivalKind.Damage => "what",
        ArrivalKind.Complaint => "in the owner's words",
        _ => "words",
    };

    /// <summary>Kinds in whose rows something may be said beside the tap.</summary>
    public static bool HasWords(ArrivalKind kind, ArrivalSubject subject) =>
        kind is ArrivalKind.Complaint or ArrivalKind.Leak or ArrivalKind.Damage or ArrivalKind.Left || subject == ArrivalSubject.Other;
}
