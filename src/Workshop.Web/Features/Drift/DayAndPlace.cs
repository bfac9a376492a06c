using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Web.Features.Drift;

/// <summary>When and where something is expected, for a cell of a list; an estimate, so to the month and to the hundred.</summary>
/// <param name="On">The day by the odometer's own rate; absent where it does not get there in twenty years.</param>
/// <param name="At">The distance; absent where not within reach.</param>
/// <param name="Unit">The unit of it.</param>
public sealed record DayAndPlace(LocalDate? On, Distance? At, OdometerUnit Unit);
