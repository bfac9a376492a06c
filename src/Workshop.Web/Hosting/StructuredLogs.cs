using System.Globalization;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Serilog;
using Serilog.AspNetCore;
using Serilog.Events;
using Serilog.Extensions.Logging;
using Serilog.Formatting.Compact;

namespace Workshop.Web.Hosting;

/// <summary>
/// One line a request, with the id that the error page shows. People's words stay out of the log: paths and ids only. At a
/// terminal plain lines; with <c>Workshop:LogFormat=json</c> one JSON object a line.
/// </summary>
internal static class StructuredLogs
{
    /// <summary>Bytes of a request; a batch of old worksheets fits many times.</summary>
    public const long LargestRequest = 5_000_000;

    public static Action<LoggerConfiguration> Configure(IConfiguration configuration) => logs =>
    {
        logs.MinimumLevel.Is(configuration.GetValue("Workshop:LogLevel", LogEventLevel.Information))
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .MinimumLevel.Override("Microsoft.Hosting.Lifetime", configuration.GetValue("Workshop:LogLevel", LogEventLevel.Information))
            .MinimumLevel.Override("System", LogEventLevel.Warning)
            // It warns that keys are readable to who can read the database; that is decided, and said in DEVELOPERS.md.
            .MinimumLevel.Override("Microsoft.AspNetCore.DataProtection", LogEventLevel.Error)
            .Enrich.FromLogContext();
        if (configuration["Workshop:LogFormat"] == "json")
        {
            logs.WriteTo.Console(new RenderedCompactJsonFormatter());
        }
        else
        {
            logs.WriteTo.Console(
                outputTemplate: "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj} {RequestId}{NewLine}{Exception}",
                formatProvider: CultureInfo.InvariantCulture);
        }
    };

    /// <summary>For what happens before the service is built.</summary>
    public static Microsoft.Extensions.Logging.ILogger AtStart() =>
        new SerilogLoggerFactory(
            new LoggerConfiguration().WriteTo.Console(formatProvider: CultureInfo.InvariantCulture).CreateLogger())
        .CreateLogger("Workshop.Start");

    public static void Limit(KestrelServerOptions server)
    {
        server.AddServerHeader = false;
        server.Limits.MaxRequestBodySize = LargestRequest;
    }

    public static void Describe(RequestLoggingOptions options)
    {
        options.MessageTemplate = "{RequestMethod} {RequestPath} answered {StatusCode} in {Elapsed:0.0} ms";
        options.EnrichDiagnosticContext = (context, http) => context.Set("RequestId", http.TraceIdentifier);
        // The address of a link that leads in without a sign-in is its secret.
        options.GetMessageTemplateProperties = (http, path, elapsed, status) =>
        [
            new LogEventProperty("RequestMethod", new ScalarValue(http.Request.Method)),
            new LogEventProperty("RequestPath", new ScalarValue(
                http.Request.Path.StartsWithSegments("/calendar") ? "/calendar/(secret)"
                : http.Request.Path.StartsWithSegments("/records") ? "/records/(secret)"
                : path)),
            new LogEventProperty("StatusCode", new ScalarValue(status)),
            new LogEventProperty("Elapsed", new ScalarValue(elapsed)),
        ];
        options.GetLevel = (http, _, fault) =>
            fault is not null || http.Response.StatusCode >= StatusCodes.Status500InternalServerError ? LogEventLevel.Error
            : http.Request.Path.StartsWithSegments("/health") || http.Request.Path.StartsWithSegments("/assets") ? LogEventLevel.Debug
            : LogEventLevel.Information;
    }
}
