using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.JobCards;

/// <summary>Where a cam timing check is done, every camshaft that the maker times was checked as found.</summary>
public sealed class CamTimingIsCheckedAsFound : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.Done.All(i => i.Kind != ServiceItemKind.CamTimingCheck))
        {
            return [];
        }

        return [.. TimingFindings.Of(facts, Stage.AsFound).SelectMany(d => d.Cams).Where(c => c.IsUnchecked).Select(c => new SignOffReason(
            $"camTiming.{c.Code}", $"{c.Name}: its timing is not checked as found.", SignOffPlace.CamTiming))];
    }
}

/// <summary>
/// Where a visit opened what holds a camshaft's drive: after the tensioner was fitted it was checked once more, and every
/// camshaft's timing was checked as left.
/// </summary>
public sealed class OpenedDrivesAreRechecked : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. OpenedDrive.Of(facts.Specification.CamDrives, facts.ToBeTight)
            .Where(d => d.ClosedAt is not null) // What is not tightened yet is said by the torque sheet.
            .SelectMany(d => Against(d, facts))];
    }

    private static IEnumerable<SignOffReason> Against(OpenedDrive opened, SignOffFacts facts)
    {
        var drive = opened.Drive;
        var rechecked = opened.Recheck(facts.CamRechecks) is not null;
        var since = CamTimingRules.Standing(facts.CamChecks.Where(c => c.Stage == Stage.AsLeft))
            .Where(c => c.MeasuredAt >= opened.ClosedAt).Select(c => c.CamshaftCode).ToHashSet(StringComparer.Ordinal);
        return drive.CamshaftCodes().Where(c => !since.Contains(c))
            .Select(c => new SignOffReason(
                $"camTiming.{c}",
                $"{TimingFindings.NameOf(facts.Specification, c)}: its drive was opened, and its timing is not checked as left since then.",
                SignOffPlace.CamTiming))
            .Concat(rechecked ? [] : new[]
            {
                new SignOffReason(
                    $"camDrives.{drive.Code}",
                    $"{drive.Name}: not checked once more after it was closed{(opened.TensionerWasOut ? ", and the tensioner's release is not confirmed" : "")}.",
                    SignOffPlace.CamTiming),
            });
    }
}

/// <summary>Cam timing is left within what is permitted, or a remark accepts it.</summary>
public sealed class CamTimingIsLeftRight : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.OutsideAccepted)
        {
            return [];
        }

        var left = TimingFindings.Of(facts, Stage.AsLeft).SelectMany(d => d.Cams).ToDictionary(c => c.Code, StringComparer.Ordinal);
        return [.. TimingFindings.Of(facts, Stage.AsFound).SelectMany(d => d.Cams)
            .Select(found => left.TryGetValue(found.Code, out var after) ? Left(found, after) : found)
            .Where(c => c.IsOff)
            .Select(c => new SignOffReason(
                $"camTiming.{c.Code}",
                $"{c.Name}: its timing is left {(c.AlignmentPasses == false ? "with an alignment check that does not pass" : c.Verdict.Spoken())}; set it right, or accept it with a remark.",
                SignOffPlace.CamTiming))];
    }

    /// <summary>What a wheel found off is right again only by the wheel: jig and marks tell less.</summary>
    private static CamFinding Left(CamFinding found, CamFinding after) => after with
    {
        AlignmentPasses = after.AlignmentPasses ?? (after.Lobes.Count > 0 ? null : found.AlignmentPasses),
        Lobes = after.Lobes.Count > 0 ? after.Lobes : found.Lobes,
    };
}

internal static class TimingFindings
{
    public static IEnumerable<DriveFinding> Of(SignOffFacts facts, Stage stage) => facts.Specification.CamDrives
        .Select(d => CamTimingRules.FindingOf(facts.Specification, d, stage, facts.CamChecks, []));

    public static string NameOf(EngineSpecification specification, string camshaft) =>
        specification.Camshafts.FirstOrDefault(c => c.Code == camshaft)?.Name ?? camshaft;
}
