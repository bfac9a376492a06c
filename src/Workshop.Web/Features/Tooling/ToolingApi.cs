using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

internal static class ToolingApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var instruments = api.MapGroup("/instruments").WithTags("Tooling");
        var measures = instruments.MapGroup("").RequireAuthorization(Policies.Measures);
        var manages = instruments.MapGroup("").RequireAuthorization(Policies.Manages);
        instruments.MapGet("/", (string? after, int? take, string? kind, Api run) =>
            run.Read(new ListInstruments.Request(after, take, kind), ListInstruments.Handle));
        instruments.MapGet("/{id:guid}", (Guid id, Api run) => run.Read(new GetInstrument.Request(id), GetInstrument.Handle));
        manages.MapPost("/", (AddInstrument.Request body, Api run) =>
            run.Create(body, AddInstrument.Handle, made => $"/api/v1/instruments/{made.Id}"));
        manages.MapPut("/{id:guid}", (Guid id, EditInstrument.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, EditInstrument.Handle));
        manages.MapPost("/{id:guid}/calibrations", (Guid id, RecordCalibration.Request body, Api run) =>
            run.Create(body with { Id = id, RowVersion = run.IfMatch }, RecordCalibration.Handle, _ => $"/api/v1/instruments/{id}"));
        measures.MapPost("/{id:guid}/events", (Guid id, RecordInstrumentEvent.Request body, Api run) =>
            run.Create(body with { Id = id, RowVersion = run.IfMatch }, RecordInstrumentEvent.Handle, _ => $"/api/v1/instruments/{id}"));
        manages.MapPost("/{id:guid}/release", (Guid id, ReleaseInstrument.Request body, Api run) =>
            run.Post(body with { Id = id, RowVersion = run.IfMatch }, ReleaseInstrument.Handle));

        var adapters = api.MapGroup("/wrench-adapters").WithTags("Tooling");
        var managesAdapters = adapters.MapGroup("").RequireAuthorization(Policies.Manages);
        adapters.MapGet("/", (Api run) => run.Read(new ListAdapters.Request(), ListAdapters.Handle));
        adapters.MapGet("/{id:guid}", (Guid id, Api run) => run.Read(new ListAdapters.Request(id), ListAdapters.HandleOne));
        managesAdapters.MapPost("/", (AddAdapter.Request body, Api run) =>
            run.Create(body, AddAdapter.Handle, made => $"/api/v1/wrench-adapters/{made.Id}"));
        managesAdapters.MapPut("/{id:guid}", (Guid id, EditAdapter.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, EditAdapter.Handle));

        api.MapGet("/special-tools", (Api run) =>
            run.Read(new ListSpecialTools.Request(), ListSpecialTools.Handle)).WithTags("Tooling");
    }
}
