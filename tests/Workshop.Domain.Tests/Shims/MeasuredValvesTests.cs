using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using static Workshop.Domain.Tests.Shims.ShimCases;

namespace Workshop.Domain.Tests.Shims;

public class MeasuredValvesTests
{
    private static readonly Dictionary<ValveKey, ShimThickness> NothingKnown = [];

    [Fact]
    public void As_found_holds_with_the_shim_that_came_out_before_what_an_earlier_visit_tells()
    {
        var valve = Of([Row(Exhaust, Stage.AsFound, 0.15m)], [Seen(Exhaust, Stage.AsFound, 2.10m)], [], new() { [Exhaust] = Mm(2.5m) });

        Assert.Equal(0.155m, valve.Lobes[1].MiddleMm);
        Assert.Equal(Mm(2.10m), valve.Shim);
        Assert.False(valve.ChangedSince);
    }

    [Fact]
    public void A_shim_that_stayed_in_is_known_from_the_visit_before() =>
        Assert.Equal(Mm(2.5m), Of([Row(Exhaust, Stage.AsFound, 0.15m)], [], [], new() { [Exhaust] = Mm(2.5m) }).Shim);

    [Fact]
    public void A_shim_that_came_out_unmeasured_is_not_known_whatever_was_known_before() =>
        Assert.Null(Of([Row(Exhaust, Stage.AsFound, 0.15m)], [Seen(Exhaust, Stage.AsFound, null)], [], new() { [Exhaust] = Mm(2.5m) }).Shim);

    [Fact]
    public void After_a_shim_is_fitted_only_a_later_reading_tells()
    {
        ShimObservation[] shims = [Seen(Exhaust, Stage.AsFound, 2.10m), Seen(Exhaust, Stage.AsLeft, 1.95m, minute: 30)];
        var found = Row(Exhaust, Stage.AsFound, 0.15m);

        var before = Of([found, Row(Exhaust, Stage.AsLeft, 0.24m, minute: 29)], shims, [], NothingKnown);
        var after = Of([found, Row(Exhaust, Stage.AsLeft, 0.24m, minute: 30)], shims, [], NothingKnown);

        Assert.True(before.ChangedSince);
        Assert.False(after.ChangedSince);
        Assert.Equal((0.245m, Mm(1.95m)), (after.Lobes[1].MiddleMm!.Value, after.Shim!.Value));
    }

    [Fact]
    public void A_turned_screw_is_a_change_too_and_an_undisturbed_valve_is_none()
    {
        var found = Row(Exhaust, Stage.AsFound, 0.15m);

        Assert.True(Of([found], [], [Event(Exhaust, ValveEventKind.ScrewTurned)], NothingKnown).ChangedSince);
        Assert.False(Of([found], [], [Event(Exhaust, ValveEventKind.NotDisturbed)], NothingKnown).ChangedSince);
    }

    [Fact]
    public void Both_lobes_must_be_read_again_after_a_change()
    {
        ShimObservation[] shims = [Seen(Intake, Stage.AsLeft, 1.95m)];
        ClearanceReading[] one = [Row(Intake, Stage.AsLeft, 0.15m, minute: 5)];
        ClearanceReading[] both = [.. one, Row(Intake, Stage.AsLeft, 0.16m, lobe: 2, minute: 5)];

        Assert.True(MeasuredValves.Of(Finger(), one, shims, [], NothingKnown).Single(v => v.Valve == Intake).ChangedSince);
        Assert.False(MeasuredValves.Of(Finger(), both, shims, [], NothingKnown).Single(v => v.Valve == Intake).ChangedSince);
    }

    [Fact]
    public void Of_earlier_visits_the_last_shim_seen_counts_unless_it_is_unmeasured_or_in_doubt()
    {
        ShimObservation[] shims =
        [
            Seen(Exhaust, Stage.AsFound, 2.10m), Seen(Exhaust, Stage.AsLeft, 2.00m),
            Seen(Exhaust2, Stage.AsLeft, 2.20m), Seen(Exhaust2, Stage.AsLeft, null, minute: 90),
            Seen(Intake, Stage.AsLeft, 2.30m),
        ];

        var known = MeasuredValves.ShimsBefore(shims, [Event(Intake, ValveEventKind.ChangeUnknown, minute: 10)]);

        Assert.Equal(Mm(2.00m), known[Exhaust]);
        Assert.False(known.ContainsKey(Exhaust2));
        Assert.False(known.ContainsKey(Intake));
    }

    [Fact]
    public void A_superseded_shim_counts_for_nothing()
    {
        var wrong = Seen(Exhaust, Stage.AsLeft, 2.00m);
        var right = Seen(Exhaust, Stage.AsLeft, 2.05m, supersedes: wrong);

        Assert.Equal(Mm(2.05m), MeasuredValves.ShimsBefore([right, wrong], [])[Exhaust]);
        Assert.Same(right, ShimRules.Standing([wrong, right], Exhaust, Stage.AsLeft));
    }

    [Theory]
    [InlineData(1.199, false)]
    [InlineData(1.200, true)]
    [InlineData(3.200, true)]
    [InlineData(3.201, false)]
    public void Only_a_permitted_thickness_may_go_in(decimal thickness, bool permitted) =>
        Assert.Equal(permitted, ShimRules.FaultOfThickness("thicknessMm", thickness, Finger().Shims!) is null);

    private static MeasuredValve Of(
        ClearanceReading[] readings, ShimObservation[] shims, ValveEvent[] events, Dictionary<ValveKey, ShimThickness> before) =>
        MeasuredValves.Of(Finger(), readings, shims, events, before).Single(v => v.Valve == Exhaust);
}
