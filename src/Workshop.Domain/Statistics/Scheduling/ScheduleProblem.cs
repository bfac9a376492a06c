namespace Workshop.Domain.Statistics.Scheduling;

/// <summary>A machine, a place, a person: serves one job at a time.</summary>
/// <param name="Working">
/// When a worker works; a task goes on after a break. Nothing: always, and what it does is never interrupted.
/// </param>
/// <param name="Taken">By what is not planned here.</param>
public sealed record ScheduleResource(IReadOnlyList<TimeStretch>? Working, IReadOnlyList<TimeStretch> Taken);

/// <summary>One step of a job; the steps of a job come one after the other.</summary>
/// <param name="Duration">In units: of work where there is a worker, else of time; not negative.</param>
public sealed record ScheduleTask(int Duration)
{
    /// <summary>Which of the job's choices works at it, in its working time only; nothing: it passes by itself.</summary>
    public int? Worker { get; init; }

    /// <summary>Worked at without a pause: it is not begun where a break or the night would come into it.</summary>
    public bool Unbroken { get; init; }

    /// <summary>A task without worker may last longer than its duration, up to this.</summary>
    public int? Longest { get; init; }

    /// <summary>Units that pass at least between the end of the task before and this one's start.</summary>
    public int MinGap { get; init; }

    /// <summary>Units that pass at most; nothing: any.</summary>
    public int? MaxGap { get; init; }

    /// <summary>Does not start before.</summary>
    public int NotBefore { get; init; }

    /// <summary>Ends by then at the latest; nothing: by the horizon.</summary>
    public int? EndsBy { get; init; }

    /// <summary>Lies whole in one of these; nothing: anywhere.</summary>
    public IReadOnlyList<TimeStretch>? Within { get; init; }

    /// <summary>The moments at which it may start; nothing: any.</summary>
    public IReadOnlyCollection<int>? Starts { get; init; }
}

/// <summary>One of the job's choices is taken from the start of one task to the end of another, whatever passes in between.</summary>
/// <param name="Choice">Which of the job's choices; its resources have no working time of their own.</param>
/// <param name="First">The task at whose start it is taken.</param>
/// <param name="Last">The task at whose end it is free again.</param>
public sealed record ResourceHold(int Choice, int First, int Last);

/// <summary>Where one choice picks a resource that another could have, the other picks it too.</summary>
/// <param name="Choice">Which of the job's choices.</param>
/// <param name="To">The other.</param>
public sealed record TiedChoice(int Choice, int To);

/// <summary>Tasks in order, and what they need.</summary>
/// <param name="Tasks">At least one.</param>
/// <param name="Choices">For each: the resources that may serve; one of them does so for the whole job.</param>
/// <param name="Holds">What is taken beside the workers.</param>
public sealed record ScheduleJob(
    IReadOnlyList<ScheduleTask> Tasks, IReadOnlyList<IReadOnlyList<int>> Choices, IReadOnlyList<ResourceHold> Holds)
{
    /// <summary>Choices that go together.</summary>
    public IReadOnlyList<TiedChoice> Tied { get; init; } = [];
}

/// <summary>A worker whose load is to be even with the others'.</summary>
/// <param name="Resource">Index of the resource.</param>
/// <param name="Weight">Of one unit of work: larger for somebody who is there for fewer units.</param>
/// <param name="Already">Units of work beside those planned here.</param>
public sealed record WorkerLoad(int Resource, int Weight, int Already);

/// <summary>
/// Jobs of tasks in order, on resources that serve one job at a time: the job-shop problem, with alternatives, gaps, holds over
/// several tasks, and workers who go home at night.
/// </summary>
/// <param name="Horizon">Everything lies between 0 and here.</param>
/// <param name="Resources">Named by their index.</param>
/// <param name="Jobs">Named by their index.</param>
/// <param name="Loads">Whose loads are to be even; may be empty.</param>
public sealed record ScheduleProblem(
    int Horizon, IReadOnlyList<ScheduleResource> Resources, IReadOnlyList<ScheduleJob> Jobs, IReadOnlyList<WorkerLoad> Loads)
{
    /// <summary>The working time of a resource; nothing for one that has none of its own.</summary>
    public WorkingAxis? AxisOf(int resource) =>
        Resources[resource].Working is { } working ? new WorkingAxis(working, Horizon) : null;
}
