using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Tests.JobCards;

namespace Workshop.Domain.Tests.Estimates;

public class FindingTests
{
    private static readonly FindingFacts Bearing = new(
        new Guid("00000000-0000-0000-0000-000000000007"), "Front wheel bearing", FindingGravity.Unsafe, null, false, HasPrice: false, IsServiceItem: false, IsDone: false, IsWithdrawn: false);

    [Fact]
    public void A_finding_waits_for_a_price_then_for_an_answer_then_for_the_work()
    {
        Assert.Equal(["Front wheel bearing: found, but neither priced nor answered by the owner."], InTheWay(Bearing));
        Assert.Equal(["Front wheel bearing: the owner has not said yes or no yet."], InTheWay(Bearing with { HasPrice = true }));
        var agreed = Bearing with { HasPrice = true, Answer = EstimateDecision.Agreed };
        Assert.Equal(["Front wheel bearing: the owner agreed, but nobody has said that it is done."], InTheWay(agreed));
        Assert.Empty(InTheWay(agreed with { IsDone = true }));
        Assert.Empty(InTheWay(agreed with { IsServiceItem = true }));
    }

    [Fact]
    public void A_no_stands_in_nobodys_way_but_leaves_it_unsafe()
    {
        var declined = Bearing with { Answer = EstimateDecision.Declined, ToldOfDanger = true };

        Assert.Empty(InTheWay(declined));
        Assert.True(declined.StaysUnsafe);
        Assert.False((declined with { Gravity = FindingGravity.Soon }).StaysUnsafe);
        Assert.False((declined with { IsWithdrawn = true }).StaysUnsafe);
    }

    [Fact]
    public void What_is_only_watched_or_was_withdrawn_waits_for_nobody()
    {
        Assert.Empty(InTheWay(Bearing with { Gravity = FindingGravity.Watch }));
        Assert.Empty(InTheWay(Bearing with { IsWithdrawn = true }));
        Assert.Equal(FindingState.Watched, (Bearing with { Gravity = FindingGravity.Watch }).State);
    }

    private static IEnumerable<string> InTheWay(FindingFacts finding)
    {
        var reasons = SignOffRules.Against(VisitFacts.InOrder with { Findings = [finding] });
        Assert.All(reasons, r => Assert.Equal((SignOffPlace.Findings, $"findings.{finding.Id}"), (r.Place, r.Subject)));
        return reasons.Select(r => r.Sentence);
    }
}
