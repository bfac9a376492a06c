using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bays;

/// <summary>
/// The service worker of the bay screen. It stands at the root, since a worker serves what lies below its own address, and its
/// first line names the files of the screen with their version: another file is another worker, which the browser then takes.
/// </summary>
internal static class BayWorker
{
    private static readonly string[] Files =
    [
        "/assets/workshop.css", "/assets/mark.svg", "/assets/bay/bay.css", "/assets/bay/bay.js", "/assets/bay/store.js", "/assets/bay/queue.js",
        "/assets/bay/measure.js", "/assets/bay/pad.js", "/assets/bay/taps.js", "/assets/bay/valves.js", "/assets/bay/setup.js", "/assets/bay/elements.js",
        "/assets/bay/panel.js", "/assets/bay/offline.js", "/assets/bay/fields.js", "/assets/bay/counts.js", "/bay.webmanifest",
    ];

    public static void Map(IEndpointRouteBuilder app) => app.MapGet(
        "/bay-worker.js",
        async (IWebHostEnvironment environment, IFileVersionProvider versions, CancellationToken ct) =>
        {
            // Modules name one another without a version, so both addresses are kept.
            var files = Files.Concat(Files.Select(f => versions.AddFileVersionToPath("", f))).Distinct().ToArray();
            var script = await ReadAll(environment, "/assets/bay/worker.js", ct);
            var version = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', files) + script)))[..16];
            var shell = JsonSerializer.Serialize(new { version, files }, WorkshopJson.Options);
            return TypedResults.Text($"const shell = {shell};\n{script}", "text/javascript", Encoding.UTF8);
        })
        .RequireAuthorization(Policies.Reads).ExcludeFromDescription();

    private static async Task<string> ReadAll(IWebHostEnvironment environment, string path, CancellationToken ct)
    {
        await using var stream = environment.WebRootFileProvider.GetFileInfo(path).CreateReadStream();
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync(ct);
    }
}
