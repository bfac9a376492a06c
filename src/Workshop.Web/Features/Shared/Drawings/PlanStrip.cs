using System.Globalization;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>How a phase is drawn: by height, so that print and every eye tell them apart.</summary>
public enum PhaseStroke
{
    /// <summary>Nobody works: a line.</summary>
    Stands,

    /// <summary>The sealant cures or the engine cools in the bay: a low box.</summary>
    WaitsInBay,

    /// <summary>Somebody works: a full box.</summary>
    Works,
}

/// <summary>A phase where it lies in the drawing.</summary>
public sealed record PlanStripPart(decimal X, decimal Width, PhaseStroke Stroke, string? Label);

/// <summary>
/// One visit as one line of time from arrival to hand-over; days begin at upright strokes. Pure geometry in the drawing's own units.
/// Shown by <c>&lt;partial name="Drawings/_PlanStrip" model="strip" /&gt;</c>, its phases in words beside it.
/// </summary>
public sealed record PlanStrip(IReadOnlyList<PlanStripPart> Parts, IReadOnlyList<(decimal X, string Text)> Days, string Words)
{
    public const decimal Width = 640;
    public const decimal Height = 46;
    public const decimal Line = 30;

    private const decimal Edge = 4;
    private const decimal LetterWidth = 7;
    private const decimal LeastBetweenDays = 90;

    public static PlanStrip Of(WorkshopTime time, IReadOnlyList<PlannedPhaseAnswer> phases)
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(phases);
        var (from, until) = (phases[0].From, phases[^1].Until);
        decimal X(Instant at) => Edge + ((Width - (2 * Edge)) * (decimal)((at - from) / (until - from)));
        var days = new List<(decimal X, string Text)> { (Edge, Say(time.DayOf(from))) };
        for (var day = time.DayOf(from).PlusDays(1); day <= time.DayOf(until); day = day.PlusDays(1))
        {
            var x = X(time.WholeDay(day).Start);
            if (x - days[^1].X >= LeastBetweenDays && x <= Width - LeastBetweenDays)
            {
                days.Add((x, Say(day)));
            }
        }

        return new PlanStrip(
            [.. phases.Select(p =>
            {
                var (x, width) = (X(p.From), X(p.Until) - X(p.From));
                var word = p.Phase.Spoken();
                return new PlanStripPart(x, width, StrokeOf(p.Phase), (word.Length + 1) * LetterWidth <= width ? word : null);
            })],
            days,
            string.Join("; ", phases.Select(p => $"{p.Phase.Spoken()} {time.Say(p.From)} to {time.Say(p.Until)}")) + ".");
    }

    private static PhaseStroke StrokeOf(VisitPhase phase) => phase switch
    {
        VisitPhase.ColdSoak or VisitPhase.Waiting => PhaseStroke.Stands,
        VisitPhase.SealantCure or VisitPhase.CoolAndRecheck => PhaseStroke.WaitsInBay,
        _ => PhaseStroke.Works,
    };

    private static string Say(LocalDate day) => day.ToString("ddd MM-dd", CultureInfo.InvariantCulture);
}
