using NodaTime;
using Workshop.Domain.Contacts;

namespace Workshop.Domain.Tests.Contacts;

public class OutboxRulesTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 2, 8, 0);

    private static readonly Guid Somebody = NewId.At(Now);

    [Fact]
    public void Pauses_are_1_5_and_30_minutes_then_2_and_8_hours_then_it_has_failed()
    {
        var minutes = Enumerable.Range(1, 6).Select(attempt => RetryPlan.Decide(DeliveryResult.RefusedForNow, attempt, Now))
            .Select(after => after.NextTryAt is { } next ? (next - Now).TotalMinutes : -1);

        Assert.Equal([1, 5, 30, 120, 480, -1], minutes);
        Assert.Equal(OutboxState.Failed, RetryPlan.Decide(DeliveryResult.RefusedForNow, 6, Now).State);
        Assert.Throws<ArgumentOutOfRangeException>(() => RetryPlan.Decide(DeliveryResult.Accepted, 0, Now));
    }

    [Theory]
    [InlineData(DeliveryResult.Accepted, OutboxState.Sent)]
    [InlineData(DeliveryResult.RefusedForGood, OutboxState.Failed)]
    [InlineData(DeliveryResult.Unknown, OutboxState.Uncertain)]
    public void Every_other_answer_ends_the_tries_at_once(DeliveryResult result, OutboxState state) =>
        Assert.Equal(new AfterTry(state, null), RetryPlan.Decide(result, 1, Now));

    [Fact]
    public void Only_a_person_sends_again_what_is_uncertain_and_nobody_touches_what_is_in_hand()
    {
        foreach (var state in Enum.GetValues<OutboxState>())
        {
            foreach (var decision in Enum.GetValues<MessageDecision>())
            {
                var message = Message(state);
                var decided = OutboxRules.Decide(message, decision, mailIsSetUp: true, Somebody, Now);

                Assert.Equal(OutboxRules.Fitting(state, ContactChannel.Email, true).Contains(decision), !decided.IsRefused);
                Assert.Equal(decided.IsRefused ? state : After(decision), message.State);
                Assert.Equal(!decided.IsRefused && decision == MessageDecision.Send ? Now : null, message.NextTryAt);
            }
        }

        Assert.Empty(OutboxRules.Fitting(OutboxState.BeingSent, ContactChannel.Email, true));
        Assert.Contains(MessageDecision.CountAsSent, OutboxRules.Fitting(OutboxState.Uncertain, ContactChannel.Email, false));
    }

    [Fact]
    public void A_letter_and_an_email_without_a_mail_server_are_copied_never_sent()
    {
        Assert.DoesNotContain(MessageDecision.Send, OutboxRules.Fitting(OutboxState.Waiting, ContactChannel.Letter, true));
        Assert.DoesNotContain(MessageDecision.Send, OutboxRules.Fitting(OutboxState.Waiting, ContactChannel.Email, false));
        Assert.Equal(
            "No mail server is set up: copy the text and send it by hand, then mark it as copied.",
            OutboxRules.Decide(Message(OutboxState.Waiting), MessageDecision.Send, false, Somebody, Now).Problem!.Sentence);
    }

    private static OutboxState After(MessageDecision decision) => decision switch
    {
        MessageDecision.Send => OutboxState.Waiting,
        MessageDecision.CountAsSent => OutboxState.Sent,
        MessageDecision.MarkAsCopied => OutboxState.Copied,
        _ => OutboxState.Discarded,
    };

    private static OutboxMessage Message(OutboxState state) => new()
    {
        Id = NewId.At(Now), PersonId = Somebody, MotorcycleId = Somebody, Channel = ContactChannel.Email, To = "a@example.org", Subject = "s", Body = "b",
        State = state, CreatedBy = Somebody, CreatedAt = Now,
    };
}
