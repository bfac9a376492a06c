using System.Net.Http.Json;
using Xunit;

namespace Workshop.Tests.Hosting;

/// <summary>Changes of rows as programs make them: read, and sent with the version that was read.</summary>
public static class Versioned
{
    public static async Task<string> Tag(this HttpClient client, string address) =>
        (await client.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken)).Headers.ETag!.Tag;

    public static Task<HttpResponseMessage> Put(this HttpClient client, string address, object body, string? tag) =>
        client.Send(HttpMethod.Put, address, body, tag);

    /// <summary>Reads <paramref name="read"/> for its version, or the address itself, then puts.</summary>
    public static async Task<HttpResponseMessage> Change(this HttpClient client, string address, object body, string? read = null) =>
        await client.Put(address, body, await client.Tag(read ?? address));

    public static async Task<HttpResponseMessage> Send(this HttpClient client, HttpMethod method, string address, object? body, string? tag)
    {
        using var request = new HttpRequestMessage(method, address) { Content = body is null ? null : JsonContent.Create(body) };
        if (tag is not null)
        {
            request.Headers.TryAddWithoutValidation("If-Match", tag);
        }

        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
