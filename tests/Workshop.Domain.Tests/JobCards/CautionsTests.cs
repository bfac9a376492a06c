using Workshop.Domain.JobCards;

namespace Workshop.Domain.Tests.JobCards;

public class CautionsTests
{
    [Fact]
    public void Each_caution_has_a_code_a_title_and_a_sentence_of_its_own()
    {
        Assert.Equal(Cautions.All.Count, Cautions.All.Select(c => c.Code).Distinct().Count());
        Assert.Equal(Cautions.All.Count, Cautions.All.Select(c => c.Title).Distinct().Count());
        Assert.All(Cautions.All, c =>
        {
            Assert.Matches("^[a-z]+(-[a-z]+)*$", c.Code);
            Assert.InRange(c.Title.Length, 5, 60);
            Assert.InRange(c.Text.Length, 40, 240);
            Assert.EndsWith(".", c.Text);
        });
    }

    [Fact]
    public void Every_stage_of_a_visit_has_its_cautions() =>
        Assert.Equal(Enum.GetValues<CautionStage>(), Cautions.All.Select(c => c.Stage).Distinct().Order());

    [Fact]
    public void The_cautions_of_several_items_come_once_each_in_the_order_of_a_visit()
    {
        var shown = Cautions.InOrder(["turn-by-hand", "eye-protection", "cam-chain-taut", "eye-protection", "hot-oil"]);

        Assert.Equal(["eye-protection", "hot-oil", "cam-chain-taut", "turn-by-hand"], shown.Select(c => c.Code));
    }

    [Fact]
    public void A_code_that_nothing_has_is_no_caution()
    {
        Assert.False(Cautions.Exists("beware"));
        Assert.Throws<KeyNotFoundException>(() => Cautions.Of("beware"));
        Assert.Equal("turn-by-hand", Cautions.Of("turn-by-hand").Code);
    }
}
