using System.Globalization;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.TorqueSheets;

/// <summary>How a fastener's data are said on page and paper.</summary>
public static class FastenerWords
{
    /// <summary>What is done to the thread; always said, since the torque holds for that state only.</summary>
    public static string Spoken(this ThreadTreatment treatment) => treatment switch
    {
        ThreadTreatment.Dry => "dry",
        ThreadTreatment.Oiled => "oiled",
        ThreadTreatment.Locked => "locked",
        _ => throw new ArgumentOutOfRangeException(nameof(treatment), treatment, null),
    };

    /// <summary>What becomes of the old seal.</summary>
    public static string Spoken(this SealPolicy policy) => policy switch
    {
        SealPolicy.ReplaceAlways => "replace always",
        SealPolicy.InspectAndReuse => "inspect and reuse",
        SealPolicy.ReplaceIfDamaged => "replace if damaged",
        _ => throw new ArgumentOutOfRangeException(nameof(policy), policy, null),
    };

    /// <summary>Its kind, class and what it is turned into, as far as stated: "solid bolt, class 8.8, into light alloy".</summary>
    public static string Strength(this Fastener fastener)
    {
        ArgumentNullException.ThrowIfNull(fastener);
        var said = new[]
        {
            fastener.Form?.Spoken(),
            fastener.PropertyClass is { } name ? $"class {name}" : null,
            fastener.Into is { } into ? $"into {into.Material.Spoken()}" : null,
        }.OfType<string>().ToList();
        return said.Count == 0 ? "not stated" : string.Join(", ", said);
    }

    /// <summary>What kind of fastener it is.</summary>
    public static string Spoken(this FastenerForm form) => form switch
    {
        FastenerForm.SolidBolt => "solid bolt",
        FastenerForm.Nut => "nut on a stud",
        FastenerForm.HollowOrShouldered => "hollow or shouldered bolt",
        FastenerForm.Plug => "plug",
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, null),
    };

    /// <summary>What a thread is cut into.</summary>
    public static string Spoken(this ThreadMaterial material) => material switch
    {
        ThreadMaterial.Steel => "steel",
        ThreadMaterial.LightAlloy => "light alloy",
        ThreadMaterial.Plastic => "plastic",
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, null),
    };

    /// <summary>The maker's range of the final torque: "8 to 10 N.m"; nothing where none is stated.</summary>
    public static string? SpokenRange(this Fastener fastener)
    {
        ArgumentNullException.ThrowIfNull(fastener);
        return (fastener.TorqueLowest, fastener.TorqueHighest) is ({ } lowest, { } highest)
            ? string.Create(CultureInfo.InvariantCulture, $"{lowest.NewtonMetres:0.##} to {highest}")
            : null;
    }

    /// <summary>The angle stage: "30°", "30° ± 5°"; nothing where there is none.</summary>
    public static string? SpokenAngle(decimal? degrees, decimal? tolerance) => degrees is null
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"{degrees:0.#}°{(tolerance is { } more ? $" ± {more.ToString("0.#", CultureInfo.InvariantCulture)}°" : "")}");

    /// <summary>How the fastener stands.</summary>
    public static string Spoken(this TickState state) => state switch
    {
        TickState.NotTightened => "not tightened yet",
        TickState.Tightened => "tightened",
        TickState.TakenBack => "tick taken back",
        TickState.OpenedAgain => "opened again since it was tightened",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };
}
