using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.TorqueSheets;

namespace Workshop.Domain.CamTiming;

/// <summary>A drive of which a visit opened the sprocket bolts or the tensioner: its camshafts could have moved.</summary>
/// <param name="Drive">Which.</param>
/// <param name="Lines">What holds it, of the torque sheet.</param>
public sealed record OpenedDrive(CamDrive Drive, IReadOnlyList<TorqueLine> Lines)
{
    /// <summary>What still has to be ticked.</summary>
    public IReadOnlyList<TorqueLine> Open => [.. Lines.Where(l => !l.IsTightened)];

    /// <summary>When the last of it was tightened; absent while any is open.</summary>
    public Instant? ClosedAt => Open.Count > 0 ? null : Lines.Max(l => l.Tick.Last!.TickedAt);

    /// <summary>The tensioner was out.</summary>
    public bool TensionerWasOut => Lines.Any(l => Drive.TensionerFasteners.Contains(l.Fastener.Code));

    /// <summary>The drives that a visit opened, in the order of the specification.</summary>
    /// <param name="drives">Of the engine model.</param>
    /// <param name="toBeTight">What the visit opened, of the torque sheet.</param>
    public static IReadOnlyList<OpenedDrive> Of(IReadOnlyList<CamDrive> drives, IReadOnlyCollection<TorqueLine> toBeTight)
    {
        ArgumentNullException.ThrowIfNull(drives);
        ArgumentNullException.ThrowIfNull(toBeTight);
        return [.. drives
            .Select(d => new OpenedDrive(d, [.. toBeTight.Where(l =>
                d.SprocketBolts.Contains(l.Fastener.Code) || d.TensionerFasteners.Contains(l.Fastener.Code))]))
            .Where(d => d.Lines.Count > 0)];
    }

    /// <summary>What stands in the way of confirming the re-check after the tensioner was fitted, in sentences.</summary>
    /// <param name="turns">Two turns by hand, of the visit.</param>
    public IReadOnlyList<string> AgainstRecheck(IEnumerable<HandTurn> turns)
    {
        ArgumentNullException.ThrowIfNull(turns);
        return ClosedAt is not { } closed
            ? [$"Tick on the torque sheet first: {string.Join(", ", Open.Select(l => l.Fastener.Name))}."]
            : turns.All(t => t.ConfirmedAt < closed)
                ? ["Turn the crankshaft two full turns by hand in running direction since then, and confirm that there was no hard stop and that the marks are right again."]
                : [];
    }

    /// <summary>The re-check that counts: since the last of what holds the drive was tightened; nothing where there is none.</summary>
    /// <param name="rechecks">Of the visit.</param>
    public CamRecheck? Recheck(IEnumerable<CamRecheck> rechecks) => ClosedAt is { } closed
        ? rechecks.Where(r => r.DriveCode == Drive.Code && r.ConfirmedAt >= closed).MaxBy(r => r.ConfirmedAt)
        : null;
}
