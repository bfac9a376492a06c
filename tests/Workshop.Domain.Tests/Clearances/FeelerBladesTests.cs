using CsCheck;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Clearances;

public class FeelerBladesTests
{
    private static readonly Gen<FeelerBlades> Sets = Gen.Int[1, 400].Array[2, 40]
        .Select(marks => FeelerBlades.Of(marks.Select(m => Mm(m / 400m))));

    /// <summary>Common practice, no source: the thickest blade that enters with light drag, and the next one.</summary>
    [Fact]
    public void A_tap_says_that_the_blade_goes_and_that_the_next_of_the_set_does_not()
    {
        var set = FeelerBlades.Of([Mm(0.10m), Mm(0.15m), Mm(0.20m)]);

        Assert.Equal(Bracket.Of(BracketKind.GoAndNoGo, Mm(0.10m), Mm(0.15m)), set.Goes(Mm(0.10m)));
        Assert.Equal(Bracket.Of(BracketKind.NextNotTried, Mm(0.20m), null), set.Goes(Mm(0.20m)));
        Assert.Equal(Bracket.Of(BracketKind.NoneEnters, null, Mm(0.10m)), set.NoneEnters);
        Assert.Equal(Bracket.Of(BracketKind.ThickestIsLoose, Mm(0.20m), null), set.ThickestIsLoose);
    }

    [Fact]
    public void A_withdrawn_blade_widens_what_its_neighbour_says()
    {
        var set = FeelerBlades.Of([Mm(0.10m), Mm(0.20m)]);

        Assert.Equal(Mm(0.20m), set.Goes(Mm(0.10m)).NoGo);
        Assert.Throws<ArgumentException>(() => set.Goes(Mm(0.15m)));
    }

    [Fact]
    public void No_blade_of_the_set_lies_between_the_ends_of_a_tap() => Sets.Sample(set =>
    {
        foreach (var blade in set.All)
        {
            var said = set.Goes(blade);
            Assert.Equal(blade, said.Go);
            Assert.DoesNotContain(set.All, b => b > said.Go && b < said.NoGo);
            Assert.Equal(blade == set.All[^1], said.NoGo is null);
        }
    });

    [Fact]
    public void Two_blades_go_together_and_one_step_more_of_either_does_not() => Sets.Sample(set =>
    {
        for (var i = 0; i < set.All.Count; i++)
        {
            for (var j = i + 1; j < set.All.Count; j++)
            {
                var (thin, thick) = (set.All[i], set.All[j]);
                var said = set.GoTogether(thin, thick);
                decimal[] steps =
                [
                    .. i + 1 < set.All.Count && i + 1 != j ? [set.All[i + 1].Millimetres + thick.Millimetres] : Array.Empty<decimal>(),
                    .. j + 1 < set.All.Count ? [thin.Millimetres + set.All[j + 1].Millimetres] : Array.Empty<decimal>(),
                ];

                Assert.True(said.Stacked);
                Assert.Equal(thin.Millimetres + thick.Millimetres, said.Go!.Value.Millimetres);
                Assert.Equal(steps.Length == 0 ? null : steps.Min(), said.NoGo?.Millimetres);
                Assert.Equal(said, set.GoTogether(thick, thin));
            }
        }
    });

    [Fact]
    public void A_blade_is_not_stacked_with_itself() =>
        Assert.Throws<ArgumentException>(() => FeelerBlades.Of([Mm(0.1m), Mm(0.2m)]).GoTogether(Mm(0.1m), Mm(0.1m)));

    private static Clearance Mm(decimal mm) => Clearance.FromMillimetres(mm);
}
