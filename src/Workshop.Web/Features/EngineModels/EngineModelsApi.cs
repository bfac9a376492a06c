using Workshop.Web.Features.EngineModels.Editing;
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
        models.MapGet("/{id:guid}/intervals", (Guid id, Api run) =>
            run.Read(new ListIntervals.Request(id), ListIntervals.Handle));
        manages.MapPost("/", (AddEngineModel.Request body, Api run) =>
            run.Create(body, AddEngineModel.Handle, made => $"/api/v1/engine-models/{made.Id}"));
        manages.MapPost("/{id:guid}/versions", (Guid id, AddEngineModelVersion.Request body, Api run) =>
            run.Create(body with { Id = id }, AddEngineModelVersion.Handle, made => $"/api/v1/engine-models/{made.Id}?version={made.Version}"));

        models.MapGet("/{id:guid}/versions", (Guid id, Api run) =>
            run.Read(new ListVersions.Request(id), ListVersions.Handle));
        models.MapGet("/{id:guid}/versions/{version:int}/differences", (Guid id, int version, int? from, Api run) =>
            run.Read(new GetDifferences.Request(id, version, from), GetDifferences.Handle));
        models.MapGet("/{id:guid}/torques", (Guid id, int? version, Api run) =>
            run.Read(new ListTorques.Request(id, version), ListTorques.Handle));
        api.MapGet("/thread-torque", (
                string? thread, string? propertyClass, string? form, string? treatment, string? into, decimal? engagementMm,
                decimal? shearStrengthMpa, decimal? torqueNm, Api run) =>
            run.Read(
                new CheckThread.Request
                {
                    Thread = thread, PropertyClass = propertyClass, Form = form, Treatment = treatment, Into = into,
                    EngagementMm = engagementMm, ShearStrengthMpa = shearStrengthMpa, TorqueNm = torqueNm,
                },
                CheckThread.Handle)).WithTags("Engine models");
        manages.MapPut("/{id:guid}/second-person/{fastenerCode}", (Guid id, string fastenerCode, Api run) =>
            run.Change(new SetSecondPerson.Request(id, fastenerCode, true), SetSecondPerson.Handle));
        manages.MapDelete("/{id:guid}/second-person/{fastenerCode}", (Guid id, string fastenerCode, Api run) =>
            run.Change(new SetSecondPerson.Request(id, fastenerCode, false), SetSecondPerson.Handle));
        manages.MapPut("/{id:guid}/as-left-second-person", (Guid id, Api run) =>
            run.Change(new SetAsLeftSecondPerson.Request(id, true), SetAsLeftSecondPerson.Handle));
        manages.MapDelete("/{id:guid}/as-left-second-person", (Guid id, Api run) =>
            run.Change(new SetAsLeftSecondPerson.Request(id, false), SetAsLeftSecondPerson.Handle));
        manages.MapPut("/as-left-second-person", (Api run) =>
            run.Change(new SetAsLeftSecondPerson.Request(null, true), SetAsLeftSecondPerson.Handle));
        manages.MapDelete("/as-left-second-person", (Api run) =>
            run.Change(new SetAsLeftSecondPerson.Request(null, false), SetAsLeftSecondPerson.Handle));
        MapDrafts(manages);
    }

    private static void MapDrafts(RouteGroupBuilder manages)
    {
        manages.MapPost("/drafts", (StartEngineModel.Request body, Api run) =>
            run.Create(body, StartEngineModel.Handle, made => $"/api/v1/engine-models/{made.Id}/draft"));
        manages.MapGet("/{id:guid}/draft", (Guid id, Api run) =>
            run.Read(new GetDraft.Request(id), GetDraft.Handle));
        manages.MapPut("/{id:guid}/draft/{section}", (Guid id, string section, SaveSection.Request body, Api run) =>
            run.Change(body with { Id = id, Section = section, RowVersion = run.IfMatch }, SaveSection.Handle));
        manages.MapPut("/{id:guid}/draft/{section}/{code}", (Guid id, string section, string code, SaveSection.Request body, Api run) =>
            run.Change(body with { Id = id, Section = section, Code = code, RowVersion = run.IfMatch }, SaveSection.Handle));
        manages.MapDelete("/{id:guid}/draft/{section}/{code}", (Guid id, string section, string code, Api run) =>
            run.Change(new RemoveEntry.Request(id, section, code, run.IfMatch), RemoveEntry.Handle));
        manages.MapPost("/{id:guid}/draft/checks", (Guid id, MarkChecked.Request body, Api run) =>
            run.Post(body with { Id = id, RowVersion = run.IfMatch }, MarkChecked.Handle));
        manages.MapPost("/{id:guid}/draft/rebase", (Guid id, RebaseDraft.Request body, Api run) =>
            run.Post(body with { Id = id, RowVersion = run.IfMatch }, RebaseDraft.Handle));
        manages.MapPost("/{id:guid}/draft/publish", (Guid id, PublishDraft.Request body, Api run) =>
            run.Create(body with { Id = id, RowVersion = run.IfMatch }, PublishDraft.Handle, made => $"/api/v1/engine-models/{made.Id}?version={made.Version}"));
        manages.MapDelete("/{id:guid}/draft", (Guid id, Api run) =>
            run.Change(new DiscardDraft.Request(id, run.IfMatch), DiscardDraft.Handle));
    }
}
