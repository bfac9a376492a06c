using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Diagnostics;
using Workshop.Domain.Outcomes;

namespace Workshop.Web.Http;

/// <summary>
/// What the API answers where no use case was reached: an address or a body that cannot be read, an address that does not exist, a fault
/// of ours. The framework's own sentences name types of this program; callers are told the field, the value and what is allowed.
/// </summary>
internal static partial class ApiFaults
{
    private const int LongestShown = 60;

    /// <summary>A body that is no JSON of the form asked for is the caller's fault and names the place; all else is ours.</summary>
    public static void UseApiFaults(this IApplicationBuilder app) => app.UseWhen(
        http => SessionAuthentication.IsApi(http.Request),
        api => api
            .UseExceptionHandler(new ExceptionHandlerOptions
            {
                SuppressDiagnosticsCallback = context => context.Exception is BadHttpRequestException,
                ExceptionHandler = async http =>
                {
                    var feature = http.Features.Get<IExceptionHandlerFeature>();
                    var answer = feature?.Error is BadHttpRequestException bad
                        ? ProblemAnswers.Of(Problem.Malformed([await Explain(bad, feature.Endpoint, http)]), http)
                        : TypedResults.Problem(
                            statusCode: StatusCodes.Status500InternalServerError,
                            detail: "Something went wrong on our side. Nothing is known to have been written; name the request id to whoever looks after the service.",
                            extensions: new Dictionary<string, object?> { ["code"] = "fault", ["requestId"] = http.TraceIdentifier });
                    await answer.ExecuteAsync(http);
                },
            })
            .Use((http, next) =>
            {
                if (http.Request.HasJsonContentType())
                {
                    // So that the value at fault can be read again.
                    http.Request.EnableBuffering();
                }

                return next(http);
            }));

    /// <summary>A status that nobody gave a reason for: an address or a method that the API lacks, too many requests.</summary>
    public static Task SayStatus(HttpContext http)
    {
        var status = http.Response.StatusCode;
        var (code, sentence) = status switch
        {
            StatusCodes.Status404NotFound => ("no-such-address", $"{http.Request.Path} is no address of the API; /api/{ApiDocument.Name}.json lists those that there are."),
            StatusCodes.Status405MethodNotAllowed => ("no-such-method",
                $"{http.Request.Method} is not known at {http.Request.Path}{(http.Response.Headers.Allow is [{ } allow, ..] ? $": {allow} is allowed" : "")}."),
            StatusCodes.Status415UnsupportedMediaType => ("no-json", "The body is not said to be JSON: send it with Content-Type: application/json."),
            StatusCodes.Status429TooManyRequests => ("too-many-requests", "Too many requests came at once; ask again in a minute."),
            _ => ("refused", $"The request was refused with status {status.ToString(CultureInfo.InvariantCulture)}."),
        };
        return TypedResults.Problem(
            statusCode: status, detail: sentence,
            extensions: new Dictionary<string, object?> { ["code"] = code, ["requestId"] = http.TraceIdentifier }).ExecuteAsync(http);
    }

    private static async Task<FieldFault> Explain(BadHttpRequestException fault, Endpoint? endpoint, HttpContext http)
    {
        if (fault.InnerException is JsonException json)
        {
            return OfBody(json, await ValueAt(json.Path, http.Request));
        }

        if (Unreadable().Match(fault.Message) is { Success: true } unreadable)
        {
            var (name, value) = (unreadable.Groups["name"].Value, unreadable.Groups["value"].Value);
            return new FieldFault(name, TypeOf(endpoint, name) is { } type ? Allowed.Sentence(name, value, type) : $"{name} is \"{value}\", which cannot be read.");
        }

        if (Missing().Match(fault.Message) is { Success: true } missing && missing.Groups["name"].Value is var absent && TypeOf(endpoint, absent) is { } wanted)
        {
            return absent == "body"
                ? new FieldFault("body", "The body is missing: send the fields as JSON.")
                : new FieldFault(absent, $"{absent} is missing: {Allowed.Of(wanted)} is wanted.");
        }

        return fault.StatusCode == StatusCodes.Status415UnsupportedMediaType || fault.Message.Contains("media type", StringComparison.Ordinal)
            ? new FieldFault("body", "The body is not said to be JSON: send it with Content-Type: application/json.")
            : new FieldFault("request", fault.Message);
    }

