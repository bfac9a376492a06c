using NodaTime;
using Workshop.Domain.Contacts;

namespace Workshop.Domain.Tests.Contacts;

public class ContactWordsTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);

    [Fact]
    public void Items_are_a_line_each_with_their_day_and_what_the_proposal_says() => Assert.Equal(
        "- Engine oil and filter, now (since 6 April 2024)\n- Valve clearance check, about 20 April 2026; in 900 km: do it in the same visit, saves 2 h 0 min",
        ContactWords.Items(
            [
                ("Engine oil and filter", new LocalDate(2024, 4, 6), null),
                ("Valve clearance check", new LocalDate(2026, 4, 20), "in 900 km: do it in the same visit, saves 2 h 0 min"),
            ],
            Today));

    [Fact]
    public void Every_channel_outcome_and_state_has_a_word_of_its_own()
    {
        Words(Enum.GetValues<ContactChannel>(), w => w.Spoken());
        Words(Enum.GetValues<ContactOutcome>(), w => w.Spoken());
        Words(Enum.GetValues<OutboxState>(), w => w.Spoken());
    }

    private static void Words<T>(T[] values, Func<T, string> spoken) => Assert.Equal(values.Length, values.Select(spoken).Distinct().Count());
}
