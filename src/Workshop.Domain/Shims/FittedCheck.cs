using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>Found, left and shims of one lobe that do not agree.</summary>
/// <param name="ExpectedMm">The clearance that the shims should have given; nothing where the bracket as found is open.</param>
/// <param name="AsIfMm">The thickness that would explain what was left; nothing where a bracket is open.</param>
/// <param name="ExchangedWith">The valve whose shim would explain it, and the other way round.</param>
public sealed record FittedDisagreement(
    LobeKey Lobe, Bracket Left, ShimThickness Out, ShimThickness In, decimal? ExpectedMm, decimal? AsIfMm, ValveKey? ExchangedWith)
{
    /// <summary>What to say at once, while the engine is still open.</summary>
    public string Sentence
    {
        get
        {
            var expected = ExpectedMm is { } mm ? $"about {mm:0.000} mm" : "another clearance";
            var cause = ExchangedWith is { } other
                ? $"as if its shim and that of {other.Spoken} were exchanged"
                : "wrong shim, wrong valve, or dirt between" + (AsIfMm is { } thickness ? $"; as if {thickness:0.00} mm lay in it" : "");
            var name = Lobe.Spoken;
            return $"{char.ToUpperInvariant(name[0])}{name[1..]} is left at {Left}, where {Out} out and {In} in should give {expected}: {cause}. "
                + "Look before the covers close.";
        }
    }
}

/// <summary>
/// Compares what was left with what was found and the two shims, by the lever ratio: left = found + ratio x (out - in). Both
/// clearances are brackets, so they disagree only where the brackets, one moved by the shims' part, lie apart by more than
/// twice the standard uncertainty of blades and micrometer together (GUM, JCGM 100:2008, 6.2, k = 2).
/// </summary>
public static class FittedCheck
{
    /// <summary>Every lobe that disagrees, in order; empty where all is as it should be or cannot be told.</summary>
    /// <param name="specification">Lever ratios.</param>
    /// <param name="readings">Of the visit, superseded ones included.</param>
    /// <param name="shims">Of the visit, superseded ones included.</param>
    /// <param name="events">Of the visit: a valve of which nobody knows what was done cannot be told.</param>
    /// <param name="shimsBefore">The shim that each valve had when the visit began, where an earlier one tells.</param>
    /// <param name="bladeMm">Standard uncertainty of a blade, mm.</param>
    /// <param name="micrometerMm">Standard uncertainty of the micrometer, mm.</param>
    public static IReadOnlyList<FittedDisagreement> Of(
        EngineSpecification specification,
        IReadOnlyCollection<ClearanceReading> readings,
        IReadOnlyCollection<ShimObservation> shims,
        IReadOnlyCollection<ValveEvent> events,
        IReadOnlyDictionary<ValveKey, ShimThickness> shimsBefore,
        decimal bladeMm,
        decimal micrometerMm)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(shimsBefore);
        var lobes = ReadingRules.LobesOf(specification)
            .Select(lobe => Fitted.Of(lobe, specification, readings, shims, events, shimsBefore))
            .OfType<Fitted>().ToList();
        var apart = lobes.Where(l => !l.Agrees(l.In, bladeMm, micrometerMm)).ToList();
        return [.. apart.Select(l => new FittedDisagreement(
            l.Lobe, l.Left, l.Out, l.In, l.ExpectedMm, l.AsIfMm,
            apart.Where(o => o.Lobe.Valve != l.Lobe.Valve && l.Agrees(o.In, bladeMm, micrometerMm) && o.Agrees(l.In, bladeMm, micrometerMm))
                .Select(o => (ValveKey?)o.Lobe.Valve).FirstOrDefault()))];
    }

    private sealed record Fitted(LobeKey Lobe, Bracket Found, Bracket Left, ShimThickness Out, ShimThickness In, LeverRatio Ratio)
    {
        public decimal? ExpectedMm => Found.MiddleMm is { } middle ? ShimArithmetic.PredictedMm(middle, Ratio, Out, In.Millimetres) : null;

        public decimal? AsIfMm => Found.MiddleMm is { } found && Left.MiddleMm is { } left ? ShimArithmetic.IdealMm(found, Ratio, Out, left) : null;

        public static Fitted? Of(
            LobeKey lobe,
            EngineSpecification specification,
            IReadOnlyCollection<ClearanceReading> readings,
            IReadOnlyCollection<ShimObservation> shims,
            IReadOnlyCollection<ValveEvent> events,
            IReadOnlyDictionary<ValveKey, ShimThickness> shimsBefore)
        {
            var found = ReadingRules.Standing(readings, lobe, Stage.AsFound);
            var left = ReadingRules.Standing(readings, lobe, Stage.AsLeft);
            var removed = ShimRules.Standing(shims, lobe.Valve, Stage.AsFound);
            ShimThickness? was = removed is not null ? removed.Thickness
                : shimsBefore.TryGetValue(lobe.Valve, out var before) ? before : null;
            var fitted = ShimRules.Standing(shims, lobe.Valve, Stage.AsLeft);
            var now = fitted is null ? was : fitted.Thickness;
            var changed = DisturbedValves.LastChangeOf(lobe.Valve, shims, events);
            return found is { NotCold: false } && left is { NotRemeasured: false, NotCold: false } && was is { } old && now is { } put
                && (changed is null || left.MeasuredAt >= changed)
                && !events.Any(e => e.Valve == lobe.Valve && e.Kind is ValveEventKind.ScrewTurned or ValveEventKind.ChangeUnknown)
                ? new Fitted(lobe, found.Bracket, left.Bracket, old, put, ReadingRules.LimitsOf(specification, lobe).LeverRatio)
                : null;
        }

        /// <summary>Whether a shim of this thickness explains what was left.</summary>
        public bool Agrees(ShimThickness fitted, decimal bladeMm, decimal micrometerMm)
        {
            var shift = Ratio.Value * (Out - fitted);
            var gap = decimal.Max(
                Left.Go is { } leftGo && Found.NoGo is { } foundNoGo ? leftGo.Millimetres - (foundNoGo.Millimetres + shift) : decimal.MinValue,
                Left.NoGo is { } leftNoGo && Found.Go is { } foundGo ? foundGo.Millimetres + shift - leftNoGo.Millimetres : decimal.MinValue);
            var blades = (double)bladeMm * Math.Sqrt((Found.Stacked ? 2 : 1) + (Left.Stacked ? 2 : 1));
            return (double)gap <= 2 * ShimUncertainty.AfterSwapMm(blades, Ratio, (double)micrometerMm);
        }
    }
}
