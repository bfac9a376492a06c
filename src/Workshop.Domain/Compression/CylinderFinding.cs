using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using static Workshop.Domain.Compression.CompressionWords;

namespace Workshop.Domain.Compression;

/// <summary>What the tests of a cylinder say.</summary>
public enum CylinderVerdict
{
    Within,

    /// <summary>Below the least that the maker states.</summary>
    Below,

    /// <summary>Further behind the best cylinder than is allowed.</summary>
    Uneven,

    /// <summary>A leak-down lost more than is allowed.</summary>
    Leaks,

    /// <summary>Tested, but not as the maker's figure wants it, or no figure is stated.</summary>
    NotJudged,
    NotMeasured,
}

/// <summary>One cylinder at one stage of a visit: its tests that count, and what they say beside the others.</summary>
/// <param name="Sentences">The verdict in words, what was not as the figure wants it, and where it likely leaks.</param>
public sealed record CylinderFinding(
    int Cylinder, CylinderTest? Dry, CylinderTest? Wet, CylinderTest? LeakDown, CylinderVerdict Verdict, IReadOnlyList<string> Sentences)
{
    /// <summary>It is weak: what is wrong with it is asked.</summary>
    public bool IsWeak => Verdict is CylinderVerdict.Below or CylinderVerdict.Uneven or CylinderVerdict.Leaks;

    /// <summary>Tested dry or by leak-down.</summary>
    public bool IsMeasured => Dry is not null || LeakDown is not null;
}

/// <summary>
/// Judges cylinders by the figures of their engine model and by each other. Without a stated difference, a cylinder below three
/// quarters of the best is called uneven (common practice, no source).
/// </summary>
public static class CylinderFindings
{
    /// <summary>The least share of the best cylinder where the maker states no difference (common practice, no source).</summary>
    public const decimal LeastShareOfBest = 0.75m;

    /// <summary>The tests of a stage that count: the last attempt of each kind.</summary>
    public static IReadOnlyList<CylinderTest> Standing(IEnumerable<CylinderTest> ofTheVisit, Stage stage) =>
        [.. Attempts.LastOfEach(ofTheVisit.Where(t => t.Stage == stage), t => t.Key)];

