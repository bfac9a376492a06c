using CsCheck;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using static Workshop.Domain.Tests.CamTiming.MadeUpDrives;

namespace Workshop.Domain.Tests.CamTiming;

/// <summary>The arithmetic of cam cards beside published worked examples, and the identities that hold for every card.</summary>
public class CamCardTests
{
    private static readonly CsvTable Cards = CsvTable.Read("camtiming/cards.csv", CheckValues.Lines("camtiming/cards.csv"));

    private static readonly Gen<CrankAngle> Angle = Gen.Int[-4000, 9000].Select(hundredths => Degrees(hundredths / 100m));

    private static readonly Gen<CamEvents> Events = Gen.Select(Angle, Angle, (opens, closes) => new CamEvents(opens, closes));

    [Fact]
    public void Durations_centres_separations_and_overlaps_are_those_that_are_printed() => Assert.All(Cards.Rows, card =>
    {
        var intake = new CamEvents(Degrees(card.Number("io")), Degrees(card.Number("ic")));
        Assert.Equal(card.Number("durationIntake"), intake.Duration.Degrees);
        Same(card.NumberOrNone("centreIntake"), intake.LobeCentre(Side.Intake).Degrees);
        if (card.NumberOrNone("ec") is { } closes)
        {
            Same(card.NumberOrNone("overlap"), intake.Opens.Degrees + closes);
        }

        if (card.NumberOrNone("eo") is { } opens)
        {
            var exhaust = new CamEvents(Degrees(opens), Degrees(card.Number("ec")));
            var pair = PairTiming.Of(intake, exhaust);
            Assert.Equal(card.Number("durationExhaust"), exhaust.Duration.Degrees);
            Same(card.NumberOrNone("centreExhaust"), exhaust.LobeCentre(Side.Exhaust).Degrees);
            Same(card.NumberOrNone("separation"), pair.Separation.Degrees);
            Assert.Equal(PairTiming.OverlapOf(intake, exhaust), pair.Overlap(intake.Duration, exhaust.Duration));
        }
    });

    [Fact]
    public void Turned_forward_back_and_closed_the_published_card_becomes_the_three_that_stand_beside_it()
    {
        var cards = Cards.Rows.Skip(5).Select(c => (
            Intake: new CamEvents(Degrees(c.Number("io")), Degrees(c.Number("ic"))), Exhaust: new CamEvents(Degrees(c.Number("eo")), Degrees(c.Number("ec"))))).ToList();
        var (plain, forward, back, closed) = (cards[0], cards[1], cards[2], cards[3]);

        Assert.Equal(forward, (plain.Intake.Advanced(Degrees(5)), plain.Exhaust.Advanced(Degrees(5))));
        Assert.Equal(back, (plain.Intake.Advanced(Degrees(-5)), plain.Exhaust.Advanced(Degrees(-5))));
        Assert.Equal(5, PairTiming.Of(forward.Intake, forward.Exhaust).Advance.Degrees);
        Assert.Equal(-5, PairTiming.Of(back.Intake, back.Exhaust).Advance.Degrees);
        Assert.Equal(110, PairTiming.Of(plain.Intake, plain.Exhaust).Separation.Degrees);
        Assert.Equal(105, PairTiming.Of(closed.Intake, closed.Exhaust).Separation.Degrees);
        Assert.Equal(0, PairTiming.Of(closed.Intake, closed.Exhaust).Advance.Degrees);
    }

    [Fact]
    public void A_published_overlap_and_duration_give_the_published_separation()
    {
        // A public forum's topic 149479, "Cam relationships", seen: overlap 45, duration 264 of both sides, separation (264 - 45) / 2 = 109.5.
        var centre = Degrees(109.5m);
        var duration = Degrees(264);
        var pair = PairTiming.Of(CamEvents.About(Side.Intake, centre, duration), CamEvents.About(Side.Exhaust, centre, duration));

        Assert.Equal(109.5m, pair.Separation.Degrees);
        Assert.Equal(45, pair.Overlap(duration, duration).Degrees);
    }

    /// <summary>
    /// The four events from durations, separation and advance, as powernationtv.com/calculators/cam-timing-calculator prints the
    /// formulas, seen: IO = half duration + advance - separation, IC = half duration - advance + separation - 180, EO and EC alike.
    /// </summary>
    [Fact]
    public void The_events_of_a_card_follow_from_durations_separation_and_advance() => Gen.Select(Events, Events).Sample((intake, exhaust) =>
    {
        var pair = PairTiming.Of(intake, exhaust);
        var (separation, advance) = (pair.Separation.Degrees, pair.Advance.Degrees);
        var (halfIntake, halfExhaust) = (intake.Duration.Degrees / 2, exhaust.Duration.Degrees / 2);
        Assert.Equal(intake.Opens.Degrees, halfIntake + advance - separation);
        Assert.Equal(intake.Closes.Degrees, halfIntake - advance + separation - 180);
        Assert.Equal(exhaust.Opens.Degrees, halfExhaust + advance + separation - 180);
        Assert.Equal(exhaust.Closes.Degrees, halfExhaust - advance - separation);
    });

    [Fact]
    public void Turning_a_lobe_changes_its_centre_by_as_much_and_nothing_else() => Gen.Select(Events, Angle, Gen.Enum<Side>()).Sample((events, advance, side) =>
    {
        var turned = events.Advanced(advance);
        Assert.Equal(events.Duration, turned.Duration);
        Assert.Equal(advance, LobeFinding.AdvanceOf(side, events.LobeCentre(side), turned.LobeCentre(side)));
        Assert.Equal(events, turned.Advanced(-advance));
    });

    [Fact]
    public void Events_about_their_own_centre_are_the_events() => Gen.Select(Events, Gen.Enum<Side>()).Sample((events, side) =>
        Assert.Equal(events, CamEvents.About(side, events.LobeCentre(side), events.Duration)));

    [Fact]
    public void Turning_both_sides_alike_leaves_separation_and_overlap() => Gen.Select(Events, Events, Angle).Sample((intake, exhaust, advance) =>
    {
        var (before, after) = (PairTiming.Of(intake, exhaust), PairTiming.Of(intake.Advanced(advance), exhaust.Advanced(advance)));
        Assert.Equal(before.Separation, after.Separation);
        Assert.Equal(before.Overlap(intake.Duration, exhaust.Duration), after.Overlap(intake.Duration, exhaust.Duration));
        Assert.Equal(before.Advance + advance, after.Advance);
    });

    [Fact]
    public void Two_crank_degrees_are_one_cam_degree() => Angle.Sample(angle =>
    {
        Assert.Equal(angle.Degrees / 2, angle.ToCam().Degrees);
        Assert.Equal(angle, angle.ToCam().ToCrank());
    });

    private static void Same(decimal? printed, decimal computed)
    {
        if (printed is { } there)
        {
            Assert.Equal(there, computed);
        }
    }
}