    private static FieldFault OfBody(JsonException json, string? value)
    {
        var field = json.Path is { Length: > 2 } path ? path[2..] : "body";
        var where = json.LineNumber is { } line
            ? string.Create(CultureInfo.InvariantCulture, $" (line {line + 1}, byte {json.BytePositionInLine + 1})")
            : "";
        var said = json.Message;
        if (Unmapped().Match(said) is { Success: true } unmapped)
        {
            var name = unmapped.Groups["name"].Value;
            return new FieldFault(field, $"{field}{where}: there is no field {name}; {FieldsOf(unmapped.Groups["type"].Value)} is allowed.");
        }

        if (OtherType().Match(said) is { Success: true } other && Resolve(other.Groups["type"].Value) is { } type)
        {
            return new FieldFault(field, $"{field}{where} is {value ?? "of another kind"}: {Allowed.Of(type, inJson: true)} is allowed.");
        }

        // Our own converters say what is allowed; the reader of the framework says where it stopped, which stands before already.
        var isOurs = json.InnerException is null && !said.Contains("could not be converted", StringComparison.Ordinal) && !said.StartsWith('\'');
        return new FieldFault(field, isOurs
            ? $"{field}{where}: {said.Split(" Path:")[0].Split(" LineNumber:")[0]}"
            : $"{field}{where}: this is no JSON that can be read; look at the sign there and the one before it.");
    }

    /// <summary>What stands at the place of the fault, as it was sent; nothing where the body is no JSON.</summary>
    private static async Task<string?> ValueAt(string? path, HttpRequest request)
    {
        if (path is null || !request.Body.CanSeek)
        {
            return null;
        }

        try
        {
            request.Body.Position = 0;
            using var document = await JsonDocument.ParseAsync(request.Body, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip }, request.HttpContext.RequestAborted);
            var at = document.RootElement;
            foreach (Match step in Step().Matches(path))
            {
                at = step.Groups["index"] is { Success: true } index
                    ? at[int.Parse(index.Value, CultureInfo.InvariantCulture)]
                    : at.GetProperty(step.Groups["name"].Value);
            }

            var text = at.GetRawText();
            return text.Length <= LongestShown ? text : $"{text[..LongestShown]}…";
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or IndexOutOfRangeException or FormatException)
        {
            return null;
        }
    }

    private static Type? TypeOf(Endpoint? endpoint, string parameter) => endpoint?.Metadata.GetMetadata<MethodInfo>()?
        .GetParameters().FirstOrDefault(p => p.Name == parameter)?.ParameterType;

    private static string FieldsOf(string type) => Resolve(type) is { } known
        ? string.Join(", ", WorkshopJson.Options.GetTypeInfo(known).Properties.Select(p => p.Name))
        : "what the API document describes";

    /// <summary>A type by the name that the framework says: "System.Nullable`1[System.Int32]".</summary>
    private static Type? Resolve(string name)
    {
        var plain = name.StartsWith("System.Nullable`1[", StringComparison.Ordinal) ? name[18..^1] : name;
        return typeof(int).Assembly.GetType(plain) ?? typeof(NodaTime.LocalDate).Assembly.GetType(plain)
            ?? typeof(Problem).Assembly.GetType(plain) ?? typeof(ApiFaults).Assembly.GetType(plain);
    }

    [GeneratedRegex(@"^Failed to bind parameter ""\S+ (?<name>\w+)"" from ""(?<value>.*)""\.$", RegexOptions.Singleline)]
    private static partial Regex Unreadable();

    [GeneratedRegex(@"arameter ""\S+ (?<name>\w+)"" (?:was not provided|but no body)|inferred for parameter ""(?<name>\w+)"" but no body")]
    private static partial Regex Missing();

    [GeneratedRegex(@"^The JSON property '(?<name>[^']*)' could not be mapped to any \.NET member contained in type '(?<type>[^']+)'")]
    private static partial Regex Unmapped();

    [GeneratedRegex(@"^(?:The JSON value could not be converted to|Cannot convert value to) (?<type>[^\s]+?)\.?(?: Path:.*)?$", RegexOptions.Singleline)]
    private static partial Regex OtherType();

    [GeneratedRegex(@"\.(?<name>[^.\[\]]+)|\[(?<index>\d+)\]")]
    private static partial Regex Step();
}
