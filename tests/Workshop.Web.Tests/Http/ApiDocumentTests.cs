using System.Net;
using System.Text.Json;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Http;

public sealed class ApiDocumentTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_committed_document_is_what_the_service_says()
    {
        var document = await app.Anonymous().GetStringAsync("/api/workshop.v1.json", Ct);

        AcceptedFile.Check("shared/openapi/workshop.v1.json", document.ReplaceLineEndings("\n").TrimEnd() + "\n");
    }

    [Fact]
    public async Task Every_operation_says_how_it_is_refused_and_every_post_wants_a_key()
    {
        using var document = JsonDocument.Parse(await app.Anonymous().GetStringAsync("/api/workshop.v1.json", Ct));

        foreach (var path in document.RootElement.GetProperty("paths").EnumerateObject().Where(p => p.Name != "/api/v1/session"))
        {
            foreach (var operation in path.Value.EnumerateObject())
            {
                var name = $"{operation.Name} {path.Name}";
                Assert.True(operation.Value.GetProperty("responses").TryGetProperty("409", out _), $"{name} says nothing of a conflict.");
                if (operation.NameEquals("post"))
                {
                    Assert.True(operation.Value.TryGetProperty("parameters", out var parameters)
                        && parameters.EnumerateArray().Any(p => p.GetProperty("name").GetString() == "Idempotency-Key"), name);
                }
            }
        }
    }

    [Fact]
    public async Task The_page_that_shows_the_document_is_open()
    {
        var page = await app.Anonymous().GetAsync("/api/index.html", Ct);

        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
    }

    [Fact]
    public async Task An_address_that_the_api_lacks_is_answered_with_problem_details()
    {
        var client = await app.As("manager");

        var answer = await client.GetAsync("/api/v1/nothing-here", Ct);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
    }
}
