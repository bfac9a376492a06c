namespace Workshop.Web.Tests.Bays;

/// <summary>Server-sent events as a client reads them.</summary>
internal sealed class EventStream : IDisposable
{
    private readonly HttpResponseMessage answer;
    private readonly StreamReader reader;

    private EventStream(HttpResponseMessage answer, Stream body)
    {
        this.answer = answer;
        reader = new StreamReader(body);
    }

    public string? ContentType => answer.Content.Headers.ContentType?.MediaType;

    public static async Task<EventStream> Open(HttpClient client, CancellationToken ct, string? lastEventId = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/bays/live");
        if (lastEventId is not null)
        {
            request.Headers.Add("Last-Event-ID", lastEventId);
        }

        var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, ct);
        answer.EnsureSuccessStatusCode();
        return new EventStream(answer, await answer.Content.ReadAsStreamAsync(ct));
    }

    /// <summary>The next event, waited for; nothing when the stream ends.</summary>
    public async Task<(string Id, string Name)?> Next(CancellationToken ct)
    {
        var (id, name) = ("", "");
        while (await reader.ReadLineAsync(ct) is { } line)
        {
            if (line.StartsWith("id: ", StringComparison.Ordinal))
            {
                id = line[4..];
            }
            else if (line.StartsWith("event: ", StringComparison.Ordinal))
            {
                name = line[7..];
            }
            else if (line.Length == 0 && name.Length > 0)
            {
                return (id, name);
            }
        }

        return null;
    }

    public void Dispose()
    {
        reader.Dispose();
        answer.Dispose();
    }
}
