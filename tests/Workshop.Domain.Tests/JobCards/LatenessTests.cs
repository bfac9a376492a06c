using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Tests.JobCards;

public class LatenessTests
{
    private static readonly Instant Eight = Instant.FromUtc(2026, 3, 2, 8, 0);

    private static readonly PlannedPhase[] Plan =
        [Phase(VisitPhase.Work, 60, 180), Phase(VisitPhase.Arrival, 0, 60), Phase(VisitPhase.HandOver, 180, 195)];

    [Theory]
    [InlineData(JobCardState.Booked, null, 10, null)]
    [InlineData(JobCardState.Booked, null, 11, "has not come yet")]
    [InlineData(JobCardState.CheckedIn, null, 70, null)]
    [InlineData(JobCardState.CheckedIn, null, 71, "runs late")]
    [InlineData(JobCardState.CheckedIn, VisitPhase.Work, 71, null)]
    [InlineData(JobCardState.CheckedIn, VisitPhase.Work, 191, "runs late")]
    [InlineData(JobCardState.CheckedIn, VisitPhase.Waiting, 999, null)]
    [InlineData(JobCardState.SignedOff, VisitPhase.HandOver, 999, null)]
    [InlineData(JobCardState.Cancelled, null, 999, null)]
    public void A_visit_is_late_when_its_phase_should_have_ended_more_than_the_grace_ago(
        JobCardState state, VisitPhase? begun, int minutes, string? word) =>
        Assert.Equal(word, Lateness.Of(state, Plan, begun, Eight + Duration.FromMinutes(minutes)));

    [Fact]
    public void A_visit_without_a_plan_is_not_late() => Assert.Null(Lateness.Of(JobCardState.Booked, [], null, Eight));

    private static PlannedPhase Phase(VisitPhase phase, int from, int until) => new()
    {
        JobCardNumber = 1001, Phase = phase, Span = new Interval(Eight + Duration.FromMinutes(from), Eight + Duration.FromMinutes(until)),
    };
}
