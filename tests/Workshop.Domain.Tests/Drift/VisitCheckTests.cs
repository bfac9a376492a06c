using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Drift;

/// <summary>Readings held against their history while the cover is open.</summary>
public class VisitCheckTests
{
    private const decimal At = 48_000;

    private static readonly MadeUpFleet Fleet = new() { Engines = 8, VisitsKm = [12_000, 24_000, 36_000], Unmeasured = 0.3, Seed = 3 };

    private static readonly DriftFit Known = KnownFit.Of(MadeUpFleet.Usual);

    /// <summary>
    /// Sound visits of an engine with four valves: some reading is asked about in at most 1 %, and not much less with fine blades;
    /// a bracket's probability is counted to its far end, so that coarse ones ask less. The engine as a whole is asked about in at
    /// most another 1 %. Bound above: 4 standard errors of the count. The span expected holds the truth nine times in ten.
    /// </summary>
    [Fact]
    public void Of_sound_visits_one_in_a_hundred_asks_and_the_span_holds_the_truth()
    {
        const int Visits = 1_500;
        var fleet = Fleet with { Specification = MadeUpFleet.OneCylinder, Engines = Visits, StepMm = 0.002m };
        var (asked, said, inside, improbable, lobes) = (0, 0, 0, 0, 0);
        foreach (var made in fleet.Make())
        {
            var check = Check(made, fleet.Specification, _ => 0);
            asked += check.Readings.Any(r => r.MeasureAgain) ? 1 : 0;
            said += check.Sentences.Count > 0 ? 1 : 0;
            foreach (var reading in check.Readings)
            {
                var truth = made.Truth.ClearanceAt(reading.Lobe, Distance.FromKilometres(At));
                lobes++;
                improbable += reading.P < 0.1 ? 1 : 0;
                inside += truth >= reading.ExpectedFromMm && truth <= reading.ExpectedToMm ? 1 : 0;
            }
        }

        Assert.InRange(asked, 0.003 * Visits, (0.01 * Visits) + (4 * Math.Sqrt(0.0099 * Visits)));
        Assert.InRange((double)improbable / lobes, 0.07, 0.1);
        Assert.InRange(said, 1, (0.01 * Visits) + (4 * Math.Sqrt(0.0099 * Visits)));
        Assert.Equal(4 * Visits, lobes);
        Assert.Equal(0.9, (double)inside / lobes, 0.015);
    }

    [Fact]
    public void A_reading_off_by_a_twentieth_of_a_millimetre_is_asked_for_again_and_accepted_the_second_time()
    {
        foreach (var made in Fleet.Make())
        {
            var lobe = ReadingRules.LobesOf(Fleet.Specification)[5];
            var typed = Typed(made, Fleet.Specification, _ => 0);
            var expected = VisitCheck.Of(made.Rows.Engine(Fleet.Specification), Known, Distance.FromKilometres(At), typed, typed.Count)
                .Readings.Single(r => r.Lobe == lobe);
            typed[5] = typed[5] with { Bracket = MadeUpEngine.Through(((expected.ExpectedFromMm + expected.ExpectedToMm) / 2) + 0.05, 0.01m) };
            var first = VisitCheck.Of(made.Rows.Engine(Fleet.Specification), Known, Distance.FromKilometres(At), typed, typed.Count);
            var asked = first.Readings.Single(r => r.MeasureAgain);

            Assert.Equal(lobe, asked.Lobe);
            Assert.Contains($"{lobe.Spoken}: {typed[5].Bracket} disagrees with the last 3 visits", asked.Sentence);
            Assert.EndsWith("Measure once more; the same again is accepted.", asked.Sentence, StringComparison.Ordinal);
            Assert.Equal(3, asked.Visits);

            Assert.False(Again(typed[5].Bracket).MeasureAgain);
            Assert.Null(Again(typed[5].Bracket).Sentence);
            Assert.Equal(asked.P, Again(typed[5].Bracket).P);
            Assert.True(Again(EngineRows.Of(0.03m, 0.04m)).MeasureAgain);

            ReadingCheck Again(Bracket earlier)
            {
                var repeated = typed.Select(t => t.Lobe == lobe ? t with { Earlier = [earlier] } : t).ToList();
                return VisitCheck.Of(made.Rows.Engine(Fleet.Specification), Known, Distance.FromKilometres(At), repeated, typed.Count)
                    .Readings.Single(r => r.Lobe == lobe);
            }
        }
    }

    [Fact]
    public void A_cylinder_whose_valves_take_no_blade_is_asked_for_its_stroke()
    {
        foreach (var made in Fleet.Make())
        {
            var check = Check(made, Fleet.Specification, l => l.Valve.Cylinder == 2 ? -1 : 0);

            Assert.Equal(
                "All valves of cylinder 2 are tighter than expected or take no blade: is it on its compression stroke, are its lobes away?",
                Assert.Single(check.Sentences));
            Assert.Equal([2], check.Readings.Where(r => r.MeasureAgain).Select(r => r.Lobe.Valve.Cylinder).Distinct());
        }
    }

