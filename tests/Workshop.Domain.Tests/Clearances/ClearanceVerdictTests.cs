using CsCheck;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Clearances;

public class ClearanceVerdictTests
{
    private const int Many = 20_000;

    private static readonly Provenance Source = new("Invented for tests", "1");

    [Theory]
    [InlineData(0.10, 0.11, Verdict.Within)]
    [InlineData(0.15, 0.16, Verdict.Within)]
    [InlineData(0.20, 0.21, Verdict.Within)]
    [InlineData(0.09, 0.10, Verdict.TooTight)]
    [InlineData(0.05, 0.08, Verdict.TooTight)]
    [InlineData(0.21, 0.22, Verdict.TooWide)]
    [InlineData(0.2032, 0.2286, Verdict.TooWide)]
    [InlineData(0.201, 0.205, Verdict.TooWide)]
    public void Blades_of_a_hundredth_decide(decimal go, decimal noGo, Verdict expected)
    {
        var verdict = Judge(Bracket(go, noGo));

        Assert.Equal(expected, verdict.Verdict);
        Assert.Null(verdict.TryBlade);
    }

    [Theory]
    [InlineData(0.05, 0.15, 0.10)]
    [InlineData(0.09, 0.11, 0.10)]
    [InlineData(0.15, 0.25, 0.21)]
    [InlineData(0.20, 0.25, 0.21)]
    [InlineData(0.05, 0.25, 0.10)]
    public void Coarse_blades_across_a_limit_leave_it_open_and_name_the_blade_that_decides(decimal go, decimal noGo, decimal blade)
    {
        var verdict = Judge(Bracket(go, noGo));

        Assert.Equal(Verdict.NotDecided, verdict.Verdict);
        Assert.Equal(blade, verdict.TryBlade?.Millimetres);
        Assert.StartsWith($"not decided: try blade {blade:0.00} mm", verdict.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(BracketKind.NoneEnters, null, 0.05, Verdict.TooTight)]
    [InlineData(BracketKind.NoneEnters, null, 0.10, Verdict.TooTight)]
    [InlineData(BracketKind.NoneEnters, null, 0.12, Verdict.NotDecided)]
    [InlineData(BracketKind.ThickestIsLoose, 0.25, null, Verdict.TooWide)]
    [InlineData(BracketKind.ThickestIsLoose, 0.20, null, Verdict.NotDecided)]
    [InlineData(BracketKind.NextNotTried, 0.15, null, Verdict.NotDecided)]
    [InlineData(BracketKind.NextNotTried, 0.21, null, Verdict.TooWide)]
    public void An_open_end_decides_only_what_it_can(BracketKind kind, double? go, double? noGo, Verdict expected) =>
        Assert.Equal(expected, Judge(Domain.Clearances.Bracket.Of(kind, Mm(go), Mm(noGo))).Verdict);

    [Fact]
    public void The_sentence_says_the_limits() => Assert.Equal(
        "too tight: below 0.10 mm; 0.10 to 0.20 mm is allowed", Judge(Bracket(0.05m, 0.08m)).Sentence);

    /// <summary>Out means: no clearance that the bracket allows is inside the limits.</summary>
    [Fact]
    public void Out_is_said_only_where_no_clearance_in_the_bracket_is_inside_the_limits() =>
        Gen.Select(AnyBracket, AnyLimits, Gen.Int[0, 30_000]).Sample((bracket, limits, tenThousandths) =>
        {
            var clearance = tenThousandths / 10_000m;
            var inBracket = clearance >= (bracket.Go?.Millimetres ?? 0) && clearance < (bracket.NoGo?.Millimetres ?? 4);
            var inLimits = clearance >= limits.Lower.Millimetres && clearance <= limits.Upper.Millimetres;
            Assert.False(inBracket && inLimits && ClearanceVerdict.Of(bracket, limits).IsOut);
        }, iter: Many);

    [Fact]
    public void Within_means_go_at_least_the_lower_limit_and_no_more_than_a_hundredth_above_the_upper() =>
        Gen.Select(AnyBracket, AnyLimits).Sample((bracket, limits) =>
        {
            if (ClearanceVerdict.Of(bracket, limits).Verdict != Verdict.Within)
            {
                return;
            }

            Assert.True((bracket.Go?.Millimetres ?? 0) >= limits.Lower.Millimetres);
            Assert.True(bracket.NoGo?.Millimetres <= limits.Upper.Millimetres + 0.01m);
        }, iter: Many);

    [Fact]
    public void Every_bracket_gets_one_verdict_and_only_an_undecided_one_asks_for_a_blade() =>
        Gen.Select(AnyBracket, AnyLimits).Sample((bracket, limits) =>
        {
            var verdict = ClearanceVerdict.Of(bracket, limits);

            Assert.True(Enum.IsDefined(verdict.Verdict));
            Assert.Equal(verdict.Verdict == Verdict.NotDecided, verdict.TryBlade is not null);
            Assert.True(verdict.Sentence.Length > 0);
        }, iter: Many);

    /// <summary>
    /// The blade asked for is a new one, and once it was tried that end is decided, whether it goes or not: never more than
    /// two are asked for.
    /// </summary>
    [Fact]
    public void The_blades_asked_for_decide_in_two_tries_at_most() =>
        Gen.Select(AnyBracket, AnyLimits, Gen.Bool, Gen.Bool).Sample((bracket, limits, first, second) =>
        {
            foreach (var goes in new[] { first, second })
            {
                if (ClearanceVerdict.Of(bracket, limits).TryBlade is not { } blade)
                {
                    return;
                }

                Assert.True(blade > (bracket.Go ?? Clearance.FromMillimetres(0)) || blade.Millimetres == Clearance.LargestMm);
                Assert.True(bracket.NoGo is not { } noGo || blade < noGo);
                bracket = Tried(bracket, blade, goes);
            }

            // A blade of 3 mm that goes is the end of what can be typed, not of what can be.
            Assert.True(ClearanceVerdict.Of(bracket, limits).Verdict != Verdict.NotDecided || bracket.Go?.Millimetres == Clearance.LargestMm);
        }, iter: Many);

    [Fact]
    public void A_wider_bracket_never_decides_what_a_narrower_one_left_open() =>
        Gen.Select(AnyBracket, AnyLimits, Gen.Int[0, 3_000], Gen.Int[0, 3_000]).Sample((bracket, limits, down, up) =>
        {
            var wider = Wider(bracket, down / 10_000m, up / 10_000m);
            if (ClearanceVerdict.Of(bracket, limits).Verdict == Verdict.NotDecided)
            {
                Assert.Equal(Verdict.NotDecided, ClearanceVerdict.Of(wider, limits).Verdict);
            }
        }, iter: Many);

    private static Gen<ClearanceLimits> AnyLimits =>
        Gen.Select(Gen.Int[1, 2_000], Gen.Int[1, 1_000]).Select((lower, width) =>
            Limits(lower / 1000m, (lower + width) / 1000m > 3 ? 3 : (lower + width) / 1000m));

    private static Gen<Bracket> AnyBracket =>
        Gen.Select(Gen.Int[0, 25_000], Gen.Int[1, 5_000], Gen.Int[0, 3]).Select((go, width, kind) =>
            (BracketKind)kind switch
            {
                BracketKind.GoAndNoGo => Bracket(go / 10_000m, (go + width) / 10_000m),
                BracketKind.NoneEnters => Domain.Clearances.Bracket.Of(BracketKind.NoneEnters, null, Mm((go + width) / 10_000.0)),
                var open => Domain.Clearances.Bracket.Of(open, Mm(go / 10_000.0), null),
            });

    private static Bracket Tried(Bracket bracket, Clearance blade, bool goes) => (goes, bracket.Go, bracket.NoGo) switch
    {
        (true, _, { } noGo) => Domain.Clearances.Bracket.Of(BracketKind.GoAndNoGo, blade, noGo),
        (true, _, null) => Domain.Clearances.Bracket.Of(BracketKind.NextNotTried, blade, null),
        (false, { } go, _) => Domain.Clearances.Bracket.Of(BracketKind.GoAndNoGo, go, blade),
        (false, null, _) => Domain.Clearances.Bracket.Of(BracketKind.NoneEnters, null, blade),
    };

    private static Bracket Wider(Bracket bracket, decimal down, decimal up) => Domain.Clearances.Bracket.Of(
        bracket.Kind,
        bracket.Go is { } go ? Clearance.FromMillimetres(decimal.Max(0, go.Millimetres - down)) : null,
        bracket.NoGo is { } noGo ? Clearance.FromMillimetres(decimal.Min(Clearance.LargestMm, noGo.Millimetres + up)) : null);

    private static Bracket Bracket(decimal go, decimal noGo) => Domain.Clearances.Bracket.Of(
        BracketKind.GoAndNoGo, Clearance.FromMillimetres(go), Clearance.FromMillimetres(noGo));

    private static Clearance? Mm(double? millimetres) =>
        millimetres is { } mm ? Clearance.FromMillimetres((decimal)mm) : null;

    private static ClearanceVerdict Judge(Bracket bracket) => ClearanceVerdict.Of(bracket, Limits(0.10m, 0.20m));

    private static ClearanceLimits Limits(decimal lower, decimal upper) => new(
        Side.Intake, 1, Clearance.FromMillimetres(lower), Clearance.FromMillimetres(upper),
        Clearance.FromMillimetres(decimal.Round((lower + upper) / 2, 3)), LeverRatio.From(0.6m), Source);
}
