using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Clearances;

/// <summary>A second person looked at all readings as left of a visit and confirms them. Only ever added.</summary>
public sealed class AsLeftWitness
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>
    /// How many readings as left, superseded ones among them, the card had: readings are only ever added, so that every later one
    /// and every correction makes it more, and the confirmation falls.
    /// </summary>
    public required int ReadingsSeen { get; init; }

    public required Guid WitnessedBy { get; init; }

    public required Instant WitnessedAt { get; init; }
}

/// <summary>The workshop asks for a second person for the readings as left.</summary>
public sealed class AsLeftMark
{
    public required Guid Id { get; init; }

    /// <summary>Of this engine model; absent: of all.</summary>
    public Guid? EngineModelId { get; init; }

    public required Guid MarkedBy { get; init; }

    public required Instant MarkedAt { get; init; }
}

/// <summary>
/// The readings as left of a visit as they stand, which somebody else than who measured or entered one of them confirms as a
/// whole. Any later reading as left, a correction too, voids the confirmation.
/// </summary>
/// <param name="Count">Readings as left on the card, superseded ones among them.</param>
/// <param name="EnteredBy">Who measured or entered what stands.</param>
public sealed record AsLeftSet(int Count, IReadOnlySet<Guid> EnteredBy)
{
    /// <summary>Of all readings of a card.</summary>
    public static AsLeftSet Of(IReadOnlyCollection<ClearanceReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var left = readings.Where(r => r.Stage == Stage.AsLeft).ToArray();
        var standing = Attempts.LastOfEach(left, r => r.Key);
        return new AsLeftSet(left.Length, standing.SelectMany(r => new[] { r.MeasuredBy, r.EnteredBy }).ToHashSet());
    }

    /// <summary>The confirmation that holds; nothing where there is none, or a reading came later.</summary>
    public AsLeftWitness? Confirmed(IEnumerable<AsLeftWitness> witnesses) => witnesses.FirstOrDefault(w => w.ReadingsSeen == Count);

    /// <summary>Why the set is not confirmed.</summary>
    public static string Words(IReadOnlyCollection<AsLeftWitness> witnesses)
    {
        ArgumentNullException.ThrowIfNull(witnesses);
        return witnesses.Count == 0
            ? "The readings as left: no second person has confirmed them, which the workshop asks for."
            : "The readings as left: one was entered or corrected after a second person confirmed them; they are confirmed once more.";
    }

    /// <summary>Why a person may not confirm it; nothing where they may. Whoever sees the readings may, asked for or not.</summary>
    /// <param name="seen">How many readings the person saw.</param>
    /// <param name="person">Who wants to confirm.</param>
    /// <param name="witnesses">Of the card.</param>
    public Problem? Against(int seen, Guid person, IReadOnlyCollection<AsLeftWitness> witnesses) =>
        Count == 0 ? Problem.Conflict("no-readings", "Nothing is measured as left yet; there is nothing to confirm.")
        : seen != Count ? Problem.Conflict("other-readings", "A reading as left was entered or corrected since you looked; look again before you confirm them.")
        : EnteredBy.Contains(person) ? new Problem(ProblemKind.Forbidden, "same-person", "You measured or entered readings as left yourself: the second person is somebody else.")
        : Confirmed(witnesses) is not null ? Problem.Conflict("witnessed-already", "The readings as left are confirmed already.")
        : null;
}
