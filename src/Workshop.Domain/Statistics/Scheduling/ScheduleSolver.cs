using System.Globalization;
using Google.OrTools.Sat;

namespace Workshop.Domain.Statistics.Scheduling;

/// <summary>How long and with what the solver looks.</summary>
/// <param name="Seconds">Of real time for all aims together, above 0.</param>
/// <param name="Workers">Searches at the same time, at least 1.</param>
/// <param name="Seed">
/// Of the searches' random choices. One search alone repeats itself where the time suffices; of several the first to find wins, so that
/// what is proved best costs the same every time, but may be another schedule of that cost.
/// </param>
public sealed record ScheduleEffort(double Seconds, int Workers, int Seed)
{
    /// <summary>
    /// 10 s, eight searches, however few cores there are: they look in different ways, and those that change a part of what stands
    /// find most in a full week.
    /// </summary>
    public static ScheduleEffort Usual { get; } = new(10, 8, 5545);
}

/// <summary>A schedule, and how good it is.</summary>
/// <param name="Schedule">Feasible; or the one that stood before, where nothing feasible was found.</param>
/// <param name="Cost">By plain counting.</param>
/// <param name="Proven">No schedule costs less.</param>
/// <param name="Feasible">False only where what stood before breaks a rule and nothing that keeps to all was found.</param>
public sealed record SolvedSchedule(Schedule Schedule, ScheduleCost Cost, bool Proven, bool Feasible);

/// <summary>
/// The best schedule: ends earliest, then evens the load, then moves the fewest jobs. Each aim is solved with those before it held, by
/// the constraint solver CP-SAT of Google.OrTools. Whole numbers throughout. What stood before is where the search begins, and
/// is given back where nothing better is found, so the answer is never worse.
/// </summary>
public static class ScheduleSolver
{
    private const double ShareOfAnAim = 0.6;

    /// <summary>The best schedule found; nothing where none is feasible, or none was found in time, and nothing stood before.</summary>
    /// <param name="problem">What is asked for.</param>
    /// <param name="before">What stood before; nothing when there was nothing.</param>
    /// <param name="effort">Time limit, searches, seed.</param>
    /// <param name="known">A feasible schedule that somebody found already; the search begins there.</param>
    public static SolvedSchedule? Solve(ScheduleProblem problem, Schedule? before, ScheduleEffort effort, Schedule? known = null)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(effort);
        var stands = before is not null && ScheduleCheck.Faults(problem, before).Count == 0;
        if (problem.Jobs.Count == 0)
        {
            return new SolvedSchedule(before ?? new Schedule([]), ScheduleCost.Of(problem, new Schedule([]), before), Proven: true, Feasible: true);
        }

        if (known is not null && ScheduleCheck.Faults(problem, known) is { Count: > 0 } faults)
        {
            throw new ArgumentException($"What is known is not feasible: {faults[0]}", nameof(known));
        }

        var start = stands && (known is null || ScheduleCost.Of(problem, before!, before) <= ScheduleCost.Of(problem, known, before)) ? before : known;
        var (found, proven) = Search(problem, before, start, effort);
        return (found, before) switch
        {
            (null, null) => null,
            (null, _) => new SolvedSchedule(before, ScheduleCost.Of(problem, before, before), Proven: false, stands),
            _ => new SolvedSchedule(found, ScheduleCost.Of(problem, found, before), proven, Feasible: true),
        };
    }

    private static (Schedule? Best, bool Proven) Search(
        ScheduleProblem problem, Schedule? before, Schedule? best, ScheduleEffort effort)
    {
        var model = new ScheduleModel(problem);
        var aims = new List<LinearExpr> { model.Ends };
        if (problem.Loads.Count > 1)
        {
            aims.Add(model.Unevenness);
        }

        if (before is not null)
        {
            aims.Add(model.MovedFrom(before));
        }

        if ((best ?? before) is { } start)
        {
            model.Hint(start);
        }

        var (left, proven) = (effort.Seconds, true);
        for (var aim = 0; aim < aims.Count; aim++)
        {
            using var solver = new CpSolver();
            solver.StringParameters = Parameters(effort, aim == aims.Count - 1 ? left : left * ShareOfAnAim);
            model.Model.Minimize(aims[aim]);
            var status = solver.Solve(model.Model);
            left = Math.Max(0.1, left - solver.WallTime());
            proven &= status is CpSolverStatus.Optimal;
            if (status is CpSolverStatus.ModelInvalid)
            {
                throw new ArgumentException($"The problem cannot be put: {model.Model.Validate()}", nameof(problem));
            }

            if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
                && model.Read(solver) is var found
                && (best is null || ScheduleCost.Of(problem, found, before) < ScheduleCost.Of(problem, best, before)))
            {
                best = found;
            }

            // Nothing feasible, or the time was up before anything was found; what stands goes on to the next aim.
            if (best is null)
            {
                return (null, false);
            }

            model.Hint(best);
            model.Model.Add(aims[aim] <= Reached(ScheduleCost.Of(problem, best, before), aims.Count, aim, before is not null));
        }

        return (best, proven);
    }

    /// <summary>What an aim may no longer exceed. Aims stand in the order of the cost; the load is left out where nobody shares it.</summary>
    private static long Reached(ScheduleCost cost, int aims, int aim, bool counted) => aim switch
    {
        0 => cost.Ends,
        1 when aims == 3 || !counted => cost.Unevenness,
        _ => cost.Moved,
    };

    private static string Parameters(ScheduleEffort effort, double seconds) => string.Create(CultureInfo.InvariantCulture,
        $"max_time_in_seconds:{seconds:0.###} num_workers:{effort.Workers} random_seed:{effort.Seed}");
}