    [Fact]
    public void A_cylinder_without_a_history_that_takes_no_blade_is_asked_for_too()
    {
        var old = new EngineRows().Engine(Fleet.Specification, doneNowKm: 90_000);
        var typed = ReadingRules.LobesOf(Fleet.Specification).Select(lobe => new TypedReading(
            lobe, lobe.Valve.Cylinder == 3 ? EngineRows.Of(null, 0.03m) : EngineRows.Of(0.19m, 0.20m), [])).ToList();

        var check = VisitCheck.Of(old, Known, Distance.FromKilometres(90_000), typed, typed.Count);

        Assert.Empty(check.Readings);
        Assert.Contains("cylinder 3", Assert.Single(check.Sentences), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-0.03, "tighter")]
    [InlineData(0.03, "wider")]
    public void An_engine_whose_valves_are_all_off_alike_is_said(double moved, string word)
    {
        var sentences = Fleet.Make().Select(made => Check(made, Fleet.Specification, _ => moved).Sentences).ToList();

        Assert.All(sentences, said => Assert.EndsWith(
            $"mm {word} than expected: check engine temperature, blade set and hand.", Assert.Single(said), StringComparison.Ordinal));
        Assert.All(sentences, said => Assert.Matches("^All 16 valves together read 0.0[234] mm", said[0]));
    }

    [Theory]
    [InlineData(0, "what this engine model shows")]
    [InlineData(1, "the last visit,")]
    [InlineData(2, "the last 2 visits")]
    public void What_a_reading_is_held_against_is_said(int visits, string with)
    {
        var lobe = new LobeKey(new ValveKey(1, Side.Exhaust, 1));
        var rows = new EngineRows();
        for (var visit = 1; visit <= visits; visit++)
        {
            rows.At(8_000 * visit).Found(lobe, 0.23m, 0.24m);
        }

        var check = VisitCheck.Of(
            rows.Engine(MadeUpFleet.OneCylinder, doneNowKm: 24_000), Known, Distance.FromKilometres(24_000),
            [new TypedReading(lobe, EngineRows.Of(0.40m, 0.41m), [])], 4);

        var reading = Assert.Single(check.Readings);
        Assert.Equal((true, visits), (reading.MeasureAgain, reading.Visits));
        Assert.Contains($"disagrees with {with}", reading.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void What_nobody_can_expect_is_not_checked()
    {
        var lobe = new LobeKey(new ValveKey(1, Side.Exhaust, 1));
        var unknown = new EngineRows().At(12_000).Found(lobe, 0.23m, 0.24m).Happened(lobe.Valve, ValveEventKind.ChangeUnknown)
            .Engine(MadeUpFleet.OneCylinder);
        TypedReading[] typed = [new(lobe, EngineRows.Of(0.40m, 0.41m), [])];

        Assert.Empty(VisitCheck.Of(unknown, Known, Distance.FromKilometres(24_000), typed, 4).Readings);
        Assert.Empty(VisitCheck.Of(
            unknown, Known with { Slopes = [.. Known.Slopes.Where(s => s.Side == Side.Intake)] }, Distance.FromKilometres(24_000), typed, 4).Readings);
        Assert.Empty(VisitCheck.Of(unknown, Known, Distance.FromKilometres(24_000), [], 4).Readings);
    }

    /// <summary>A visit that was half typed is held to the same level as a whole one: what counts is how many there will be.</summary>
    [Fact]
    public void How_improbable_a_reading_must_be_depends_on_how_many_there_will_be()
    {
        var lobe = new LobeKey(new ValveKey(1, Side.Exhaust, 1));
        var engine = new EngineRows().At(12_000).Found(lobe, 0.23m, 0.24m).At(24_000).Found(lobe, 0.22m, 0.23m).Engine(MadeUpFleet.OneCylinder);
        var checks = Enumerable.Range(0, 12).Select(step => EngineRows.Of(0.21m + (0.005m * step), 0.22m + (0.005m * step)))
            .Select(bracket => (Few: Of(bracket, 1), Many: Of(bracket, 16))).ToList();

        Assert.All(checks, c => Assert.Equal(c.Few.P < 0.01, c.Few.MeasureAgain));
        Assert.All(checks, c => Assert.Equal(c.Few.P < 1 - Math.Pow(0.99, 1.0 / 16), c.Many.MeasureAgain));
        Assert.Contains(checks, c => c.Few.MeasureAgain && !c.Many.MeasureAgain);

        ReadingCheck Of(Bracket bracket, int expected) => VisitCheck.Of(
            engine, Known, Distance.FromKilometres(36_000), [new TypedReading(lobe, bracket, [])], expected).Readings[0];
    }

    private static VisitCheck Check(MadeUpEngine made, EngineSpecification specification, Func<LobeKey, double> moved)
    {
        var typed = Typed(made, specification, moved);
        return VisitCheck.Of(made.Rows.Engine(specification), Known, Distance.FromKilometres(At), typed, typed.Count);
    }

    private static List<TypedReading> Typed(MadeUpEngine made, EngineSpecification specification, Func<LobeKey, double> moved) =>
        [.. ReadingRules.LobesOf(specification).Select(lobe => new TypedReading(lobe, made.Felt(lobe, At, moved(lobe)), []))];
}
