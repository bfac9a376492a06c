using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Web.Features.EngineModels.Editing;

/// <summary>What a new engine model's draft begins with: nothing is stated, and everything is asked for before it is published.</summary>
internal static class EmptySpecification
{
    private static readonly Provenance Unnamed = new("", "");

    public static readonly EngineSpecification Document = new()
    {
        ValveTrain = ValveTrainKind.ShimUnderBucket,
        Layout = new EngineLayout("", [], "", [], TurningDirection.Clockwise, "", ""),
        Valves = [],
        Camshafts = [],
        MeasuringPositions = [],
        Limits = [],
        Cold = new ColdCondition(0, Temperature.FromCelsius(0), Temperature.FromCelsius(0), "", Unnamed),
        Accesses = [],
        Joints = [],
        Fasteners = [],
        ServiceItems = [],
        Provenance = Unnamed,
    };
}
