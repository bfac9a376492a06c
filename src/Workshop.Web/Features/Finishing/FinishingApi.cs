using Workshop.Web.Http;

namespace Workshop.Web.Features.Finishing;

internal static class FinishingApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var after = api.MapGroup("/job-cards/{number:int}/after-work").WithTags("After the work");
        var bench = after.MapGroup("").RequireAuthorization(Policies.Measures);

        after.MapGet("/", (int number, Api run) => run.Read(new GetAfterWork.Request(number), GetAfterWork.Handle));
        bench.MapPost("/balance", (int number, RecordBalance.Request body, Api run) => run.Post(body with { Number = number }, RecordBalance.Handle));
        bench.MapPost("/leak-check", (int number, RecordLeakCheck.Request body, Api run) => run.Post(body with { Number = number }, RecordLeakCheck.Handle));
        bench.MapPost("/test-ride", (int number, RecordTestRide.Request body, Api run) => run.Post(body with { Number = number }, RecordTestRide.Handle));
        bench.MapPost("/rechecks", (int number, RecordRecheck.Request body, Api run) => run.Post(body with { Number = number }, RecordRecheck.Handle));
        bench.MapPost("/reminder", (int number, RecordReminder.Request body, Api run) => run.Post(body with { Number = number }, RecordReminder.Handle));
        bench.MapPost("/counts", (int number, CountThings.Request body, Api run) => run.Post(body with { Number = number }, CountThings.Handle));
        bench.MapPost("/counts/explanations", (int number, ExplainCount.Request body, Api run) => run.Post(body with { Number = number }, ExplainCount.Handle));
    }
}
