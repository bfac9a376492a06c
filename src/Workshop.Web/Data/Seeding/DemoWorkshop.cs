using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Stores;
using Workshop.Domain.Tooling;

namespace Workshop.Web.Data.Seeding;

/// <summary>An engine model as a seed file holds it: the specification in its one form, wrapped with whose it is.</summary>
internal sealed record SeedEngineModel(string Maker, string Name, bool Invented, EngineSpecification Specification);

/// <summary>The invented workshop as its seed file holds it.</summary>
/// <param name="About">Says that it is invented, to whoever opens the file.</param>
/// <param name="DriftThreshold">Its manager waits for even odds: on four cylinders some valve always stands near a limit.</param>
internal sealed record DemoWorkshop(
    string About,
    string Name,
    string TimeZone,
    string Phone,
    double DriftThreshold,
    IReadOnlyList<DemoHours> OpeningHours,
    IReadOnlyList<DemoHoliday> Holidays,
    IReadOnlyList<DemoResource> Bays,
    IReadOnlyList<string> ParkingPlaces,
    IReadOnlyList<DemoResource> SpecialTools,
    IReadOnlyList<DemoPerson> People,
    IReadOnlyList<string> StoragePlaces,
    IReadOnlyList<DemoPart> Parts,
    IReadOnlyList<DemoShimBox> ShimBoxes,
    IReadOnlyList<DemoPackage> Packages,
    IReadOnlyList<DemoLot> Lots,
    IReadOnlyList<DemoCount> Counts,
