using System.Globalization;
using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>
/// A fastener of the sheet with its forms: on the sheet's own page, and in the step of the bay screen. The forms go to the page, which
/// leads back to where they were sent from.
/// </summary>
/// <param name="Chosen">The way that was chosen before a refusal; see <see cref="WayOf"/>.</param>
/// <param name="ReturnTo">The step of the bay screen; absent on the page.</param>
public sealed record FastenerView(int Number, WorkshopTime Time, GetTorqueSheet.Line Line, bool MayTick, string? Chosen = null, string? ReturnTo = null)
{
    private const int WaysShown = 4;

    /// <summary>The best of the offers; all of them are behind "Another way".</summary>
    public IEnumerable<OfferLine> Ways => Line.Steps[^1].Wrenches.Take(WaysShown);

    /// <summary>"24 N.m", "20 N.m, 60° further": what to reach, in one line.</summary>
    public string Target => string.Join(", ", Line.Steps.Select(s => FormattableString.Invariant($"{s.TorqueNm:0.##} N.m"))
        .Concat(Line.AngleDegrees is { } angle ? [FormattableString.Invariant($"{angle:0.#}° further")] : []));

    /// <summary>The address in the API of one part of the sheet.</summary>
    public string Api(string part) => $"/api/v1/job-cards/{Number}/torque-sheet/{part}";

    /// <summary>What an entry on the device is about.</summary>
    public string Subject(string what) => $"{Number}/{what}/{Line.FastenerCode}";

    public bool IsChosen(OfferLine offer) => Chosen is null ? offer == Line.Steps[^1].Wrenches[0] : Chosen == WayOf(offer);

    /// <summary>An offer as a form sends it back.</summary>
    public static string WayOf(OfferLine offer)
    {
        ArgumentNullException.ThrowIfNull(offer);
        return FormattableString.Invariant($"{offer.Id} {offer.AdapterId} {offer.AdapterAngleDegrees}").TrimEnd();
    }

    /// <summary>What was typed, with the way that was chosen beside it.</summary>
    public static TickFastener.Request Take(TickFastener.Request typed, string? way)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var parts = (way ?? "").Split(' ');
        return typed with
        {
            WrenchId = typed.WrenchId ?? (Guid.TryParse(parts[0], out var wrench) ? wrench : null),
            AdapterId = parts.Length > 1 && Guid.TryParse(parts[1], out var adapter) ? adapter : null,
            AdapterAngleDegrees = parts.Length > 2 && decimal.TryParse(parts[2], CultureInfo.InvariantCulture, out var angle) ? angle : null,
        };
    }
}
