using System.Globalization;
using NodaTime;

namespace Workshop.Domain.Contacts;

/// <summary>Channels, outcomes and states as a person says them, and what a message says of what is due.</summary>
public static class ContactWords
{
    public static string Spoken(this ContactChannel channel) => channel switch
    {
        ContactChannel.Phone => "telephone",
        ContactChannel.Email => "e-mail",
        ContactChannel.Letter => "letter",
        _ => throw new ArgumentOutOfRangeException(nameof(channel), channel, null),
    };

    public static string Spoken(this ContactOutcome outcome) => outcome switch
    {
        ContactOutcome.Reached => "reached",
        ContactOutcome.NotReached => "not reached",
        ContactOutcome.CallsBack => "asked to be called back",
        ContactOutcome.Booked => "agreed on a visit",
        ContactOutcome.Declined => "declined",
        ContactOutcome.Written => "written to",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, null),
    };

    public static string Spoken(this OutboxState state) => state switch
    {
        OutboxState.Waiting => "waiting",
        OutboxState.BeingSent => "being sent",
        OutboxState.Sent => "sent",
        OutboxState.Failed => "failed",
        OutboxState.Uncertain => "uncertain",
        OutboxState.Copied => "copied",
        OutboxState.Discarded => "discarded",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };

    /// <summary>"about 20 April 2026", or "now (since 6 April 2024)" where the day is behind.</summary>
    public static string Expected(LocalDate on, LocalDate today) => on < today ? $"now (since {Day(on)})" : $"about {Day(on)}";

    /// <summary>
    /// What a message says of the items of a visit, a line for each: "- Engine oil and filter, about 20 April 2026; in the same
    /// visit, saves 1 h 30 min".
    /// </summary>
    /// <param name="items">Name, day on which it comes up, and what the proposal of the visit says of it, if anything.</param>
    /// <param name="today">The workshop's day.</param>
    public static string Items(IEnumerable<(string Name, LocalDate ComesOn, string? Proposal)> items, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(items);
        return string.Join('\n', items.Select(item =>
            $"- {item.Name}, {Expected(item.ComesOn, today)}{(string.IsNullOrEmpty(item.Proposal) ? "" : $"; {item.Proposal}")}"));
    }

    private static string Day(LocalDate day) => day.ToString("d MMMM uuuu", CultureInfo.InvariantCulture);
}
