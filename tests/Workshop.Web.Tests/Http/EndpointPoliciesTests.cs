using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Http;

/// <summary>
/// Every way in, with who may use it: a new endpoint shows up in the list beside this file, and its policy is reviewed there.
/// To accept a change, run the test with WORKSHOP_ACCEPT=1.
/// </summary>
public sealed class EndpointPoliciesTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string ListFile = "tests/Workshop.Web.Tests/Http/endpoints.txt";

    private static readonly string[] OpenToAll =
    [
        "/api/v1/session", "/health/live", "/health/ready", "/sign-in", "/error", "/calendar/{secret}.ics",
        "/records/{secret}", "/records/{secret}/photos/{id:guid}", "/records/{secret}/photos/{id:guid}/small",
    ];

    [Fact]
    public void Every_endpoint_stands_in_the_list_with_its_policy() =>
        AcceptedFile.Check(ListFile, string.Join('\n', Endpoints()) + "\n");

    [Fact]
    public void Nobody_who_is_not_signed_in_gets_further_than_sign_in_health_the_error_page_and_a_secret_link()
    {
        var open = Endpoints().Where(e => e.EndsWith(" anybody", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(open);
        Assert.All(open, e => Assert.Contains(e.Split(' ')[1], OpenToAll));
    }

    private List<string> Endpoints() =>
        [.. app.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Select(Describe).Distinct().Order(StringComparer.Ordinal)];

    private static string Describe(RouteEndpoint endpoint)
    {
        var methods = endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods;
        var verb = methods is { Count: > 0 } ? string.Join(',', methods.Order())
            : endpoint.Metadata.GetMetadata<PageActionDescriptor>() is not null ? "PAGE" : "ANY";
        var policies = endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>().Select(a => a.Policy ?? "signed-in").Distinct();
        var who = endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null ? "anybody" : string.Join("+", policies);
        var route = "/" + endpoint.RoutePattern.RawText!.Trim('/');
        return $"{verb} {route} {(who.Length == 0 ? "signed-in" : who)}";
    }
}
