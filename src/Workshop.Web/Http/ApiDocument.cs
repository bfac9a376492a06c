using Microsoft.OpenApi;
using NodaTime;
using Swashbuckle.AspNetCore.SwaggerGen;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Web.Http;

/// <summary>The OpenAPI document and the page that shows it; both are open to anybody, as the document says nothing secret.</summary>
internal static class ApiDocument
{
    public const string Name = "workshop.v1";

    public static void AddApiDocument(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.AddSwaggerGen(o =>
        {
            o.SwaggerDoc(Name, new OpenApiInfo
            {
                Title = "Workshop",
                Version = "v1",
                Description = "Intervals, bookings, kits, torque sheets, clearances, shims and drift of a motorcycle workshop. "
                    + "Limits, torques and intervals come from the engine maker's documents; follow those, local codes and licensed practice.",
            });
            o.CustomSchemaIds(SchemaName);
            o.SupportNonNullableReferenceTypes();
            MapPlain(o);
            o.AddSecurityDefinition("bearer", new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description = "The token that POST /api/v1/session answers.",
            });
            o.OperationFilter<KeyAndVersionHeaders>();
            o.OperationFilter<PlainTextBodies>();
        });
    }

    public static void UseApiDocument(this IApplicationBuilder app)
    {
        app.UseSwagger(o => o.RouteTemplate = "api/{documentName}.json");
        app.UseSwaggerUI(o =>
        {
            o.RoutePrefix = "api";
            o.SwaggerEndpoint($"/api/{Name}.json", "Workshop v1");
            o.DocumentTitle = "Workshop: API";
        });
    }

    // "BookVisit.Request" is BookVisitRequest: nested records are named by their use case.
    private static string SchemaName(Type type)
    {
        var own = type.Name.Split('`')[0];
        var name = type.DeclaringType is { } outer ? outer.Name + own : own;
        return type.IsGenericType ? name + string.Concat(type.GetGenericArguments().Select(SchemaName)) : name;
    }

    private static void MapPlain(SwaggerGenOptions o)
    {
        foreach (var measure in new[]
        {
            typeof(Clearance), typeof(ShimThickness), typeof(Distance), typeof(Torque), typeof(Temperature), typeof(LeverRatio),
        })
        {
            o.MapType(measure, () => new OpenApiSchema { Type = JsonSchemaType.Number });
        }

        MapText<ValveKey>(o, null, "1-intake-2");
        MapText<Instant>(o, "date-time", "2026-03-02T08:30:00Z");
        MapText<LocalDate>(o, "date", "2026-03-02");
        MapText<LocalTime>(o, "time", "08:30:00");
    }

    private static void MapText<T>(SwaggerGenOptions o, string? format, string example)
        where T : struct
    {
        OpenApiSchema Schema() => new() { Type = JsonSchemaType.String, Format = format, Examples = [example] };
        o.MapType<T>(Schema);
        o.MapType<T?>(Schema);
    }

    /// <summary>A body that is sent as text is text, whatever record the route makes of it.</summary>
    private sealed class PlainTextBodies : IOperationFilter
    {
        public void Apply(OpenApiOperation operation, OperationFilterContext context)
        {
            if (operation.RequestBody?.Content is not { } content)
            {
                return;
            }

            foreach (var type in content.Keys.Where(t => t.StartsWith("text/", StringComparison.Ordinal)).ToList())
            {
                content[type] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String } };
            }
        }
    }

    private sealed class KeyAndVersionHeaders : IOperationFilter
    {
        public void Apply(OpenApiOperation operation, OperationFilterContext context)
        {
            var header = context.ApiDescription.HttpMethod switch
            {
                "POST" => (Caller.KeyHeader, "A random value, new with every new write; send the same one when you send a write again."),
                "PUT" or "PATCH" or "DELETE" => ("If-Match", "The ETag of the version that was changed."),
                _ => (null, null),
            };
            if (header.Item1 is null)
            {
                return;
            }

            operation.Parameters ??= [];
            operation.Parameters.Add(new OpenApiParameter
            {
                Name = header.Item1,
                In = ParameterLocation.Header,
                Required = true,
                Description = header.Item2,
                Schema = new OpenApiSchema { Type = JsonSchemaType.String },
            });
        }
    }
}
