using Workshop.Domain.Outcomes;

namespace Workshop.Domain.TorqueSheets;

/// <summary>
/// At fasteners that the workshop marks, a second person looks at the tick and confirms it: somebody else than who ticked, and of
/// the very tick that stands, so that one taken back takes its witness with it.
/// </summary>
public static class SecondPerson
{
    /// <summary>The fastener is tight, but nobody has confirmed the tick though the workshop asks for it.</summary>
    /// <param name="line">Of the torque sheet.</param>
    /// <param name="marked">Codes of the fasteners that the workshop marks.</param>
    /// <param name="witnessed">Ids of ticks that were confirmed.</param>
    public static bool IsMissing(TorqueLine line, IReadOnlySet<string> marked, IReadOnlySet<Guid> witnessed)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(marked);
        ArgumentNullException.ThrowIfNull(witnessed);
        return line.IsTightened && marked.Contains(line.Fastener.Code) && !witnessed.Contains(line.Tick.Last!.Id);
    }

    /// <summary>Why a person may not confirm a tick; nothing where they may. Whoever sees the fastener may, marked or not.</summary>
    /// <param name="line">Of the torque sheet.</param>
    /// <param name="tickId">The tick that the person saw.</param>
    /// <param name="person">Who wants to confirm it.</param>
    /// <param name="witnessed">Ids of ticks that were confirmed.</param>
    public static Problem? Against(TorqueLine line, Guid tickId, Guid person, IReadOnlySet<Guid> witnessed)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(witnessed);
        var name = $"{line.Fastener.Name} ({line.Fastener.Code})";
        if (!line.IsTightened)
        {
            return Problem.Conflict("no-tick", $"{name} has no tick to confirm: it is {line.Tick.State.Spoken()}.");
        }

        var tick = line.Tick.Last!;
        return tick.Id != tickId
            ? Problem.Conflict("another-tick", $"{name} was ticked anew since you looked; look again before you confirm it.")
            : tick.TickedBy == person
                ? new Problem(ProblemKind.Forbidden, "same-person", $"You ticked {name} yourself: the second person is somebody else.")
                : witnessed.Contains(tickId)
                    ? Problem.Conflict("witnessed-already", $"{name} is confirmed already.")
                    : null;
    }
}
