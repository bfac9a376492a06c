using Workshop.Domain.Arrivals;

namespace Workshop.Web.Features.Arrivals;

/// <summary>The usual places of a leak or of damage as taps of one form, with elsewhere at the end.</summary>
/// <param name="Kind">Of the note.</param>
/// <param name="Subject">Of the note.</param>
/// <param name="Name">Of the field.</param>
/// <param name="Typed">What was chosen, where a form comes back.</param>
/// <param name="NotSaid">That nothing is said is a choice too; else one must be made.</param>
/// <param name="Field">Where the bay screen puts it in what it sends; absent elsewhere.</param>
public sealed record ArrivalPlaceChoices(ArrivalKind Kind, ArrivalSubject Subject, string Name, string? Typed, bool NotSaid, string? Field = null)
{
    public IReadOnlyList<string> Places { get; } = [.. ArrivalPlaces.Of(Kind, Subject), ArrivalPlaces.Elsewhere];
}
