using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Contacts;

/// <summary>What a person may decide about a message.</summary>
public enum MessageDecision
{
    /// <summary>Put it in line now, whatever became of it before.</summary>
    Send,

    /// <summary>Of an uncertain one: it went out.</summary>
    CountAsSent,

    /// <summary>It was copied and sent by hand.</summary>
    MarkAsCopied,

    /// <summary>It is not to be sent.</summary>
    Discard,
}

/// <summary>Which decision fits which state. A message in hand can be left alone only: its result is on its way.</summary>
public static class OutboxRules
{
    /// <summary>The decisions that fit.</summary>
    /// <param name="state">As it stands.</param>
    /// <param name="channel">By which it goes.</param>
    /// <param name="mailIsSetUp">Whether the service has a mail server to hand it to.</param>
    public static IReadOnlyList<MessageDecision> Fitting(OutboxState state, ContactChannel channel, bool mailIsSetUp)
    {
        MessageDecision[] send = channel == ContactChannel.Email && mailIsSetUp ? [MessageDecision.Send] : [];
        return state switch
        {
            OutboxState.Waiting or OutboxState.Failed => send.Append(MessageDecision.MarkAsCopied).Append(MessageDecision.Discard).ToArray(),
            OutboxState.Uncertain => send.Append(MessageDecision.CountAsSent).Append(MessageDecision.Discard).ToArray(),
            _ => [],
        };
    }

    /// <summary>Changes a message as decided, or says what stands against it.</summary>
    public static Outcome<OutboxMessage> Decide(
        OutboxMessage message, MessageDecision decision, bool mailIsSetUp, Guid by, Instant now)
    {
        ArgumentNullException.ThrowIfNull(message);
        if (!Fitting(message.State, message.Channel, mailIsSetUp).Contains(decision))
        {
            return Problem.Conflict("message-state", Refusal(message, decision, mailIsSetUp));
        }

        (message.ClaimId, message.ClaimedUntil, message.NextTryAt) = (null, null, null);
        switch (decision)
        {
            case MessageDecision.Send:
                (message.State, message.Attempts, message.NextTryAt) = (OutboxState.Waiting, 0, now);
                break;
            case MessageDecision.CountAsSent:
                (message.State, message.SentBy, message.SentAt) = (OutboxState.Sent, by, now);
                break;
            case MessageDecision.MarkAsCopied:
                (message.State, message.SentBy, message.SentAt) = (OutboxState.Copied, by, now);
                break;
            default:
                message.State = OutboxState.Discarded;
                break;
        }

        return message;
    }

    private static string Refusal(OutboxMessage message, MessageDecision decision, bool mailIsSetUp) => decision switch
    {
        _ when message.State == OutboxState.BeingSent => "The message is being sent; look again in a moment.",
        MessageDecision.Send when message.Channel != ContactChannel.Email => "A letter is not sent by the service: copy its text, then mark it as copied.",
        MessageDecision.Send when !mailIsSetUp => "No mail server is set up: copy the text and send it by hand, then mark it as copied.",
        _ => $"The message is {message.State.Spoken()}: nothing more is to be decided about it that way.",
    };
}
