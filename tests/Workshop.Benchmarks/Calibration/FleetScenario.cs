namespace Workshop.Benchmarks.Calibration;

/// <summary>How a simulated fleet is looked after.</summary>
/// <param name="Checks">Checks of each engine, 20,000 to 40,000 km apart; several: the engines take turns.</param>
/// <param name="Step">Step of the blades in mm.</param>
/// <param name="BetweenValves">Standard deviation of slopes from valve to valve, mm per 10,000 km.</param>
/// <param name="KnownShims">Whether what came out and went in was measured; else a change begins a new leg.</param>
/// <param name="VisitEffect">Standard deviation in mm of what all readings of a visit have in common, and no model knows of.</param>
internal sealed record FleetScenario(IReadOnlyList<int> Checks, double Step, double BetweenValves, bool KnownShims, double VisitEffect)
{
    private static readonly int[][] Alike = [[1], [2], [3], [5]];
    private static readonly int[] Mixed = [1, 2, 3, 5];

    public static IEnumerable<FleetScenario> All() =>
        from known in new[] { true, false }
        from effect in known ? new[] { 0, 0.004 } : [0.0]
        from step in new[] { 0.01, 0.05 }
        from between in new[] { 0.004, 0.008 }
        where effect == 0 || between == 0.008
        from checks in effect > 0 ? [Mixed] : Alike.Append(Mixed)
        select new FleetScenario(checks, step, between, known, effect);

    /// <summary>
    /// With one check each the parameters are told poorly and all valves of a fleet err together; more fleets must be looked at.
    /// </summary>
    public int SeedsFor(int seeds) => Checks is [1] ? 4 * seeds : seeds;
}
