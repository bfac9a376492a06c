using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

internal static class SignOffApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var signOff = api.MapGroup("/job-cards/{number:int}/sign-off").WithTags("Sign-off");

        signOff.MapGet("/", (int number, Api run) => run.Read(new GetSignOff.Request(number), GetSignOff.Handle));
        signOff.MapPost("/", (int number, SignOffCard.Request body, Api run) =>
                run.Post(body with { Number = number }, SignOffCard.Handle))
            .RequireAuthorization(Policies.Measures);
    }
}
