using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

internal static class CautionsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var cautions = api.MapGroup("/job-cards/{number:int}/cautions").WithTags("Cautions");

        cautions.MapGet("/", (int number, Api run) => run.Read(new GetCautions.Request(number), GetCautions.Handle));
        cautions.MapPost("/", (int number, AcknowledgeCautions.Request body, Api run) =>
                run.Post(body with { Number = number }, AcknowledgeCautions.Handle))
            .RequireAuthorization(Policies.Measures);
        cautions.MapPost("/{code}/acknowledge", (int number, string code, Api run) =>
                run.Post(new AcknowledgeCautions.Request { Number = number, Codes = [code] }, AcknowledgeCautions.Handle))
            .RequireAuthorization(Policies.Measures);
    }
}
