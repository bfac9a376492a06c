namespace Workshop.Domain.Finishing;

/// <summary>What a card shows of what follows the work, all attempts.</summary>
public sealed record FinishedWork
{
    public static readonly FinishedWork Nothing = new();

    public IReadOnlyList<BalanceRun> Balances { get; init; } = [];

    public IReadOnlyList<LeakLook> Leaks { get; init; } = [];

    public IReadOnlyList<TestRide> Rides { get; init; } = [];

    public IReadOnlyList<VisitRecheck> Rechecks { get; init; } = [];

    public IReadOnlyList<ReminderReset> Reminders { get; init; } = [];

    public IReadOnlyList<CountTap> Taps { get; init; } = [];

    public IReadOnlyList<CountExplanation> Explanations { get; init; } = [];

    /// <summary>It was handed over without the re-check of the cooled engine, and somebody said why.</summary>
    public bool HandedOverUncooled { get; init; }
}
