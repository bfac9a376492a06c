using NodaTime;
using Workshop.Domain.Finishing;

namespace Workshop.Domain.Tests;

public class AttemptsTests
{
    [Fact]
    public void The_last_attempt_counts_whatever_the_order_of_rows()
    {
        var (first, second, other) = (Reset(1, 1001), Reset(2, 1001), Reset(1, 1002));

        Assert.Equal(second, Attempts.Last([second, first]));
        Assert.Null(Attempts.Last(Array.Empty<ReminderReset>()));
        Assert.Equal([second, other], Attempts.LastOfEach([second, other, first], r => r.JobCardNumber));
        Assert.Equal((1, 3), (Attempts.After(null), Attempts.After(second)));
    }

    [Fact]
    public void A_reason_is_asked_only_for_what_was_entered_before_and_names_each_once()
    {
        Assert.Null(Attempts.FaultOfReason(null, []));
        Assert.Null(Attempts.FaultOfReason("The hose was loose.", ["cylinder 1, dry"]));
        Assert.Equal("reason is empty: say why cylinder 1, dry, cylinder 2, dry is entered again.",
            Attempts.FaultOfReason(" ", ["cylinder 1, dry", "cylinder 2, dry", "cylinder 1, dry"])?.Sentence);
    }

    private static ReminderReset Reset(int attempt, int card) => new()
    {
        Id = NewId.At(Instant.FromUtc(2026, 3, 2, 9, attempt)), JobCardNumber = card, Attempt = attempt, Outcome = ReminderOutcome.Reset, EnteredBy = Guid.Empty,
        EnteredAt = Instant.FromUtc(2026, 3, 2, 9, attempt),
    };
}
