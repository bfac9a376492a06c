using CsCheck;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.Clearances;

public class AsLeftSetTests
{
    private static readonly Guid Measurer = NewId.At(Start);
    private static readonly Guid Other = NewId.At(Start);

    /// <summary>Whatever was left and however often corrected: one reading as left more, and the confirmation holds no longer.</summary>
    [Fact]
    public void Any_later_reading_as_left_voids_the_confirmation() => Gen.Select(Rows.Array[1, 8], Rows).Sample((before, later) =>
    {
        var set = AsLeftSet.Of(before);
        if (set.Count == 0)
        {
            return;
        }

        AsLeftWitness[] confirmed = [Witness(set.Count)];
        Assert.NotNull(set.Confirmed(confirmed));
        var after = AsLeftSet.Of([.. before, later]);
        Assert.Equal(later.Stage == Stage.AsFound, after.Confirmed(confirmed) is not null);
    });

    [Fact]
    public void Nobody_confirms_what_they_measured_or_entered_themselves()
    {
        var set = AsLeftSet.Of([Left(Intake, 1, Measurer)]);

        Assert.Equal("same-person", set.Against(1, Measurer, [])!.Code);
        Assert.Null(set.Against(1, Other, []));
        Assert.Equal("other-readings", set.Against(2, Other, [])!.Code);
        Assert.Equal("witnessed-already", set.Against(1, Other, [Witness(1)])!.Code);
        Assert.Equal("no-readings", AsLeftSet.Of([Reading(Intake, Stage.AsFound, 0.15m)]).Against(0, Other, [])!.Code);
    }

    /// <summary>Who measured what somebody else has measured anew since may confirm: nothing of theirs stands.</summary>
    [Fact]
    public void Only_what_stands_makes_somebody_one_of_those_who_measured()
    {
        var set = AsLeftSet.Of([Left(Intake, 1, Measurer), Left(Intake, 2, Other)]);

        Assert.Equal([Other], set.EnteredBy);
        Assert.Null(set.Against(2, Measurer, []));
    }

    [Fact]
    public void The_gate_is_there_only_where_the_workshop_asks_and_something_was_left()
    {
        var asked = Adjusted with { AskAsLeftSecondPerson = true };
        var rule = new AsLeftSetHasASecondPerson();

        Assert.Empty(rule.Against(Adjusted));
        Assert.Empty(rule.Against(InOrder with { AskAsLeftSecondPerson = true }));
        var reason = Assert.Single(rule.Against(asked));
        Assert.Equal(("asLeft.secondPerson", SignOffPlace.Readings), (reason.Subject, reason.Place));
        Assert.Empty(rule.Against(asked with { AsLeftWitnesses = [Witness(1)] }));
        var corrected = asked with { Readings = [.. asked.Readings, Reading(Intake, Stage.AsLeft, 0.15m, attempt: 2)], AsLeftWitnesses = [Witness(1)] };
        Assert.Contains("entered or corrected after", Assert.Single(rule.Against(corrected)).Sentence, StringComparison.Ordinal);
        Assert.Equal("second person to confirm", BaySteps.Of(corrected, workBegun: true, []).Single(s => s.Step == BayStep.MeasureAgain).Left);
    }

    private static readonly Gen<ClearanceReading> Rows = Gen.Select(Gen.Bool, Gen.Bool, Gen.Int[1, 3]).Select((intake, left, attempt) =>
        Reading(intake ? Intake : Exhaust, left ? Stage.AsLeft : Stage.AsFound, 0.15m, attempt: attempt));

    private static ClearanceReading Left(ValveKey valve, int attempt, Guid by) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, JobCardNumber = 1001, Valve = valve, Lobe = 1, Stage = Stage.AsLeft, Attempt = attempt,
        Kind = BracketKind.GoAndNoGo, Go = Clearance.FromMillimetres(0.15m), NoGo = Clearance.FromMillimetres(0.16m), OdometerReadingId = Guid.Empty,
        MeasuredAt = Start, MeasuredBy = by, EnteredBy = by, EnteredAt = Start,
    };

    private static AsLeftWitness Witness(int readings) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, ReadingsSeen = readings, WitnessedBy = Other, WitnessedAt = Start + Duration.FromMinutes(5),
    };
}
