using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace Workshop.Web.Http;

/// <summary>The one way in which this service writes and reads JSON: answers, requests, specifications, seed files.</summary>
public static class WorkshopJson
{
    public static readonly JsonSerializerOptions Options = Apply(new JsonSerializerOptions(JsonSerializerDefaults.Web));

    /// <summary>For documents that must be complete, specifications and seed files: what a record asks for must be there.</summary>
    public static readonly JsonSerializerOptions Documents = new(Options)
    {
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
    };

    public static JsonSerializerOptions Apply(JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        options.Converters.Add(new InstantJson());
        options.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.ReadCommentHandling = JsonCommentHandling.Skip;
        return options;
    }
}
