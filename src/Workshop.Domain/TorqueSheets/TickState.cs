using NodaTime;

namespace Workshop.Domain.TorqueSheets;

/// <summary>How a fastener of the sheet stands.</summary>
public enum TickState
{
    /// <summary>Nobody has said anything of it yet.</summary>
    NotTightened,

    /// <summary>All of its count are tightened.</summary>
    Tightened,

    /// <summary>Was ticked; the tick was taken back.</summary>
    TakenBack,

    /// <summary>Was ticked, but an item that opens it was begun after that.</summary>
    OpenedAgain,
}

/// <summary>What the ticks of one card say of one fastener; all of a fastener's count are ticked as one.</summary>
/// <param name="Last">The tick that counts: the one that no other supersedes; nothing where there is none.</param>
public sealed record FastenerState(TickState State, FastenerTick? Last)
{
    /// <summary>How <paramref name="fastenerCode"/> stands.</summary>
    /// <param name="ticks">All ticks of the card, superseded ones too; order does not matter.</param>
    /// <param name="openedAt">When the last item that opens the fastener was begun, where that is known.</param>
    public static FastenerState Of(string fastenerCode, IReadOnlyCollection<FastenerTick> ticks, Instant? openedAt)
    {
        ArgumentNullException.ThrowIfNull(ticks);
        var superseded = ticks.Where(t => t.SupersedesId is not null).Select(t => t.SupersedesId!.Value).ToHashSet();
        var last = ticks
            .Where(t => t.FastenerCode == fastenerCode && !superseded.Contains(t.Id))
            .OrderBy(t => t.TickedAt)
            .LastOrDefault();
        var state = last switch
        {
            null => TickState.NotTightened,
            { Tightened: false } => TickState.TakenBack,
            _ when openedAt > last.TickedAt => TickState.OpenedAgain,
            _ => TickState.Tightened,
        };
        return new FastenerState(state, last);
    }
}
