using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

internal static class PeopleApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var people = api.MapGroup("/people").WithTags("People");
        var sees = people.MapGroup("").RequireAuthorization(Policies.Books);
        var manages = people.MapGroup("").RequireAuthorization(Policies.Manages);

        sees.MapGet("/", (Api run) => run.Read(new ListPeople.Request(), ListPeople.Handle));
        sees.MapGet("/{id:guid}", (Guid id, Api run) => run.Read(new GetPerson.Request(id), GetPerson.Handle));
        manages.MapPost("/", (AddPerson.Request body, Api run) => run.Create(
            body, AddPerson.Handle, made => new AddPerson.Shown(made.Id, made.UserName, made.Password), made => $"/api/v1/people/{made.Id}"));
        manages.MapPut("/{id:guid}", (Guid id, EditPerson.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, EditPerson.Handle));
        manages.MapPut("/{id:guid}/password", (Guid id, Api run) => run.Change(
            new ResetPassword.Request { Id = id, RowVersion = run.IfMatch }, ResetPassword.Handle,
            made => new ResetPassword.Shown(made.Id, made.UserName, made.Password, made.RowVersion)));
    }
}
