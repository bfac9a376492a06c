using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.JobCards;
using Workshop.Domain.Shims;
using Workshop.Domain.TorqueSheets;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.JobCards;

public class AsLeftGateTests
{
    private static readonly ShimObservation[] Fitted = [Shim(Intake, Stage.AsFound), Shim(Intake, Stage.AsLeft, minute: 30)];

    [Fact]
    public void An_engine_of_which_nothing_was_moved_is_open() => Assert.Empty(Against([], [], []));

    [Fact]
    public void A_fitted_shim_waits_for_the_caps_and_for_two_turns_and_not_for_the_cover()
    {
        var reasons = Against(Fitted, [], []);

        Assert.Equal("Tick on the torque sheet first: Cap bolt.", reasons[0]);
        Assert.Contains("two full turns by hand", reasons[1], StringComparison.Ordinal);
        Assert.Equal([reasons[1]], Against(Fitted, [Tick("cap-bolt")], []));
        Assert.Empty(Against(Fitted, [Tick("cap-bolt")], [Turn(61)]));
    }

    [Fact]
    public void Turns_before_the_caps_were_tight_or_before_a_shim_was_moved_again_prove_nothing()
    {
        Assert.Single(Against(Fitted, [Tick("cap-bolt")], [Turn(59)]));
        Assert.Equal(2, Against([.. Fitted, Shim(Intake, Stage.AsLeft, minute: 90)], [Tick("cap-bolt")], [Turn(61)]).Count);
        Assert.Empty(Against([.. Fitted, Shim(Intake, Stage.AsLeft, minute: 90)], [Tick("cap-bolt", minute: 95)], [Turn(96)]));
    }

    [Fact]
    public void A_shim_that_came_out_and_goes_back_asks_for_it_too() => Assert.Equal(2, Against([Shim(Intake, Stage.AsFound)], [], []).Count);

    [Fact]
    public void A_valve_that_has_got_no_shim_yet_is_named() => Assert.Equal(
        ["Fit a shim first: by the ledger none lies in cylinder 1, exhaust 1."],
        Against(Fitted, [Tick("cap-bolt")], [Turn(61)], empty: [Exhaust]));

    [Fact]
    public void A_turned_screw_asks_for_its_locknut() =>
        Assert.Equal(2, Against([], [], [], [Event(Intake, ValveEventKind.ScrewTurned)]).Count);

    private static IReadOnlyList<string> Against(ShimObservation[] shims, FastenerTick[] ticks, HandTurn[] turns, ValveEvent[]? events = null, Domain.EngineModels.ValveKey[]? empty = null) =>
        AsLeftGate.Against(Engine, [new ItemUnderWay(Check), new ItemUnderWay(Adjust, Start)], shims, events ?? [], ticks, turns, empty ?? []);

    private static HandTurn Turn(int minute) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, ConfirmedBy = Guid.Empty, ConfirmedAt = Start + Duration.FromMinutes(minute),
    };
}
