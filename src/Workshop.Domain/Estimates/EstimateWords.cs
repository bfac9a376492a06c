using System.Globalization;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Estimates;

/// <summary>Estimates and findings as a person says them.</summary>
public static class EstimateWords
{
    public static string Spoken(this EstimateDecision decision) => decision switch
    {
        EstimateDecision.Agreed => "agreed",
        EstimateDecision.Declined => "declined",
        _ => throw new ArgumentOutOfRangeException(nameof(decision), decision, null),
    };

    public static string Spoken(this AnswerWay way) => way switch
    {
        AnswerWay.InPerson => "in person",
        AnswerWay.Telephone => "by telephone",
        AnswerWay.Email => "by e-mail",
        AnswerWay.Letter => "by letter",
        _ => throw new ArgumentOutOfRangeException(nameof(way), way, null),
    };

    public static string Spoken(this FindingGravity gravity) => gravity switch
    {
        FindingGravity.Watch => "to be watched",
        FindingGravity.Soon => "to be done before long",
        FindingGravity.Unsafe => "not to be ridden like this",
        _ => throw new ArgumentOutOfRangeException(nameof(gravity), gravity, null),
    };

    public static string Spoken(this FindingState state) => state switch
    {
        FindingState.Watched => "watched",
        FindingState.WaitsForPrice => "waits for a price",
        FindingState.WaitsForAnswer => "waits for the owner's answer",
        FindingState.Agreed => "agreed",
        FindingState.Declined => "declined",
        FindingState.Done => "done",
        FindingState.Withdrawn => "withdrawn",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };

    /// <summary>"per hour", "each", "per litre".</summary>
    public static string PerWhat(this EstimateUnit unit) => unit switch
    {
        EstimateUnit.Minute => "per hour",
        EstimateUnit.Piece => "each",
        EstimateUnit.Millilitre => "per litre",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, null),
    };

    /// <summary>"1 h 40 min", "2", "3,600 ml".</summary>
    public static string Quantity(decimal quantity, EstimateUnit unit) => unit switch
    {
        EstimateUnit.Minute when decimal.IsInteger(quantity) && quantity >= 0 => VisitDuration.Say((int)quantity),
        EstimateUnit.Minute => $"{Number(quantity)} min",
        EstimateUnit.Piece => Number(quantity),
        EstimateUnit.Millilitre => $"{Number(quantity)} ml",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, null),
    };

    /// <summary>"cost 120.00, margin 80.00; of 3 lines, labour among them, no cost is known."</summary>
    public static string Say(EstimateMargin margin)
    {
        ArgumentNullException.ThrowIfNull(margin);
        var unknown = margin.LinesWithoutCost == 0 ? "" : $"of {margin.LinesWithoutCost} {(margin.LinesWithoutCost == 1 ? "line" : "lines")}, labour among them, no cost is known";
        return margin is { Cost: 0, Margin: 0, LinesWithoutCost: > 0 }
            ? $"{unknown}."
            : $"cost {Money.Say(margin.Cost)}, margin {Money.Say(margin.Margin)}{(unknown.Length == 0 ? "" : $"; {unknown}")}.";
    }

    private static string Number(decimal quantity) => quantity.ToString("#,0.####", CultureInfo.InvariantCulture);
}
