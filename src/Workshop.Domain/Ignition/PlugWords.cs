using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Ignition;

/// <summary>How spark plugs are said.</summary>
public static class PlugWords
{
    public static string Spoken(this PlugCondition condition) => condition switch
    {
        PlugCondition.Normal => "normal",
        PlugCondition.Sooty => "sooty",
        PlugCondition.Oily => "oily",
        PlugCondition.WetWithFuel => "wet with fuel",
        PlugCondition.Overheated => "white, overheated",
        PlugCondition.WornElectrode => "worn electrode",
        PlugCondition.CrackedInsulator => "cracked insulator",
        PlugCondition.Deposits => "deposits",
        _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, null),
    };

    public static string Spoken(this GapGauge gauge) => gauge switch
    {
        GapGauge.Blade => "blade",
        GapGauge.Wire => "wire",
        _ => throw new ArgumentOutOfRangeException(nameof(gauge), gauge, null),
    };

    /// <summary>What a condition likely tells of its cylinder (common practice, no source); empty where it tells nothing.</summary>
    public static string LikelyMeans(this PlugCondition condition) => condition switch
    {
        PlugCondition.Sooty => "likely a rich mixture, short trips or a plug that stays too cold",
        PlugCondition.Oily => "likely oil past rings or valve guides; compression tells more",
        PlugCondition.WetWithFuel => "likely no spark, or flooded",
        PlugCondition.Overheated => "likely a lean mixture, early ignition or a plug that gets too hot",
        PlugCondition.Deposits => "likely burnt oil or additives",
        _ => "",
    };

    /// <summary>"Plug of cylinder 1"; "Plug 2 of cylinder 1" where a cylinder has two.</summary>
    public static string SpokenIn(this PlugKey plug, EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return specification.SparkPlugs is { PerCylinder: > 1 } ? $"Plug {plug.Plug} of cylinder {plug.Cylinder}" : $"Plug of cylinder {plug.Cylinder}";
    }
}
