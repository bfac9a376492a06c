using System.Text;
using System.Text.Json;
using Microsoft.Net.Http.Headers;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>
/// The two ways in which worksheets are sent to the API: as they are (<c>text/csv</c>, with <c>dryRun</c> and <c>fileName</c>
/// in the address), or within JSON.
/// </summary>
internal static class WorksheetBody
{
    public const string Csv = "text/csv";
    public const string Json = "application/json";

    /// <exception cref="BadHttpRequestException">The body is of another type, or no JSON of the form asked for.</exception>
    public static async Task<ImportReadings.Request> Read(HttpRequest request, bool? dryRun, string? fileName)
    {
        var type = MediaTypeHeaderValue.TryParse(request.ContentType, out var parsed) ? parsed : null;
        if (type?.MediaType.Equals(Csv, StringComparison.OrdinalIgnoreCase) == true)
        {
            using var reader = new StreamReader(request.Body, Encoding.UTF8);
            var text = await reader.ReadToEndAsync(request.HttpContext.RequestAborted);
            return new ImportReadings.Request { Csv = text, FileName = fileName, DryRun = dryRun ?? false };
        }

        if (!request.HasJsonContentType())
        {
            throw new BadHttpRequestException($"The body is {request.ContentType ?? "of no stated type"}: {Csv} or {Json} is allowed.");
        }

        try
        {
            var body = await JsonSerializer.DeserializeAsync<ImportReadings.Request>(
                request.Body, WorkshopJson.Options, request.HttpContext.RequestAborted) ?? new ImportReadings.Request();
            return body with { DryRun = dryRun ?? body.DryRun, FileName = fileName ?? body.FileName };
        }
        catch (JsonException fault)
        {
            throw new BadHttpRequestException("The body is no JSON of the form asked for.", fault);
        }
    }
}
