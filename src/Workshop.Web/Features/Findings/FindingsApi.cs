using Workshop.Web.Http;

namespace Workshop.Web.Features.Findings;

internal static class FindingsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var findings = api.MapGroup("").WithTags("Findings");
        var measures = findings.MapGroup("").RequireAuthorization(Policies.Measures);
        var books = findings.MapGroup("").RequireAuthorization(Policies.Books);

        findings.MapGet("/job-cards/{number:int}/findings", (int number, Api run) => run.Read(new ListFindings.Request(number), ListFindings.Handle));
        measures.MapPost("/job-cards/{number:int}/findings", (int number, RecordFinding.Request body, Api run) =>
            run.Create(body with { Number = number }, RecordFinding.Handle, made => $"/api/v1/findings/{made.Id}"));
        books.MapGet("/findings/waiting", (Api run) => run.Read(new ListWaiting.Request(), ListWaiting.Handle));
        findings.MapGet("/findings/{id:guid}", (Guid id, Api run) => run.Read(new GetFinding.Request(id), GetFinding.Handle));
        books.MapPost("/findings/{id:guid}/answers", (Guid id, AnswerFinding.Request body, Api run) =>
            run.Create(body with { Id = id }, AnswerFinding.Handle, _ => $"/api/v1/findings/{id}"));
        measures.MapPut("/findings/{id:guid}/done", (Guid id, Api run) =>
            run.Change(new FinishFinding.Request { Id = id, RowVersion = run.IfMatch }, FinishFinding.Handle));
        measures.MapPut("/findings/{id:guid}/withdrawal", (Guid id, WithdrawFinding.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, WithdrawFinding.Handle));
    }
}
