using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

internal static class GaugesApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var studies = api.MapGroup("/gauge-studies").WithTags("Tooling");
        var bench = studies.MapGroup("").RequireAuthorization(Policies.Measures);

        studies.MapGet("/", (string? after, int? take, Api run) => run.Read(new ListGaugeTrials.Request(after, take), ListGaugeTrials.Handle));
        studies.MapGet("/{id:guid}", (Guid id, string? interaction, Api run) => run.Read(new GetGaugeTrial.Request(id, interaction), GetGaugeTrial.Handle));
        bench.MapPost("/", (StartGaugeTrial.Request body, Api run) =>
            run.Create(body, StartGaugeTrial.Handle, made => $"/api/v1/gauge-studies/{made.Id}"));
        bench.MapPost("/{id:guid}/readings", (Guid id, RecordGaugeReading.Request body, Api run) =>
            run.Post(body with { Id = id }, RecordGaugeReading.Handle));
        bench.MapPost("/{id:guid}/giving-up", (Guid id, Api run) => run.Post(new GiveUpGaugeTrial.Request { Id = id }, GiveUpGaugeTrial.Handle));

        var sets = api.MapGroup("/instruments/{id:guid}/blades").WithTags("Tooling");
        sets.MapGet("/", (Guid id, Api run) => run.Read(new GetBlades.Request(id), GetBlades.Handle));
        sets.MapPost("/", (Guid id, AddBlade.Request body, Api run) => run.Post(body with { InstrumentId = id }, AddBlade.Handle))
            .RequireAuthorization(Policies.Measures);
        api.MapPost("/blades/{id:guid}/checks", (Guid id, CheckBlade.Request body, Api run) => run.Post(body with { BladeId = id }, CheckBlade.Handle))
            .RequireAuthorization(Policies.Measures).WithTags("Tooling");
    }
}
