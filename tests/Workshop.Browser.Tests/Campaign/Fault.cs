namespace Workshop.Browser.Tests.Campaign;

/// <summary>What goes wrong while readings are entered.</summary>
public enum Fault
{
    NetworkCut,
    Reload,
    ReloadWithoutNetwork,
    ServiceKilled,
    PostgresKilled,
}

/// <summary>One run, drawn from its seed alone.</summary>
/// <param name="Valves">Which valves are read, in order, and with which blade, in hundredths of a millimetre; no blade twice.</param>
/// <param name="At">The reading during which it happens.</param>
/// <param name="AfterMs">How long after the tap.</param>
/// <param name="LastsMs">How long the network is away, or the service stays down.</param>
public sealed record RunPlan(int Seed, Fault Fault, IReadOnlyList<(string Valve, int Blade)> Valves, int At, int AfterMs, int LastsMs)
{
    private const int LongestAfterMs = 400;
    private const int LongestAwayMs = 3000;

    /// <param name="seed">The same seed is the same run.</param>
    /// <param name="valves">Of the engine.</param>
    public static RunPlan Draw(int seed, IReadOnlyList<string> valves)
    {
        var random = new Random(seed);
        var faults = Enum.GetValues<Fault>();
        var count = random.Next(4, 9);
        var blades = Enumerable.Range(5, 33).ToArray();
        random.Shuffle(blades);
        return new RunPlan(
            seed,
            faults[seed % faults.Length],
            [.. Enumerable.Range(0, count).Select(i => (valves[random.Next(valves.Count)], blades[i]))],
            random.Next(count),
            random.Next(LongestAfterMs),
            random.Next(LongestAwayMs));
    }
}

/// <summary>What became of the readings of one run.</summary>
/// <param name="Tapped">Blades that were tapped.</param>
/// <param name="Acknowledged">Of those, what the device said that it has.</param>
/// <param name="Stored">Rows of this run in the service.</param>
/// <param name="Lost">Acknowledged, but in no row.</param>
/// <param name="Duplicates">Rows beyond one for a tap.</param>
/// <param name="Wrong">Rows that nobody tapped.</param>
/// <param name="Conflicts">Readings that were shown to a person to decide.</param>
/// <param name="OutOfOrder">Readings of one valve that are stored in another order than tapped.</param>
public sealed record RunResult(
    RunPlan Plan, int Tapped, int Acknowledged, int Stored, int Lost, int Duplicates, int Wrong, int Conflicts, int OutOfOrder, TimeSpan Took)
{
    public bool IsClean => Lost == 0 && Duplicates == 0 && Wrong == 0 && Conflicts == 0 && OutOfOrder == 0;

    public override string ToString() =>
        $"seed {Plan.Seed}, {Plan.Fault} {Plan.AfterMs} ms after tap {Plan.At + 1} for {Plan.LastsMs} ms: {Tapped} tapped, {Acknowledged} acknowledged, "
        + $"{Stored} stored, {Lost} lost, {Duplicates} twice, {Wrong} wrong, {Conflicts} conflicts, {OutOfOrder} out of order";
}
