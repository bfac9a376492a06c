using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>Goes through the visits of one lobe in order and keeps what is known of the leg that is open.</summary>
internal sealed class LegWalk(LobeKey lobe, LeverRatio ratio, Distance? firstCheckDue, LeftOutVisits leftOutVisits)
{
    /// <summary>How far past the maker's first check a first reading still tells of a valve never opened.</summary>
    private const decimal PastFirstCheck = 1.25m;

    private readonly List<Leg> legs = [];
    private readonly List<LobeChange> changes = [];
    private readonly List<LeftOutReading> leftOut = [];

    private List<Seen> open = [];
    private int section = 1;
    private LegCut? cut;
    private Distance cutAt;
    private Distance? adjustedAt;
    private int? adjustedOnCard;
    private ShimThickness? firstShim;

    // The stretch: readings since the shim last moved. Its shim may be learned only when it comes out.
    private int stretchFrom;
    private ShimThickness? shim;
    private int swaps;

    /// <summary>Whether what an engine has done is little enough for a valve first read there to tell of one never opened.</summary>
    public static bool TellsOfNew(Distance at, Distance firstCheckDue) => at.Metres <= firstCheckDue.Metres * PastFirstCheck;

    public void Take(LobeVisit visit)
    {
        var read = Read(visit.Last(Stage.AsFound));
        var cameOut = visit.Shim(Stage.AsFound);
        var wentIn = visit.Shim(Stage.AsLeft);
        var asLeft = visit.Last(Stage.AsLeft);
        if (cameOut?.Thickness is { } measured)
        {
            LearnShim(measured, read);
        }

        // Known from a measurement now, or from the last one of a shim that nobody has moved since.
        var before = cameOut is { Thickness: null } ? null : shim;
        if (CutBy(visit, before) is { } why)
        {
            var kept = why is LegCut.PartChanged or LegCut.ScrewTurned ? shim : null;
            CutHere(why, visit, wentIn is null ? kept : wentIn.Thickness);
            changes.Add(new LobeChange(visit.At, visit.When, why, before, wentIn?.Thickness));
        }
        else if (wentIn?.Thickness is { } known && known != before)
        {
            changes.Add(new LobeChange(visit.At, visit.When, null, before, known));
            if (open.Count == 0)
            {
                // What is read from here on is counted from the shim that the level was set with.
                firstShim ??= before;
            }

            shim = known;
            stretchFrom = open.Count;
            swaps++;
        }

        Read(asLeft);
    }

    public LobeHistory Finish()
    {
        var lastReadHere = open.Count > 0;
        var first = firstShim ?? open.FirstOrDefault()?.Shim;
        Close();
        return new LobeHistory(
            lobe, legs, changes, leftOut, lastReadHere ? null : cut, shim, Part(shim, first))
        {
            StandsOn = lastReadHere || cut is null ? null
                : new StandingLevel(adjustedAt is null ? LegStart.FirstSeen : LegStart.Adjusted, cutAt, adjustedOnCard),
        };
    }

    /// <summary>The strongest reason of the visit to end the leg, or none.</summary>
    private static LegCut? CutBy(LobeVisit visit, ShimThickness? before)
    {
        var cameOut = visit.Shim(Stage.AsFound);
        var wentIn = visit.Shim(Stage.AsLeft);
        var unmeasured = cameOut is { Thickness: null } || wentIn is { Thickness: null } || (wentIn is not null && before is null);
        return visit.PartChanged ? LegCut.PartChanged
            : visit.Events.Contains(ValveEventKind.ScrewTurned) ? LegCut.ScrewTurned
            : visit.Events.Contains(ValveEventKind.ChangeUnknown) ? LegCut.ChangeUnknown
            : unmeasured ? LegCut.ShimUnmeasured
            : cameOut is null && wentIn is null && JumpedUnsaid(visit) ? LegCut.ChangeUnknown
            : null;
    }

