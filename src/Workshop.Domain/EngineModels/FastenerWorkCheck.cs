namespace Workshop.Domain.EngineModels;

/// <summary>What the work at a fastener goes by: the range of its torque, the angle, the drawing of the order, the space over it.</summary>
internal static class FastenerWorkCheck
{
    private const decimal LargestSpaceMm = 200;
    private const int LongestMark = 12;

    public static void Run(string path, Fastener fastener, Findings findings)
    {
        Range(path, fastener, findings);
        findings.FaultIf(fastener.AngleToleranceDegrees is not null && fastener.AngleDegrees is null, $"{path}.angleToleranceDegrees",
            $"{path}.angleToleranceDegrees is {fastener.AngleToleranceDegrees}, but there is no angle stage: give angleDegrees, or leave it out.");
        findings.FaultIf(fastener.AngleToleranceDegrees is <= 0 || fastener.AngleToleranceDegrees >= fastener.AngleDegrees, $"{path}.angleToleranceDegrees",
            $"{path}.angleToleranceDegrees is {fastener.AngleToleranceDegrees}: above 0 and below the angle of {fastener.AngleDegrees} degrees is allowed.");
        findings.FaultIf(fastener.SpaceOverMm is <= 0 or > LargestSpaceMm, $"{path}.spaceOverMm",
            $"{path}.spaceOverMm is {fastener.SpaceOverMm}: above 0 and at most {LargestSpaceMm} mm is allowed; leave it out where a socket goes on.");
        if (fastener.Pattern is { } pattern)
        {
            Pattern($"{path}.pattern", pattern, fastener.Count, findings);
        }
    }

    private static void Range(string path, Fastener fastener, Findings findings)
    {
        var (lowest, highest) = (fastener.TorqueLowest, fastener.TorqueHighest);
        findings.FaultIf(lowest is null && highest is not null, $"{path}.torqueLowestNm", $"{path}.torqueLowestNm is empty, but the highest is {highest}: give both ends of the range, or neither.");
        findings.FaultIf(lowest is not null && highest is null, $"{path}.torqueHighestNm", $"{path}.torqueHighestNm is empty, but the lowest is {lowest}: give both ends of the range, or neither.");
        findings.FaultIf(lowest > fastener.Torque, $"{path}.torqueLowestNm", $"{path}.torqueLowestNm is {lowest}: at most the final torque, {fastener.Torque}, is allowed.");
        findings.FaultIf(highest < fastener.Torque, $"{path}.torqueHighestNm", $"{path}.torqueHighestNm is {highest}: at least the final torque, {fastener.Torque}, is allowed.");
        findings.FaultIf(lowest is not null && lowest == highest, $"{path}.torqueHighestNm", $"{path}.torqueHighestNm is {highest}, as is the lowest: a range has two ends; leave both out where the maker states none.");
    }

    private static void Pattern(string path, FastenerPattern pattern, int count, Findings findings)
    {
        findings.Text($"{path}.seenFrom", pattern.SeenFrom, "the side from which the drawing is seen");
        findings.FaultIf(pattern.Places.Count != count, $"{path}.places",
            $"{path}.places has {pattern.Places.Count}, but {count} are alike: each has its place, in the order of tightening.");
        for (var i = 0; i < pattern.Places.Count; i++)
        {
            var (at, place) = ($"{path}.places[{i}]", pattern.Places[i]);
            findings.FaultIf(place.Across is < 0 or > PatternPlace.Largest, $"{at}.across", $"{at}.across is {place.Across}: 0 to {PatternPlace.Largest} is allowed.");
            findings.FaultIf(place.Up is < 0 or > PatternPlace.Largest, $"{at}.up", $"{at}.up is {place.Up}: 0 to {PatternPlace.Largest} is allowed.");
            findings.FaultIf(place.Mark?.Length > LongestMark, $"{at}.mark", $"{at}.mark has {place.Mark?.Length} characters: at most {LongestMark} are allowed.");
            var earlier = pattern.Places.Take(i).TakeWhile(p => (p.Across, p.Up) != (place.Across, place.Up)).Count();
            findings.FaultIf(earlier < i, at, $"{at} lies where places[{earlier}] does: each fastener has a place of its own.");
        }
    }
}
