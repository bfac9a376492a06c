using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Drift;

/// <summary>
/// What the drift model is made of, in mm and in mm per 10,000 km: y*(v,g,k) = a(v,g) + b(v) x(v,k) + e, where
/// b ~ N(slope of the side + c, between valves^2), c ~ N(0, between engines^2) is shared by the valves of one engine,
/// a ~ N(set-to, new or adjusted^2), e ~ N(0, reading^2).
/// </summary>
/// <param name="IntakeSlope">Mean change of an intake valve's clearance; negative where it closes up.</param>
/// <param name="ExhaustSlope">Mean change of an exhaust valve's clearance.</param>
/// <param name="BetweenEngines">Standard deviation of slopes from engine to engine: oil, rider, climate.</param>
/// <param name="BetweenValves">Standard deviation of slopes from valve to valve of one engine.</param>
/// <param name="New">Standard deviation of the levels of a new engine about set-to.</param>
/// <param name="Adjusted">Standard deviation of the level that a turned screw is left at, about set-to.</param>
/// <param name="Reading">Standard deviation of one reading: hand, blade, temperature.</param>
public sealed record DriftParameters(
    double IntakeSlope,
    double ExhaustSlope,
    double BetweenEngines,
    double BetweenValves,
    double New,
    double Adjusted,
    double Reading)
{
    /// <summary>The mean slope of a side.</summary>
    public double SlopeOf(Side side) => side == Side.Intake ? IntakeSlope : ExhaustSlope;
}
