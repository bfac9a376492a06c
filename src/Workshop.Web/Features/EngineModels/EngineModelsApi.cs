using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

internal static class EngineModelsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var models = api.MapGroup("/engine-models").WithTags("Engine models");
        var manages = models.MapGroup("").RequireAuthorization(Policies.Manages);

        models.MapGet("/", (Guid? after, int? take, Api run) =>
            run.Read(new ListEngineModels.Request(after, take), ListEngineModels.Handle));
        models.MapGet("/{id:guid}", (Guid id, int? version, Api run) =>
            run.Read(new GetEngineModel.Request(id, version), GetEngineModel.Handle));
        manages.MapPost("/", (AddEngineModel.Request body, Api run) =>
            run.Create(body, AddEngineModel.Handle, made => $"/api/v1/engine-models/{made.Id}"));
        manages.MapPost("/{id:guid}/versions", (Guid id, AddEngineModelVersion.Request body, Api run) =>
            run.Create(body with { Id = id }, AddEngineModelVersion.Handle, made => $"/api/v1/engine-models/{made.Id}?version={made.Version}"));
    }
}