    /// <summary>Every cylinder of the engine, in order of number.</summary>
    /// <param name="specification">With the figures, where they are stated.</param>
    /// <param name="ofTheVisit">Tests of one visit, all attempts.</param>
    /// <param name="stage">Which stage.</param>
    /// <param name="tight">Valves that were found tight on this visit: one that does not close leaks.</param>
    public static IReadOnlyList<CylinderFinding> Of(
        EngineSpecification specification, IReadOnlyCollection<CylinderTest> ofTheVisit, Stage stage, IReadOnlyCollection<ValveKey> tight)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(ofTheVisit);
        ArgumentNullException.ThrowIfNull(tight);
        var standing = Standing(ofTheVisit, stage);
        var judged = specification.Layout.Cylinders.OrderBy(c => c.Number).Select(c => Judge(c.Number, standing, specification.Compression)).ToArray();
        return [.. judged.Select(f => f.IsWeak ? f with { Sentences = [.. f.Sentences, .. LikelyLeak.Of(f, judged, specification.Layout, tight)] } : f)];
    }

    private static CylinderFinding Judge(int cylinder, IReadOnlyList<CylinderTest> standing, CompressionLimits? limits)
    {
        CylinderTest? Test(CylinderTestMethod method) => standing.FirstOrDefault(t => t.Cylinder == cylinder && t.Method == method);

        var (dry, wet, leak) = (Test(CylinderTestMethod.Dry), Test(CylinderTestMethod.Wet), Test(CylinderTestMethod.LeakDown));
        (CylinderVerdict Verdict, string Sentence)[] said = [.. ByPressure(dry, standing, limits), .. ByLeakDown(leak, limits)];
        var verdict = said.Length == 0 ? CylinderVerdict.NotMeasured
            : said.Select(s => s.Verdict).FirstOrDefault(v => v is CylinderVerdict.Below, said.Select(s => s.Verdict).FirstOrDefault(
                v => v is CylinderVerdict.Uneven or CylinderVerdict.Leaks,
                said.Any(s => s.Verdict == CylinderVerdict.Within) ? CylinderVerdict.Within : CylinderVerdict.NotJudged));
        return new CylinderFinding(cylinder, dry, wet, leak, verdict, [.. said.Select(s => s.Sentence)]);
    }

    private static (CylinderVerdict, string)[] ByPressure(CylinderTest? dry, IReadOnlyList<CylinderTest> standing, CompressionLimits? limits)
    {
        if (dry is null)
        {
            return [];
        }

        // Like is compared with like: an engine cools between two cylinders less than between two days.
        var best = standing.Where(t => t.Method == CylinderTestMethod.Dry && t.Warmth == dry.Warmth && t.ThrottleOpen == dry.ThrottleOpen).MaxBy(t => t.Pressure)!;
        return BesideTheBest(dry, best, limits) is { } uneven
            ? [AgainstTheLeast(dry, limits), (CylinderVerdict.Uneven, uneven)]
            : [AgainstTheLeast(dry, limits)];
    }

    private static (CylinderVerdict, string) AgainstTheLeast(CylinderTest dry, CompressionLimits? limits) =>
        limits is null
            ? (CylinderVerdict.NotJudged, "The engine model states no least compression; only the cylinders are compared with each other.")
            : !limits.HoldsFor(dry.Warmth, dry.ThrottleOpen)
            ? (CylinderVerdict.NotJudged,
                $"Measured {dry.Warmth.Spoken()}, throttle {(dry.ThrottleOpen ? "open" : "not open")}: the least of {limits.Least.OnAnyGauge()} holds {limits.Warmth.Spoken()} with the throttle open, so it is not compared with it.")
            : dry.Pressure < limits.Least
            ? (CylinderVerdict.Below, $"{Kpa(dry.Pressure)} kPa is below the least of {limits.Least.OnAnyGauge()}.")
            : (CylinderVerdict.Within, $"{Kpa(dry.Pressure)} kPa is at least {Kpa(limits.Least)} kPa.");

    private static string? BesideTheBest(CylinderTest dry, CylinderTest best, CompressionLimits? limits)
    {
        var behind = best.Pressure.Kilopascals - dry.Pressure.Kilopascals;
        return limits?.LargestDifference is { } largest
            ? behind > largest.Kilopascals ? Behind(behind, best, $"{Kpa(largest)} kPa is allowed") : null
            : dry.Pressure.Kilopascals < LeastShareOfBest * best.Pressure.Kilopascals
            ? Behind(behind, best, "less than three quarters of the best is uneven by common practice, no source")
            : null;
    }

    private static (CylinderVerdict, string)[] ByLeakDown(CylinderTest? leak, CompressionLimits? limits)
    {
        if (leak?.LossPercent is not { } loss)
        {
            return [];
        }

        var heard = leak.HeardAt.Count > 0 ? $" Air is heard at {string.Join(" and ", leak.HeardAt.Select(p => p.Spoken()))}." : "";
        return
        [
            limits?.LargestLeakDownPercent is not { } largest
                ? (CylinderVerdict.NotJudged, Text($"It loses {loss:0.#} %; the engine model states no largest leakage.{heard}"))
                : !limits.HoldsAt(leak.Pressure)
                ? (CylinderVerdict.NotJudged, Text($"It loses {loss:0.#} % at {Kpa(leak.Pressure)} kPa; the largest of {largest:0.#} % holds at {Kpa(limits.LeakDownAt!.Value)} kPa, so it is not compared with it.{heard}"))
                : loss > largest
                ? (CylinderVerdict.Leaks, Text($"It loses {loss:0.#} %, more than the {largest:0.#} % that is allowed.{heard}"))
                : (CylinderVerdict.Within, Text($"It loses {loss:0.#} %; up to {largest:0.#} % is allowed.{heard}")),
        ];
    }

    private static string Behind(decimal behind, CylinderTest best, string allowed) =>
        Text($"It is {behind:0.#} kPa behind cylinder {best.Cylinder}; {allowed}.");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
