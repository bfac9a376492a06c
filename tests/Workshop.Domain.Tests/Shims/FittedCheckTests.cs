using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using static Workshop.Domain.Tests.Shims.ShimCases;

namespace Workshop.Domain.Tests.Shims;

/// <summary>Found 0.150 to 0.160 with 2.100 in; 1.950 in at ratio 0.6 adds 0.090: 0.240 to 0.250 is to be expected.</summary>
public class FittedCheckTests
{
    private static readonly ClearanceReading FoundTight = Row(Exhaust, Stage.AsFound, 0.15m);
    private static readonly ShimObservation[] Swapped = [Seen(Exhaust, Stage.AsFound, 2.100m), Seen(Exhaust, Stage.AsLeft, 1.950m, minute: 30)];

    [Theory]
    [InlineData(0.24, true)]
    [InlineData(0.25, true)]
    [InlineData(0.23, true)]
    [InlineData(0.26, false)]
    [InlineData(0.21, false)]
    public void Brackets_agree_as_long_as_they_touch_within_the_uncertainty(decimal leftGo, bool agrees) =>
        Assert.Equal(agrees, Check([FoundTight, Row(Exhaust, Stage.AsLeft, leftGo, minute: 40)], Swapped).Count == 0);

    /// <summary>0.26 to 0.27 lies 0.010 above 0.250; with blades of 0.004 mm, 2 root(2) 0.004 = 0.0113 mm are allowed.</summary>
    [Fact]
    public void Worse_blades_allow_more() => Assert.Empty(Check(
        [FoundTight, Row(Exhaust, Stage.AsLeft, 0.26m, minute: 40)], Swapped, blade: 0.004m));

    [Fact]
    public void What_disagrees_says_what_was_to_be_expected_and_what_would_explain_it()
    {
        var doubt = Assert.Single(Check([FoundTight, Row(Exhaust, Stage.AsLeft, 0.18m, minute: 40)], Swapped));

        Assert.Equal(0.245m, doubt.ExpectedMm);

        // Left 0.185: 2.100 - (0.185 - 0.155) / 0.6 = 2.050.
        Assert.Equal(2.050m, doubt.AsIfMm!.Value, 12);
        Assert.StartsWith(
            "Cylinder 1, exhaust 1 is left at 0.18 to 0.19 mm, where 2.10 mm out and 1.95 mm in should give about 0.245 mm: wrong shim, wrong valve, or dirt",
            doubt.Sentence, StringComparison.Ordinal);
    }

    /// <summary>The shims of both exhaust valves went into the wrong one each: 0.155 + 0.6 (2.1 - 2.2) = 0.095, 0.345 + 0.6 (2.0 - 1.95) = 0.375.</summary>
    [Fact]
    public void Two_shims_in_each_others_valve_are_recognised()
    {
        ClearanceReading[] readings =
        [
            FoundTight, Row(Exhaust2, Stage.AsFound, 0.34m), Row(Exhaust, Stage.AsLeft, 0.09m, minute: 40), Row(Exhaust2, Stage.AsLeft, 0.37m, minute: 40),
        ];
        ShimObservation[] shims =
        [
            .. Swapped, Seen(Exhaust2, Stage.AsFound, 2.000m), Seen(Exhaust2, Stage.AsLeft, 2.200m, minute: 30),
        ];

        var doubts = Check(readings, shims);

        Assert.Equal([Exhaust2, Exhaust], doubts.Select(d => d.ExchangedWith!.Value));
        Assert.Contains("as if its shim and that of cylinder 1, exhaust 2 were exchanged", doubts[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_shim_back_in_must_give_the_same_clearance() => Assert.Single(Check(
        [FoundTight, Row(Exhaust, Stage.AsLeft, 0.20m, minute: 40)], [Seen(Exhaust, Stage.AsFound, 2.100m)]));

    [Fact]
    public void An_open_bracket_disagrees_only_with_its_closed_end()
    {
        var loose = new Bracket[] { Bracket.Of(BracketKind.ThickestIsLoose, Clearance.FromMillimetres(0.20m), null), Bracket.Of(BracketKind.ThickestIsLoose, Clearance.FromMillimetres(0.30m), null) };

        Assert.Equal([0, 1], loose.Select(b => Check([FoundTight, With(Row(Exhaust, Stage.AsLeft, 0.20m, minute: 40), b)], Swapped).Count));
    }

    [Fact]
    public void What_cannot_be_told_is_not_said()
    {
        var left = Row(Exhaust, Stage.AsLeft, 0.18m, minute: 40);

        Assert.Empty(Check([FoundTight, left], [Seen(Exhaust, Stage.AsFound, null), Swapped[1]]));
        Assert.Empty(Check([FoundTight, left], [Swapped[0], Seen(Exhaust, Stage.AsLeft, null, minute: 30)]));
        Assert.Empty(Check([FoundTight, Row(Exhaust, Stage.AsLeft, 0.18m, minute: 20)], Swapped));
        Assert.Empty(Check([FoundTight, left], Swapped, events: [Event(Exhaust, ValveEventKind.ChangeUnknown, minute: 10)]));
        Assert.Empty(Check([left], Swapped));
    }

    private static IReadOnlyList<FittedDisagreement> Check(
        ClearanceReading[] readings, ShimObservation[] shims, decimal blade = 0.001m, ValveEvent[]? events = null) =>
        FittedCheck.Of(Finger(), readings, shims, events ?? [], new Dictionary<ValveKey, ShimThickness>(), blade, 0.001m);

    private static ClearanceReading With(ClearanceReading row, Bracket bracket) => new()
    {
        Id = row.Id, EngineId = row.EngineId, JobCardNumber = row.JobCardNumber, Valve = row.Valve, Lobe = row.Lobe, Stage = row.Stage,
        Attempt = row.Attempt, Kind = bracket.Kind, Go = bracket.Go, NoGo = bracket.NoGo, OdometerReadingId = row.OdometerReadingId,
        MeasuredAt = row.MeasuredAt, MeasuredBy = row.MeasuredBy, EnteredBy = row.EnteredBy, EnteredAt = row.EnteredAt,
    };
}
