using System.Text.Json;
using System.Text.Json.Serialization;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Tests.EngineModels;

/// <summary>The invented engine models of seed/demo, read as strictly as the service reads them.</summary>
internal static class SeedFile
{
    private static readonly JsonSerializerOptions Strict = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        NumberHandling = JsonNumberHandling.Strict,
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
    };

    public static string Folder { get; } = Path.Combine(CheckValues.RepositoryRoot, "seed", "demo");

    public static SeedEngineModel VTwin { get; } = Read("v-twin-finger-followers");

    public static SeedEngineModel Four { get; } = Read("in-line-four-buckets");

    public static SeedEngineModel Single { get; } = Read("single-screw-and-locknut");

    public static IReadOnlyList<SeedEngineModel> All { get; } = [VTwin, Four, Single];

    public static EngineSpecification Parse(string json) => JsonSerializer.Deserialize<EngineSpecification>(json, Strict)!;

    public static string Write(EngineSpecification specification) => JsonSerializer.Serialize(specification, Strict);

    private static SeedEngineModel Read(string name) => JsonSerializer.Deserialize<SeedEngineModel>(
        File.ReadAllText(Path.Combine(Folder, "engine-models", $"{name}.json")), Strict)!;
}

internal sealed record SeedEngineModel(string Maker, string Name, bool Invented, EngineSpecification Specification)
{
    public override string ToString() => Name;
}
