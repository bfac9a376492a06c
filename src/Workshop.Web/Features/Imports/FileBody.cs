using System.Text;
using System.Text.Json;
using Microsoft.Net.Http.Headers;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>
/// The two ways in which a file is sent to the API: as it is (<c>text/csv</c>, with <c>dryRun</c> and <c>fileName</c> in the
/// address), or within JSON.
/// </summary>
internal sealed record FileBody(string? FileName, string? Csv, bool DryRun)
{
    public const string CsvType = "text/csv";
    public const string JsonType = "application/json";

    /// <exception cref="BadHttpRequestException">The body is of another type, or no JSON of the form asked for.</exception>
    public static async Task<FileBody> Read(HttpRequest request, bool? dryRun, string? fileName)
    {
        var type = MediaTypeHeaderValue.TryParse(request.ContentType, out var parsed) ? parsed : null;
        if (type?.MediaType.Equals(CsvType, StringComparison.OrdinalIgnoreCase) == true)
        {
            using var reader = new StreamReader(request.Body, Encoding.UTF8);
            return new FileBody(fileName, await reader.ReadToEndAsync(request.HttpContext.RequestAborted), dryRun ?? false);
        }

        if (!request.HasJsonContentType())
        {
            throw new BadHttpRequestException($"The body is {request.ContentType ?? "of no stated type"}: {CsvType} or {JsonType} is allowed.");
        }

        try
        {
            var body = await JsonSerializer.DeserializeAsync<FileBody>(
                request.Body, WorkshopJson.Options, request.HttpContext.RequestAborted) ?? new FileBody(null, null, false);
            return body with { DryRun = dryRun ?? body.DryRun, FileName = fileName ?? body.FileName };
        }
        catch (JsonException fault)
        {
            throw new BadHttpRequestException("The body is no JSON of the form asked for.", fault);
        }
    }
}
