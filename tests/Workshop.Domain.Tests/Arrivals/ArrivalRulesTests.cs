using CsCheck;
using Workshop.Domain.Arrivals;
using static Workshop.Domain.Tests.Arrivals.Notes;

namespace Workshop.Domain.Tests.Arrivals;

public class ArrivalRulesTests
{
    [Fact]
    public void What_nobody_has_said_is_missing_until_it_is_said_or_looked_for_in_vain()
    {
        Assert.Equal(
            [
                "leaks, or that none was seen", "damage, or that none was seen", "warning lamps, or that none was seen", "level of the engine oil",
                "level of the coolant", "level of the front brake", "level of the rear brake", "level of the clutch",
            ],
            ArrivalRules.Missing([]));
        Assert.Empty(ArrivalRules.Missing(Whole));
        Assert.Equal(["leaks, or that none was seen"], ArrivalRules.Missing([.. Whole.Where(n => n.Kind != ArrivalKind.Leak)]));
        Assert.Empty(ArrivalRules.Missing([.. Whole.Where(n => n.Kind != ArrivalKind.Leak), Of(ArrivalKind.Leak, ArrivalSubject.Coolant, ArrivalState.Weeping)]));
    }

    [Fact]
    public void A_level_said_anew_takes_the_place_of_the_old_one_and_a_second_leak_stands_beside_the_first()
    {
        var low = Of(ArrivalKind.Level, ArrivalSubject.EngineOil, ArrivalState.Low);
        var leak = Of(ArrivalKind.Leak, ArrivalSubject.EngineOil, ArrivalState.Weeping);

        Assert.Equal(low, ArrivalRules.TakesThePlaceOf([low, leak], ArrivalKind.Level, ArrivalSubject.EngineOil, ArrivalStage.OnArrival));
        Assert.Null(ArrivalRules.TakesThePlaceOf([low, leak], ArrivalKind.Leak, ArrivalSubject.EngineOil, ArrivalStage.OnArrival));
        Assert.Null(ArrivalRules.TakesThePlaceOf([low], ArrivalKind.Level, ArrivalSubject.Coolant, ArrivalStage.OnArrival));
    }

    [Fact]
    public void A_leak_takes_the_place_of_none_seen_at_its_own_stage_only()
    {
        var none = Of(ArrivalKind.Leak, null, ArrivalState.NoneSeen);

        Assert.Equal(none, ArrivalRules.TakesThePlaceOf([none], ArrivalKind.Leak, ArrivalSubject.Coolant, ArrivalStage.OnArrival));
        // What came during the work says nothing against the arrival.
        Assert.Null(ArrivalRules.TakesThePlaceOf([none], ArrivalKind.Leak, ArrivalSubject.Coolant, ArrivalStage.DuringWork));
    }

    [Fact]
    public void What_was_struck_or_replaced_does_not_stand()
    {
        var leak = Of(ArrivalKind.Leak, ArrivalSubject.Coolant, ArrivalState.Dripping);
        var less = Of(ArrivalKind.Leak, ArrivalSubject.Coolant, ArrivalState.Weeping, takes: leak);
        var struck = Of(ArrivalKind.Leak, ArrivalSubject.Coolant, ArrivalState.Weeping, takes: less, struck: true);

        Assert.Equal([less], ArrivalRules.Standing([leak, less]));
        Assert.Empty(ArrivalRules.Standing([leak, less, struck]));
    }

    [Theory]
    [InlineData(ArrivalKind.Level, ArrivalSubject.Keys, ArrivalState.AtMark, true, "notes[0].subject")]
    [InlineData(ArrivalKind.Level, ArrivalSubject.EngineOil, ArrivalState.Dripping, true, "notes[0].state")]
    [InlineData(ArrivalKind.Leak, ArrivalSubject.EngineOil, ArrivalState.Dripping, false, "notes[0].words")]
    [InlineData(ArrivalKind.Lamp, ArrivalSubject.Other, ArrivalState.Noted, false, "notes[0].words")]
    [InlineData(ArrivalKind.Level, null, ArrivalState.NoneSeen, true, "notes[0].state")]
    [InlineData(ArrivalKind.Leak, ArrivalSubject.Coolant, ArrivalState.NoneSeen, true, "notes[0].subject")]
    [InlineData(ArrivalKind.Damage, null, ArrivalState.Noted, true, "notes[0].subject")]
    public void What_does_not_go_together_is_refused_by_its_field(ArrivalKind kind, ArrivalSubject? subject, ArrivalState state, bool words, string field) =>
        Assert.Equal(field, ArrivalRules.FaultOf("notes[0]", kind, subject, state, words)?.Field);

    [Fact]
    public void Every_fluid_and_every_side_has_usual_places_and_each_of_them_says_where()
    {
        foreach (var kind in new[] { ArrivalKind.Leak, ArrivalKind.Damage })
        {
            foreach (var subject in ArrivalRules.SubjectsOf(kind).Where(s => s != ArrivalSubject.Other))
            {
                var places = ArrivalPlaces.Of(kind, subject);
                Assert.NotEmpty(places);
                Assert.Equal(places.Distinct(), places);
                Assert.All(places, place => Assert.Null(ArrivalPlaces.FaultOf("notes[0]", kind, subject, place)));
                Assert.All(places, place => Assert.Equal((place, $"{place}: wet"), (ArrivalPlaces.Sentence(place, " "), ArrivalPlaces.Sentence(place, "wet"))));
            }
        }

        Assert.Null(ArrivalPlaces.Sentence(ArrivalPlaces.Elsewhere, null));
        Assert.Equal("behind the horn", ArrivalPlaces.Sentence(ArrivalPlaces.Elsewhere, "behind the horn"));
        Assert.Equal("notes[0].place", ArrivalPlaces.FaultOf("notes[0]", ArrivalKind.Lamp, ArrivalSubject.EngineLamp, "tank")?.Field);
    }

    [Fact]
    public void Everything_that_a_form_offers_is_allowed_and_has_words() =>
        Gen.Enum<ArrivalKind>().Sample(kind =>
        {
            foreach (var subject in ArrivalRules.SubjectsOf(kind))
            {
                foreach (var state in ArrivalRules.StatesOf(kind))
                {
                    Assert.Null(ArrivalRules.FaultOf("notes[0]", kind, subject, state, hasWords: true));
                    Assert.NotEmpty(ArrivalWords.Say(subject, state, null));
                }
            }
        });
}
