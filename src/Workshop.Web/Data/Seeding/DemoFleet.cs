using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Web.Data.Seeding;

/// <summary>The invented motorcycles as their seed file holds them: how many of what, and how their clearances drift.</summary>
/// <param name="Seed">Of the simulation; the same seed gives the same fleet.</param>
/// <param name="Years">How far back the oldest history reaches.</param>
/// <param name="YearsInBooks">How long the workshop has worked with this service; what is older came over from paper.</param>
internal sealed record DemoFleet(
    string About,
    ulong Seed,
    int Years,
    int YearsInBooks,
    IReadOnlyList<DemoFleetEngine> Engines,
    IReadOnlyList<string> Owners,
    IReadOnlyList<string> OwnersWords,
    IReadOnlyList<string> SeenOnArrival);

/// <param name="FirstCheckKm">Where the first valve check falls.</param>
/// <param name="GapKm">Between one valve check and the next.</param>
internal sealed record DemoFleetEngine(
    string Maker,
    string Name,
    int Count,
    string Serial,
    IReadOnlyList<string> Models,
    DemoSpan FirstCheckKm,
    DemoSpan GapKm,
    DriftParameters Drift);

internal sealed record DemoSpan(double From, double To);

/// <summary>One motorcycle of the fleet, as it is to come about.</summary>
/// <param name="NowKm">What it has done on the seeding day.</param>
internal sealed record PlannedMotorcycle(
    int Index,
    DemoFleetEngine Fleet,
    SeedEngineModel EngineModel,
    string Registration,
    string Model,
    OdometerUnit Unit,
    LocalDate InServiceSince,
    string Owner,
    double NowKm)
{
    public string SerialNumber => $"{Fleet.Serial}-{41_200 + (Index * 37):00000}";
}

/// <summary>What somebody brings a motorcycle for.</summary>
internal enum VisitPurpose
{
    OilService,
    ValveCheck,
}

/// <param name="Sloppy">As some do: shims are changed without measuring them.</param>
/// <param name="FeelerSet">Serial number of the set that is used.</param>
internal sealed record PlannedVisit(
    PlannedMotorcycle Motorcycle, LocalDate Day, double Km, VisitPurpose Purpose, string FeelerSet, bool Sloppy)
{
    public Distance At => Distance.FromKilometres((decimal)Km);

    public int OdometerCount => Motorcycle.Unit.CountOf(At);
}
