using Workshop.Domain.TorqueSheets;
using Workshop.Web.Features.TorqueSheets;

namespace Workshop.Web.Features.Bays;

/// <summary>The torque sheet as a step of the bay screen: what is loose in the order of closing, the first of it open; then what is tight.</summary>
/// <param name="Step">What is tightened in it.</param>
/// <param name="Sheet">The whole of it.</param>
internal sealed record BayTorque(BayModel Screen, GetBayJob.Step Step, GetTorqueSheet.Answer Sheet)
{
    /// <summary>The joints at which something is loose, with that alone.</summary>
    public IReadOnlyList<GetTorqueSheet.Section> Loose { get; } =
    [
        .. Sheet.Sections
            .Select(s => s with { Fasteners = [.. s.Fasteners.Where(l => l.State != TickState.Tightened && Step.Fasteners.Contains(l.FastenerCode))] })
            .Where(s => s.Fasteners.Count > 0),
    ];

    public IReadOnlyList<GetTorqueSheet.Line> Tight { get; } =
        [.. Sheet.Sections.SelectMany(s => s.Fasteners).Where(l => l.State == TickState.Tightened && Step.Fasteners.Contains(l.FastenerCode))];

    public FastenerView ViewOf(GetTorqueSheet.Line line) =>
        new(Sheet.JobCardNumber, Screen.Head!.Time, line, Screen.MayWork, ReturnTo: Screen.AddressOf(Step.Key));
}
