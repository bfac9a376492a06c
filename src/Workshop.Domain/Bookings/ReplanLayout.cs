using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Bookings;

internal enum ReplanStep
{
    Arrival,

    /// <summary>A motorcycle whose work begins as it comes: at open doors.</summary>
    Gate,
    Soak,
    Work,
    Cure,
    WarmRun,
    TestRide,
    Cool,
    Recheck,
    HandOver,
}

/// <summary>One task of a visit.</summary>
/// <param name="Worked">A technician works at it.</param>
/// <param name="Follows">It begins where the one before ends; else as soon as somebody can go on.</param>
internal sealed record ReplanTask(ReplanStep Step, int Minutes, bool Worked, bool Follows)
{
    public VisitPhase? Phase => ReplanLayout.PhaseOf(Step);
}

/// <summary>Which tasks a visit has, and what it takes through which of them.</summary>
internal sealed class ReplanLayout
{
    public const int Technician = 0;
    public const int Bay = 1;

    /// <summary>Where it soaks; tools come after it, or after the bay where nothing soaks.</summary>
    public const int Place = 2;

    private readonly VisitShape shape;

    public ReplanLayout(VisitShape shape)
    {
        this.shape = shape;
        var soak = ReplanTasks.Up(shape.Soak);
        var cools = shape.RecheckMinutes > 0;
        Arrives = shape.ArrivalMinutes > 0 || soak > 0;
        var all = new ReplanTask[]
        {
            new(ReplanStep.Arrival, shape.ArrivalMinutes, shape.ArrivalTakes != ArrivalTakes.Nobody, Follows: false),
            new(ReplanStep.Gate, 0, Worked: false, Follows: false),
            new(ReplanStep.Soak, soak, Worked: false, Follows: true),
            new(ReplanStep.Work, shape.WorkMinutes, Worked: true, Follows: soak > 0 || !Arrives),
            new(ReplanStep.Cure, shape.CureMinutes, Worked: false, Follows: true),
            new(ReplanStep.WarmRun, shape.WarmRunMinutes, Worked: true, Follows: false),
            new(ReplanStep.TestRide, shape.TestRideMinutes, Worked: true, Follows: false),
            new(ReplanStep.Cool, cools ? ReplanTasks.Up(shape.Cool) : 0, Worked: false, Follows: true),
            new(ReplanStep.Recheck, shape.RecheckMinutes, Worked: true, Follows: false),
            new(ReplanStep.HandOver, shape.HandOverMinutes, Worked: false, Follows: false),
        };
        Tasks = all.Where(t => t.Step switch
        {
            ReplanStep.Arrival => Arrives,
            ReplanStep.Gate => !Arrives,
            ReplanStep.Work => true,
            _ => t.Minutes > 0,
        }).ToArray();
    }

    public ReplanTask[] Tasks { get; }

    public bool Arrives { get; }

    public bool Soaks => Index(ReplanStep.Soak) >= 0;

    public int Work => Index(ReplanStep.Work);

    public static VisitPhase? PhaseOf(ReplanStep step) => step switch
    {
        ReplanStep.Arrival => VisitPhase.Arrival,
        ReplanStep.Gate => null,
        ReplanStep.Soak => VisitPhase.ColdSoak,
        ReplanStep.Work => VisitPhase.Work,
        ReplanStep.Cure => VisitPhase.SealantCure,
        ReplanStep.WarmRun => VisitPhase.WarmRun,
        ReplanStep.TestRide => VisitPhase.TestRide,
        ReplanStep.Cool or ReplanStep.Recheck => VisitPhase.CoolAndRecheck,
        ReplanStep.HandOver => VisitPhase.HandOver,
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, null),
    };

    /// <summary>The phase in which a choice is taken, to find it in a plan.</summary>
    public VisitPhase PhaseOf(int choice) => Soaks && choice == Place ? VisitPhase.ColdSoak : VisitPhase.Work;

    public IEnumerable<ResourceHold> Holds(int tools)
    {
        var lastInBay = Tasks[^1].Step == ReplanStep.HandOver ? Tasks.Length - 2 : Tasks.Length - 1;
        var holds = new List<ResourceHold> { new(Bay, Work, lastInBay) };
        if (shape.ArrivalTakes == ArrivalTakes.TechnicianAndBay && shape.ArrivalMinutes > 0)
        {
            holds.Add(new ResourceHold(Bay, 0, 0));
        }

        if (Soaks)
        {
            holds.Add(new ResourceHold(Place, Index(ReplanStep.Soak), Index(ReplanStep.Soak)));
        }

        var firstTool = Soaks ? Place + 1 : Place;
        holds.AddRange(Enumerable.Range(firstTool, tools).Select(choice => new ResourceHold(choice, Work, Work)));
        return holds;
    }

    public int Index(ReplanStep step) => Array.FindIndex(Tasks, t => t.Step == step);
}
