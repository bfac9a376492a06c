using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Shims;

/// <summary>What a shim must satisfy beyond its own shape, said once for the page, the API and the import.</summary>
public static class ShimRules
{
    /// <summary>
    /// Nothing where a shim of this thickness may go in; else the fault, which names the permitted range. What came out may
    /// be of any thickness: somebody fitted it.
    /// </summary>
    /// <param name="field">The thickness' field, as the caller wrote it.</param>
    /// <param name="thicknessMm">As typed, mm.</param>
    /// <param name="range">What the engine model permits.</param>
    public static FieldFault? FaultOfThickness(string field, decimal thicknessMm, ShimRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return thicknessMm >= range.Smallest.Millimetres && thicknessMm <= range.Largest.Millimetres
            ? null
            : new FieldFault(field,
                $"{field} is {thicknessMm} mm: {range.Smallest.Millimetres:0.00#} to {range.Largest} is permitted in this engine. {ShimPlanner.DoNotGrind}");
    }

    /// <summary>The observation of a valve and stage of one visit that counts: the one that nothing supersedes.</summary>
    public static ShimObservation? Standing(IReadOnlyCollection<ShimObservation> ofTheVisit, ValveKey valve, Stage stage)
    {
        ArgumentNullException.ThrowIfNull(ofTheVisit);
        return ofTheVisit.SingleOrDefault(s => s.Valve == valve && s.Stage == stage
            && !ofTheVisit.Any(later => later.SupersedesId == s.Id));
    }
}
