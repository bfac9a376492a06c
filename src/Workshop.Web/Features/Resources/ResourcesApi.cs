using NodaTime;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

internal static class ResourcesApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var resources = api.MapGroup("/resources").WithTags("Resources");
        var managesResources = resources.MapGroup("").RequireAuthorization(Policies.Manages);
        resources.MapGet("/", (string? kind, bool? retired, Api run) =>
            run.Read(new ListResources.Request(kind, retired ?? false), ListResources.Handle));
        resources.MapGet("/{id:guid}", (Guid id, Api run) => run.Read(new GetResource.Request(id), GetResource.Handle));
        managesResources.MapPost("/", (AddResource.Request body, Api run) =>
            run.Create(body, AddResource.Handle, made => $"/api/v1/resources/{made.Id}"));
        managesResources.MapPut("/{id:guid}", (Guid id, EditResource.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, EditResource.Handle));
        managesResources.MapPut("/{id:guid}/hours", (Guid id, SetWorkingHours.Request body, Api run) =>
            run.Change(body with { ResourceId = id, RowVersion = run.IfMatch }, SetWorkingHours.Handle));
        managesResources.MapPost("/{id:guid}/absences", (Guid id, AddAbsence.Request body, Api run) =>
            run.Create(body with { ResourceId = id }, AddAbsence.Handle, _ => $"/api/v1/resources/{id}"));
        managesResources.MapPut("/{id:guid}/absences/{absenceId:guid}/withdrawal", (Guid id, Guid absenceId, Api run) =>
            run.Change(new WithdrawAbsence.Request { ResourceId = id, AbsenceId = absenceId, RowVersion = run.IfMatch }, WithdrawAbsence.Handle));

        var workshop = api.MapGroup("/workshop").WithTags("Workshop");
        var managesWorkshop = workshop.MapGroup("").RequireAuthorization(Policies.Manages);
        workshop.MapGet("/", (Api run) => run.Read(new GetWorkshop.Request(), GetWorkshop.Handle));
        managesWorkshop.MapPut("/", (EditWorkshop.Request body, Api run) =>
            run.Change(body with { RowVersion = run.IfMatch }, EditWorkshop.Handle));
        managesWorkshop.MapPut("/opening-hours", (SetOpeningHours.Request body, Api run) =>
            run.Change(body with { RowVersion = run.IfMatch }, SetOpeningHours.Handle));
        managesWorkshop.MapPost("/holidays", (AddHolidays.Request body, Api run) => run.Post(body, AddHolidays.Handle));
        managesWorkshop.MapDelete("/holidays/{day}", (string day, Api run) =>
            run.Change(new RemoveHoliday.Request(Days.TryRead(day, out var read) ? read : (LocalDate?)null, run.IfMatch), RemoveHoliday.Handle));
    }
}