    /// <summary>
    /// Nobody wrote down a change, but as left lies further from as found than the wider of the two brackets is wide: more
    /// than blades and hands differ by, so something was changed.
    /// </summary>
    private static bool JumpedUnsaid(LobeVisit visit)
    {
        if (visit.Last(Stage.AsFound)?.Reading.Bracket is not { } found
            || visit.Last(Stage.AsLeft) is not { Reading: { NotRemeasured: false, Bracket: var left } })
        {
            return false;
        }

        var gap = decimal.Max((left.Go - found.NoGo) ?? 0, (found.Go - left.NoGo) ?? 0);
        return gap > decimal.Max((found.NoGo - found.Go) ?? 0, (left.NoGo - left.Go) ?? 0);
    }

    /// <summary>Takes the reading into the open leg; false where there is none or it may not enter.</summary>
    private bool Read((ClearanceReading Reading, Distance At)? read)
    {
        if (read is not { } at)
        {
            return false;
        }

        if (leftOutVisits.Contains(at.Reading))
        {
            leftOut.Add(new LeftOutReading(at.Reading, at.At, "the visit was left out"));
        }
        else if (at.Reading.NotCold)
        {
            leftOut.Add(new LeftOutReading(at.Reading, at.At, "not cold"));
        }
        else if (at.Reading.NotRemeasured)
        {
            leftOut.Add(new LeftOutReading(at.Reading, at.At, "carried from as found, used once"));
        }
        else
        {
            open.Add(new Seen(at.Reading, at.At, shim, swaps));
            return true;
        }

        return false;
    }

    /// <summary>
    /// The shim was measured as it came out: so thick it was at this visit's reading, and at all readings of the stretch
    /// where nothing was known of it.
    /// </summary>
    private void LearnShim(ShimThickness measured, bool readAtThisVisit)
    {
        for (var i = stretchFrom; i < open.Count; i++)
        {
            if (open[i].Shim is null || (readAtThisVisit && i == open.Count - 1))
            {
                open[i] = open[i] with { Shim = measured };
            }
        }

        shim = measured;
    }

    private void CutHere(LegCut why, LobeVisit visit, ShimThickness? shimFromHere)
    {
        Close();
        (cut, cutAt) = (why, visit.At);
        section += why == LegCut.PartChanged ? 1 : 0;
        var set = visit.Shim(Stage.AsLeft) is not null || visit.Events.Contains(ValveEventKind.ScrewTurned);
        adjustedAt = set ? visit.At : null;
        adjustedOnCard = set ? visit.Card : null;
        shim = firstShim = shimFromHere;
    }

    private void Close()
    {
        if (open.Count > 0)
        {
            legs.Add(LegOf(open));
            open = [];
        }

        stretchFrom = 0;
        swaps = 0;
        firstShim = null;
    }

    private Leg LegOf(List<Seen> seen)
    {
        var first = firstShim ?? seen[0].Shim;
        var start = StartOf(seen[0]);
        var origin = start switch
        {
            LegStart.New => Distance.Zero,
            LegStart.Adjusted => adjustedAt!.Value,
            _ => seen[0].At,
        };
        var leg = new Leg(section, start, cut, origin, first, [])
        {
            SetOnCard = start == LegStart.Adjusted ? adjustedOnCard : null,
        };
        return leg with
        {
            Readings = [.. seen.Select(s => new LegReading(s.Reading, s.At, leg.XAt(s.At), s.Shim, Part(s.Shim, first), s.Swaps))],
        };
    }

    private LegStart StartOf(Seen first) =>
        adjustedAt is not null ? LegStart.Adjusted
        : cut is null && firstCheckDue is { } due && TellsOfNew(first.At, due) ? LegStart.New
        : LegStart.FirstSeen;

    private decimal Part(ShimThickness? now, ShimThickness? first) =>
        now is { } there && first is { } then ? ratio.Value * (there - then) : 0;

    private sealed record Seen(ClearanceReading Reading, Distance At, ShimThickness? Shim, int Swaps);
}
